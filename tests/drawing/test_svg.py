"""SVG: hostile text stays text, and the same drawing gives the same bytes."""

import xml.etree.ElementTree as ET

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scalewright.drawing.board_sheet import board_sheet
from scalewright.drawing.page import Circle, Drawing, Line, Lines, Path, Text, Texts, singly
from scalewright.drawing.sheet import Sheet
from scalewright.drawing.svg import write_svg
from tests.drawing.boards import PLAIN_BOARD

WRITING = st.text(st.characters(exclude_categories=["Cc", "Cs", "Cf", "Cn", "Co"]), max_size=40)
NAMESPACE = "{http://www.w3.org/2000/svg}"


@given(WRITING)
def test_any_text_comes_back_as_it_was(text):
    """By an XML parser, title and letters are the text that was given, and no element was made of it."""
    drawing = Drawing(100.0, 50.0, title=text)
    drawing.layer("text").append(Text(1.0, 2.0, text, 3.0))
    root = ET.fromstring(write_svg(drawing))  # noqa: S314  (our own output)

    assert (root.findtext(f"{NAMESPACE}title") or "") == text
    assert (root.findtext(f"{NAMESPACE}g/{NAMESPACE}text") or "") == text
    assert {element.tag.removeprefix(NAMESPACE) for element in root.iter()} == {"svg", "title", "desc", "g", "text"}


@pytest.mark.parametrize(
    "hostile", ["<script>alert(1)</script>", '"><image href="x" onerror="y"/>', "]]>", "&nbsp;", "</svg>"]
)
def test_markup_in_a_title_is_no_markup(hostile):
    """Nothing that was given stands in the file unescaped; the file ends once."""
    written = write_svg(board_sheet(PLAIN_BOARD, Sheet(title=hostile, identifiers=(hostile,)), "mm"))

    assert written.count(hostile.encode()) == (hostile == "</svg>")
    elements = {element.tag.removeprefix(NAMESPACE) for element in ET.fromstring(written).iter()}  # noqa: S314  (ours)
    assert elements <= {"svg", "title", "desc", "g", "line", "path", "polygon", "circle", "text"}


def test_layers_are_groups_with_ids_that_are_used_once():
    """A laser cutter finds each layer by its id."""
    root = ET.fromstring(write_svg(board_sheet(PLAIN_BOARD, Sheet(), "mm")))  # noqa: S314  (our own output)
    groups = [group.get("id") for group in root.findall(f"{NAMESPACE}g")]
    ids = [element.get("id") for element in root.iter() if element.get("id")]

    assert groups[:2] == ["outline", "centre-line"]
    assert {"kerfs", "frets", "strings", "nut", "saddle", "markers", "labels"} <= set(groups)
    assert len(ids) == len(set(ids))


def test_every_kind_of_item_is_written():
    """Y runs downwards in SVG; letters turn about their place; lines that are open stay open."""
    drawing = Drawing(10.0, 20.0)
    drawing.layer("outline").extend(
        [Line(1.0, 2.0, 3.0, 4.0), Path(((0.0, 0.0), (1.0, 1.0)), closed=False), Circle(5.0, 5.0, 1.0)]
    )
    drawing.layer("text").append(Text(1.0, 2.0, "a", 3.0, "end", 90.0, bold=True))
    written = write_svg(drawing).decode()

    assert '<line x1="1.0" y1="18.0" x2="3.0" y2="16.0"/>' in written
    assert '<polyline points="0.0,20.0 1.0,19.0"/>' in written
    assert '<circle cx="5.0" cy="15.0" r="1"/>' in written
    place = 'transform="translate(1.0,18.0) rotate(-90)"'
    assert f'<text {place} font-size="3" text-anchor="end" font-weight="bold">a</text>' in written


def test_many_things_of_one_kind_are_written_as_they_are_one_by_one():
    """Texts and lines that come column by column are the elements that they are one by one, and none are none."""
    places, names = (1.0, 2.0, 3.0, 4.0), ("a & b", "c\nd")
    together, apart = Drawing(10.0, 20.0, origin=(0.5, 0.25)), Drawing(10.0, 20.0, origin=(0.5, 0.25))
    together.layer("text").extend([Texts(places, names, 3.0, "end", 90.0), Texts((), (), 3.0), Lines(places, ("e",))])
    apart.layer("text").extend(singly(together.layer("text")))

    assert write_svg(together) == write_svg(apart)
    assert [element.text for element in ET.fromstring(write_svg(together)).iter(f"{NAMESPACE}text")] == [*names]  # noqa: S314  (our own output)


def test_the_same_drawing_gives_the_same_bytes():
    """Neither clock nor chance is in a file."""
    assert write_svg(board_sheet(PLAIN_BOARD, Sheet(), "mm")) == write_svg(board_sheet(PLAIN_BOARD, Sheet(), "mm"))
