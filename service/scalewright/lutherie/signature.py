"""Signatures: what a tool does to every board, and which tool an unknown board came from."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from scalewright.lutherie.errors import UnequalSlotsError
from scalewright.lutherie.estimate import chi_square_survival
from scalewright.lutherie.phrases import counted

__all__ = ["Signature", "SignatureMatch", "ToolOrigin", "origin_of"]

_SMALLEST = 1e-6
"""A slot is never surer than this. [mm]"""


@dataclass(frozen=True, slots=True)
class Signature:
    """What a tool does to every board, as a study of it found."""

    id: str
    """The caller's name for the tool."""
    bias: tuple[float, ...]
    """How far each slot lies from where it was commanded, positive away from the nut. [mm]"""
    within: float
    """Standard deviation of a slot against the other slots of its board. [mm]"""
    between: float
    """Standard deviation of a whole board against the others. [mm]"""
    boards: int
    """How many boards were studied."""


@dataclass(frozen=True, slots=True)
class SignatureMatch:
    """How well an unknown board agrees with one tool."""

    id: str
    """The tool."""
    probability: float
    """Its probability among the tools, none of them preferred. [-]"""
    chi_square: float
    """Squared deviations in units of their variance. [-]"""
    p_value: float
    """Probability of a chi-square as large by chance if the board came from this tool. [-]"""


@dataclass(frozen=True, slots=True)
class ToolOrigin:
    """Which tool an unknown board came from."""

    tool: str | None
    """The tool, where one is established."""
    verdict: str
    """"established", "undecided" between tools, or "none" of them."""
    matches: list[SignatureMatch]
    """All the tools, the most probable first."""
    statement: str
    """One sentence."""


def origin_of(
    deviations: Sequence[float],
    signatures: Sequence[Signature],
    *,
    threshold: float = 0.95,
    significance: float = 0.001,
    first_given: int = 0,
) -> ToolOrigin:
    """Which of several tools an unknown board most likely came from, or none.

    Parameters
    ----------
    deviations : sequence of float
        How far each slot of the board lies from where it was commanded. [mm]
    signatures : sequence of Signature
        The tools.
    threshold : float
        Probability that makes a tool established. [-]
    significance : float
        A tool whose deviations are less likely than this is ruled out. [-]
    first_given : int
        Index of the first tool that was given as a signature and not found by a study just now, for refusals.

    Returns
    -------
    ToolOrigin
        The tools by probability.

    Raises
    ------
    UnequalSlotsError
        A tool with another number of slots than the board.

    Notes
    -----
    A board of a tool has normally distributed deviations with the tool's bias as their mean and the covariance
    (1 + 1/n) (within² I + between² 1 1'), where n boards were studied.
    """
    board = np.array(deviations)
    count = len(board)
    logarithms, squares = [], []
    for index, tool in enumerate(signatures):
        if len(tool.bias) != count:
            slots = counted(count, "slot")
            message = f"the board has {slots}, and this tool's signature has {len(tool.bias)}; give one for each"
            raise UnequalSlotsError(
                message, field=("signatures", index - first_given, "bias"), given=len(tool.bias), needed=count
            )
        grown = 1.0 + 1.0 / tool.boards
        within = grown * max(tool.within, _SMALLEST) ** 2
        shared = grown * tool.between**2
        off = board - np.array(tool.bias)
        # Inverse and determinant of within I + shared 1 1' in closed form (Sherman and Morrison).
        common = within + count * shared
        square = float(off @ off) / within - shared * float(np.sum(off)) ** 2 / (within * common)
        squares.append(square)
        logarithms.append(-0.5 * (square + (count - 1) * math.log(within) + math.log(common)))
    peak = max(logarithms)
    weights = [math.exp(one - peak) for one in logarithms]
    chances = [float(chi_square_survival(np.array(square), count)) for square in squares]
    matches = [
        SignatureMatch(tool.id, weight / sum(weights), square, chance)
        for tool, weight, square, chance in zip(signatures, weights, squares, chances, strict=True)
    ]
    matches.sort(key=lambda match: -match.probability)
    best = matches[0]
    if all(match.p_value < significance for match in matches):
        return ToolOrigin(None, "none", matches, "The board came from none of these tools.")
    if best.probability >= threshold and best.p_value >= significance:
        text = f"The board most likely came from {best.id} (probability {best.probability:.2f})."
        return ToolOrigin(best.id, "established", matches, text)
    if best.p_value < significance:
        return ToolOrigin(None, "none", matches, "The board came from none of these tools as they were studied.")
    names = " or ".join(match.id for match in matches[:2])
    return ToolOrigin(None, "undecided", matches, f"Not decided: the board came from {names}, by these readings.")
