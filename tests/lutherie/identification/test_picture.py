"""The picture in the README."""

from xml.etree import ElementTree as ET

from tests.lutherie.identification.picture import COUNTS, FILE, INSTRUMENTS, chances, draw


def test_the_picture_on_file_is_the_one_that_is_drawn():
    """The committed picture shows the service's numbers of today."""
    assert FILE.read_text(encoding="utf-8") == draw()


def test_the_picture_reads_without_its_shades():
    """Every cell has its number written in it, from nothing to all."""
    texts = [element.text for element in ET.fromstring(draw()).iter() if element.tag.endswith("text")]  # noqa: S314  (our own file)
    for _, uncertainty in INSTRUMENTS:
        found = chances(uncertainty)
        assert all(f"{100 * found[count]:.0f}" in texts for count in COUNTS)
