"""Boards and strings that the tests of compensation share."""

from scalewright.lutherie.setup import Heights, Setup
from scalewright.lutherie.spacing import EQUAL
from scalewright.lutherie.string_spec import StringSpec

# Nylon strings of Anderson and Beausoleil 2024, set nylon-normal.
NYLON = [
    StringSpec("E4", 0.712, unit_mass=0.374, R=23.6),
    StringSpec("B3", 0.818, unit_mass=0.505, R=23.8),
    StringSpec("G3", 1.024, unit_mass=0.836, R=28.8),
    StringSpec("D3", 0.736, unit_mass=1.92, R=22.5),
    StringSpec("A2", 0.89, unit_mass=3.289, R=23.9),
    StringSpec("E2", 1.092, unit_mass=5.47, R=28.6),
]


def setup(**changes):
    """The paper's board with six strings, with changes."""
    paper = {"rule": EQUAL, "scale": 650.0, "frets": 12, "strings": NYLON, "heights": Heights(1.0, 4.0)}
    return Setup(**{**paper, **changes})
