"""Frets: what the readings of all strings say of the frets, beyond what moves of saddle and nut explain."""

import math
from collections.abc import Sequence
from typing import NamedTuple

import numpy as np

from scalewright.lutherie import spacing
from scalewright.lutherie.diagnosis.answer import FretError, RuleLikelihood, SpacingDiagnosis, SpacingVerdict
from scalewright.lutherie.diagnosis.complaint import Board, Complaint
from scalewright.lutherie.diagnosis.moves import FittedString
from scalewright.lutherie.estimate import (
    Floats,
    chi_square_quantile,
    chi_square_survival,
    normal_estimate,
)
from scalewright.lutherie.layout import lay_out
from scalewright.lutherie.phrases import numbered
from scalewright.lutherie.spacing import EIGHTEENTH, EQUAL, Rule

__all__ = ["beyond_moves", "candidate_errors", "diagnose_spacing", "rule_errors"]

_CENTS = 1200.0 / math.log(2.0)
_ESTABLISHED = 0.95
"""Probability that makes a rule established. [-]"""
_TOLD_APART = 6.6
"""By how much chi-square has to prefer one misplaced fret to the next best, about a hundred to one; our choice. [-]"""
_HOPELESS = 1e9
"""Condition beyond which readings say nothing of a fret. [-]"""
_UNEXPLAINED = 0.01
"""Chi-squares less probable than this are not explained. [-]"""


class _Told(NamedTuple):
    """What readings say of an error at each fret, moves taken out."""

    information: Floats
    """Shape (n_frets, n_frets). [1/cent²]"""
    pull: Floats
    """Shape (n_frets,). [1/cent]"""


def diagnose_spacing(complaint: Complaint, board: Board, strings: Sequence[FittedString]) -> SpacingDiagnosis:
    """Compare the spacing rules, and look for frets that all strings find misplaced.

    Parameters
    ----------
    complaint : Complaint
        What was heard.
    board : Board
        Where the frets stand by the rule that the board was said to have.
    strings : sequence of FittedString
        The strings with the moves that mend them.

    Returns
    -------
    SpacingDiagnosis
        Of each rule only what no move of saddle and nut could undo counts.
    """
    strings = [string for string in strings if string.told]
    freedom = sum(string.counted - int(string.fit.free.sum()) for string in strings)
    rules = _rules(complaint, board, strings, freedom)
    leading = rules[0]
    verdict: SpacingVerdict = "undecided"
    if leading.p_value is not None and leading.p_value < _UNEXPLAINED:
        verdict = "none"
    elif leading.probability >= _ESTABLISHED:
        verdict = "established"
    # A fret that stands where the board's own rule puts it is not misplaced, whatever it sounds.
    own = leading.rule if verdict == "established" else complaint.rule
    frets = _common_errors(complaint, board, strings, dict(candidate_errors(complaint, board)).get(own))
    return SpacingDiagnosis(verdict, rules, freedom, frets, _statement(verdict, leading, complaint, frets))


def rule_errors(board: Board, rule: Rule, complaint: Complaint) -> Floats | None:
    """Errors that a rule gives the frets of a board of this true scale, for an ideal string.

    Parameters
    ----------
    board : Board
        The board, for its true scale and its targets.
    rule : Rule
        The rule that is tried.
    complaint : Complaint
        What was heard, for the number of frets.

    Returns
    -------
    ndarray, shape (n_frets,), or None
        Errors with the saddle at the end of the true scale; None where the rule has frets beyond it. [cent]
    """
    layout = lay_out(rule, board.scale, complaint.frets, "true")
    remaining = np.array([fret.to_true_end for fret in layout.frets], dtype=np.float64)
    if not remaining.min() > 0.0:
        return None
    return _CENTS * np.log(board.scale / remaining) - board.target


