"""PDF files joined page after page while they are sent: what was sent need not be kept (ISO 32000-1, 7.5.6)."""

import re
from dataclasses import dataclass

__all__ = ["JoinedPdf"]

_ENTRY = re.compile(rb"(\d{10}) \d{5} ([nf])")
_REFERENCE = re.compile(rb"(\d+) 0 R")
_CONTENTS = re.compile(rb"/Contents (\d+) 0 R")
_PARENT = re.compile(rb"/Parent \d+ 0 R")
_KIDS = re.compile(rb"/Kids \[([^\]]*)\]")
_COUNT = re.compile(rb"/Count \d+")
_NAMED = re.compile(rb"/(Root|Info) (\d+) 0 R")
_ID = re.compile(rb"/ID\s*\[[^\]]*\]")


@dataclass(frozen=True, slots=True)
class _File:
    """Objects of a file with a plain table of them, as :mod:`scalewright.drawing.pdf` writes it."""

    objects: dict[int, bytes]
    """Each from its number to "endobj"."""
    table: int
    """Where the table begins."""
    trailer: bytes
    """All that stands behind the table."""

    @classmethod
    def read(cls, content: bytes) -> "_File":
        """Read the table, and what it names."""
        start = int(content[content.rindex(b"startxref") + len(b"startxref") :].split()[0])
        end = content.index(b"trailer", start)
        entries = _ENTRY.findall(content, start, end)
        places = {number: int(place) for number, (place, kind) in enumerate(entries) if kind == b"n"}
        ends = dict(zip(sorted(places.values()), [*sorted(places.values())[1:], start], strict=True))
        objects = {}
        for number, place in places.items():
            piece = content[place : ends[place]]
            objects[number] = piece[: piece.rindex(b"endobj")] + b"endobj\n"
        return cls(objects, start, content[end:])

    @property
    def root_of_pages(self) -> int:
        """Number of the object that all pages hang on."""
        return next(number for number, text in self.objects.items() if b"/Type /Pages" in text)

    @property
    def pages(self) -> list[int]:
        """Numbers of the pages, in their order."""
        kids = _KIDS.search(self.objects[self.root_of_pages])
        return [] if kids is None else [int(number) for number in _REFERENCE.findall(kids[1])]


class JoinedPdf:
    """One file out of several that were written with the same letters, so that their fonts are the same.

    The first is sent as it is. Of the others the pages are sent on, as an update of the first; the end has the list
    of all pages and the table of what was added, which is all that is kept meanwhile.
    """

    def __init__(self) -> None:
        self._first: _File | None = None
        self._length = 0
        self._kids: list[int] = []
        self._places: list[int] = []

    def add(self, content: bytes) -> bytes:
        """Take the next file.

        Parameters
        ----------
        content : bytes
            A whole file.

        Returns
        -------
        bytes
            What is to be sent next.
        """
        file = _File.read(content)
        if self._first is None:
            self._first, self._kids, self._length = file, file.pages, len(content)
            return content
        pieces = []
        for number in file.pages:
            page = file.objects[number]
            (contents,) = _CONTENTS.findall(page)
            where = len(self._first.objects) + len(self._places) + 1
            page = _CONTENTS.sub(b"/Contents %d 0 R" % where, page)
            page = _PARENT.sub(b"/Parent %d 0 R" % self._first.root_of_pages, page)
            pieces += [self._placed(where, file.objects[int(contents)]), self._placed(where + 1, page)]
            self._kids.append(where + 1)
        return b"".join(pieces)

    def end(self) -> bytes:
        """Return what comes last; nothing where there was one file alone."""
        if self._first is None or not self._places:
            return b""
        root = self._first.root_of_pages
        kids = b" ".join(b"%d 0 R" % number for number in self._kids)
        pages = _KIDS.sub(b"/Kids [ " + kids + b" ]", self._first.objects[root])
        pages = _COUNT.sub(b"/Count %d" % len(self._kids), pages)
        place, table = self._length, self._length + len(pages)
        first = len(self._first.objects) + 1
        lines = [b"xref\n0 1\n0000000000 65535 f \n"]
        lines.append(b"%d 1\n%010d 00000 n \n%d %d\n" % (root, place, first, len(self._places)))
        lines += [b"%010d 00000 n \n" % one for one in self._places]
        named = b" ".join(b"/%s %s 0 R" % pair for pair in _NAMED.findall(self._first.trailer))
        identifier = _ID.search(self._first.trailer)
        lines.append(
            b"trailer\n<< /Size %d %s %s /Prev %d >>\nstartxref\n%d\n%%%%EOF\n"
            % (first + len(self._places), named, identifier[0] if identifier else b"", self._first.table, table)
        )
        return pages + b"".join(lines)

    def _placed(self, number: int, text: bytes) -> bytes:
        """An object under another number, its place noted."""
        text = b"%d" % number + text[text.index(b" ") :]
        self._places.append(self._length)
        self._length += len(text)
        return text
