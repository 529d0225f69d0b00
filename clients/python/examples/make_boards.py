"""Makes boards.csv: the invented stock of a workshop that does not exist, 500 boards measured with a caliper.

Half of the boards were cut by the rule of 18 and half in equal steps; ``made_by`` and ``made_to`` say which, and from
which scale, as no real stock list could. A few rows are bad, in the ways in which rows go bad. Random numbers with a
fixed seed: run again, it writes the same file.
"""

import csv
import random
from pathlib import Path

FRETS = (1, 5, 7, 9, 12, 15, 19)
SCALES = (24.0, 24.625, 24.75, 25.0, 25.5, 25.625)
READING = 0.002
"""Standard deviation of a reading. [in]"""
SLOT = 0.002
"""Standard deviation of a slot about its place. [in]"""


def fraction(inches: float) -> str:
    """Write a length to the nearest 64th, as on a rule: 12 9/32."""
    sixty_fourths = round(inches * 64.0)
    whole, rest = divmod(sixty_fourths, 64)
    denominator = 64
    while rest and rest % 2 == 0:
        rest, denominator = rest // 2, denominator // 2
    return f"{whole} {rest}/{denominator}" if rest else str(whole)


def boards() -> list[list[str]]:
    """The rows, the header first."""
    chance = random.Random(18)
    rows = [["sku", *(f"fret {fret} [in]" for fret in FRETS), "u [in]", "made_by", "made_to", "shelf"]]
    for number in range(1, 501):
        rule, ratio = chance.choice((("eighteenth", 17.0 / 18.0), ("equal", 2.0 ** (-1.0 / 12.0))))
        scale = chance.choice(SCALES)
        places = [scale * (1.0 - ratio**fret) for fret in FRETS]
        read = [place + chance.gauss(0.0, SLOT) + chance.gauss(0.0, READING) for place in places]
        by_rule = number % 10 == 0
        cells = [fraction(place) if by_rule else f"{place:.3f}" for place in read]
        uncertainty = "0.006" if by_rule else f"{READING:.3f}"
        rows.append([f"FB-{number:03}", *cells, uncertainty, rule, f"{scale}", f"{chance.randrange(1, 13)}"])
    rows[57][3] = "see note"  # a word where a number should be
    rows[123][1:8] = [""] * 7  # nobody has measured it
    rows[250][5] = "-12.281"  # a slip of the hand
    rows[251][5] = ""  # one reading is missing, which is no fault
    rows[377][8] = ""  # how sure are these?
    rows[444].append("=SUM(A1:A9)")  # a cell too many
    return rows


if __name__ == "__main__":
    with Path(__file__).with_name("boards.csv").open("w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows(boards())