def candidate_errors(complaint: Complaint, board: Board) -> list[tuple[Rule, Floats]]:
    """Rules that are compared, each with the errors that it gives the frets.

    Parameters
    ----------
    complaint : Complaint
        What was heard, for the rule that was given.
    board : Board
        The board.

    Returns
    -------
    list of (Rule, ndarray of shape (n_frets,))
        The rule that was given first. [cent]
    """
    candidates: list[Rule] = [complaint.rule, *(rule for rule in (EQUAL, EIGHTEENTH) if rule != complaint.rule)]
    tried = ((rule, rule_errors(board, rule, complaint)) for rule in candidates)
    return [(rule, errors) for rule, errors in tried if errors is not None]


def _rules(complaint: Complaint, board: Board, strings: Sequence[FittedString], freedom: int) -> list[RuleLikelihood]:
    """Rules that are compared, the likeliest first."""
    tried: list[tuple[Rule, float]] = []
    for rule, errors in candidate_errors(complaint, board):
        total = 0.0
        for string in strings:
            own = np.concatenate([[0.0], errors])[string.frets]
            left = string.fit.residuals - beyond_moves(string, own)
            total += float(string.weights @ left**2)
        tried.append((rule, total))
    least = min(total for _, total in tried)
    likelihood = [math.exp(-0.5 * (total - least)) for _, total in tried]
    ranked = [
        RuleLikelihood(
            rule=rule,
            probability=weight / sum(likelihood),
            chi_square=total,
            p_value=float(chi_square_survival(np.array(total), freedom)) if freedom > 0 else None,
        )
        for (rule, total), weight in zip(tried, likelihood, strict=True)
    ]
    return sorted(ranked, key=lambda one: -one.probability)


def beyond_moves(string: FittedString, errors: Floats) -> Floats:
    """Part of some errors that no move of a string undoes.

    Parameters
    ----------
    string : FittedString
        The string with the moves that are fitted.
    errors : ndarray, shape (n_readings,)
        Errors at its readings. [cent]

    Returns
    -------
    ndarray, shape (n_readings,)
        What is left of them beside the best move. [cent]
    """
    free = string.fit.free
    if not free.any():
        return np.zeros_like(errors)
    design, weights = string.fit.design[:, free], string.weights
    information = design.T @ (design * weights[:, np.newaxis])
    explained: Floats = design @ np.linalg.solve(information, design.T @ (weights * errors))
    return errors - explained


def _common_errors(
    complaint: Complaint, board: Board, strings: Sequence[FittedString], own: Floats | None
) -> list[FretError]:
    """Errors that strings share fret by fret, beyond the moves and the rule's own; none where too few share enough.

    Each is what the readings say if that fret is off, and of the others those alone that are named.
    """
    counts: dict[int, int] = {}
    for string in strings:
        for fret in set(string.frets.tolist()) - {0}:
            counts[fret] = counts.get(fret, 0) + 1
    shared = sorted(fret for fret, count in counts.items() if count >= 2)
    if len(shared) < 3:
        return []
    place = {fret: index for index, fret in enumerate(shared)}
    told = []
    for string in strings:
        select = np.zeros((len(string.frets), len(shared)))
        for row, fret in enumerate(string.frets.tolist()):
            if fret in place:
                select[row, place[fret]] = 1.0
        design, weights = string.fit.design[:, string.fit.free], string.weights
        weighted = design * weights[:, np.newaxis]
        beyond = np.diag(weights) - weighted @ np.linalg.solve(design.T @ weighted, weighted.T)
        left = string.fit.residuals
        if own is not None:
            left = left - beyond_moves(string, np.concatenate([[0.0], own])[string.frets])
        told.append(_Told(select.T @ beyond @ select, select.T @ (weights * left)))
    together = _Told(np.sum([one.information for one in told], axis=0), np.sum([one.pull for one in told], axis=0))
    named = _named_frets(told, together)
    errors, sigmas = _one_by_one(together, named)
    found = []
    for index, (fret, error, sigma) in enumerate(zip(shared, errors.tolist(), sigmas.tolist(), strict=True)):
        if not math.isfinite(sigma):
            continue
        per_cent = float(board.remaining[fret - 1]) / _CENTS
        found.append(
            FretError(
                fret=fret,
                error=normal_estimate(error, sigma, complaint.coverage),
                displacement=normal_estimate(per_cent * error, per_cent * sigma, complaint.coverage),
                misplaced=index in named,
            )
        )
    return found


