"""Labels over HTTP: printed, and the text of their codes read back."""

from fastapi import APIRouter

from scalewright.api.batch import Batch
from scalewright.api.label_document import add_label_batch
from scalewright.api.operations import post
from scalewright.drawing.label_sheet import FilledLabel, fill_label
from scalewright.lutherie.tag import Tag
from scalewright.lutherie.tag_text import read_tag
from scalewright.wire.label import PrintedLabelIn, PrintedLabelOut, TagIn, TagOut, answer_labels

__all__ = ["router"]

router = APIRouter(prefix="/v1", tags=["parts"])


@post(router, "/label", answer=PrintedLabelOut, examples="label", summary="Print a label that states the true scale")
def label(question: PrintedLabelIn) -> FilledLabel:
    """Set a label for one part: true scale in large letters, rule, layout scale, stock number, date, and a QR code.

    By Accept or `format` it comes as SVG or PDF at full size, as a PNG with `dpi` dots to the inch, or as JSON that
    says what stands on it. The code carries the text that /v1/label/read takes, or a `url` of yours. What is not
    established is not stated: a part that only a label describes gets its uncertainty printed beside the figure. The
    letters are in English, German or French by Accept-Language. A size too small is refused with the smallest one that
    works.
    """
    return fill_label(question.to_domain())


@post(router, "/label/read", answer=TagOut, examples="label_read", summary="Read the text of a label's code")
async def label_read(question: TagIn) -> Tag:
    """Turn the text that a scanner read from a label back into a part, for /v1/assembly to take as it stands.

    The text is one line of ASCII, `TRUESCALE/1;id=...;kind=...;true=624.079mm;u=0.05mm;rule=eighteenth;layout=628.65mm;
    crc=...`: fields parted by semicolons, lengths with their unit to 0.001 mm or 0.00001 in, `u` the standard
    uncertainty of the true scale, and last a CRC-16 (polynomial 1021, start FFFF) of all before `;crc=`. Rules are
    `eighteenth`, `equal:12`, `divisor:17.835`, `listed:100,200,...` and `listed-repeat:...`. A text that was cut off or
    changed is refused.
    """
    return read_tag(question.to_domain())


add_label_batch(
    router,
    Batch(PrintedLabelIn, answer_labels),
    about="""Answer many questions of /v1/label, each as a line of JSON. By Accept the answer is lines of JSON, the
    letters of each label, in English, and the text of its code, for a label printer's own program; or one PDF of all
    labels on sheets of A4 or letter label paper, to be printed at 100 %.

    The parameters belong to the PDF: size of all labels, paper, the first label's place, gaps and edges; bare numbers
    in them are in `unit`. A line that names another size or printer than they do is bad. All lines are looked over
    before the first byte is sent. Bad ones are named in a problem, by pointers into the batch as if it were one array,
    blank lines left out: `/17/part/rule`; or, with `bad_lines=list`, the others are printed and the last pages list the
    bad ones. The PDF comes page by page, so that a file cut off has no end and is none. Its letters are in English,
    German or French by Accept-Language.""",
)