def _named_frets(told: Sequence[_Told], together: _Told) -> list[int]:
    """Places of the frets that have to be off, the plainest first.

    Each explains more than chance allows, more than any other fret would, and about as much on every string:
    what one string says alone is a reading to take again.
    """
    n = len(together.pull)
    threshold = chi_square_quantile(_UNEXPLAINED / n, 1)
    named: list[int] = []
    disputed: list[int] = []
    while len(named) + len(disputed) < n - 3:
        errors, sigmas = _one_by_one(together, named)
        gains = np.where(np.isfinite(sigmas), (errors / sigmas) ** 2, 0.0)
        gains[[*named, *disputed]] = 0.0
        first, second = np.argsort(-gains)[:2].tolist()
        if gains[first] < threshold or gains[first] - gains[second] < _TOLD_APART:
            break
        agreed = _agreed(told, named, errors, first)
        (named if agreed else disputed).append(first)
    return named


def _agreed(told: Sequence[_Told], named: Sequence[int], errors: Floats, fret: int) -> bool:
    """Whether the strings agree on the error of a fret, beside those that are named."""
    beside = np.zeros_like(errors)
    beside[[*named]] = errors[[*named]]
    total, strings = 0.0, 0
    for one in told:
        weight = float(one.information[fret, fret])
        if weight > 0.0:
            own = float(one.pull[fret] - one.information[fret] @ beside) / weight
            total += weight * (own - float(errors[fret])) ** 2
            strings += 1
    return strings >= 2 and float(chi_square_survival(np.array(total), strings - 1)) > _UNEXPLAINED


def _one_by_one(told: _Told, named: Sequence[int]) -> tuple[Floats, Floats]:
    """Errors of the named frets together, and of every other one beside them; infinitely unsure where nothing tells."""
    n = len(told.pull)
    errors, sigmas = np.zeros(n), np.full(n, np.inf)
    for fret in range(n):
        chosen = [*named] if fret in named else [*named, fret]
        block = told.information[np.ix_(chosen, chosen)]
        if np.linalg.cond(block) > _HOPELESS:
            continue
        at = chosen.index(fret)
        errors[fret] = np.linalg.solve(block, told.pull[chosen])[at]
        sigmas[fret] = math.sqrt(float(np.linalg.inv(block)[at, at]))
    return errors, sigmas


def _statement(
    verdict: SpacingVerdict, leading: RuleLikelihood, complaint: Complaint, frets: Sequence[FretError]
) -> str:
    """One sentence for the bench."""
    misplaced = [fret.fret for fret in frets if fret.misplaced]
    if misplaced:
        where = numbered("fret", misplaced)
        return f"All strings are off together at {where}, which no move of saddle or nut mends: measure there."
    if verdict == "established":
        kind = "the rule that was given" if leading.rule == complaint.rule else f"the {_named(leading.rule)}"
        return f"The readings agree with {kind}, and not with the others that were compared."
    if verdict == "none":
        return (
            "No rule that was compared explains what the moves leave: look for a suspect reading or a wandering fret."
        )
    return (
        "These readings can't tell the spacing rules apart: what a rule leaves after the moves is too small for them."
    )


def _named(rule: Rule) -> str:
    """Name of a rule in a sentence."""
    return {spacing.EIGHTEENTH: "rule of 18", spacing.EQUAL: "rule of equal steps"}.get(rule, "rule given")
