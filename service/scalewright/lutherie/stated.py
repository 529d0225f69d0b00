"""What is stated of a part: the true scale that follows from it, and what does not go together."""

from scalewright.lutherie.errors import ContradictoryPartError, UndefinedPartError, refused_within
from scalewright.lutherie.identification.words import length_in_words
from scalewright.lutherie.layout import true_scale_of
from scalewright.lutherie.part import FanScale, Part
from scalewright.lutherie.phrases import counted
from scalewright.lutherie.spacing import cents

__all__ = ["STATED_ALIKE", "stated_scale", "without_setback"]

STATED_ALIKE = 0.1
"""Two stated scales that differ by less than this are the same but for rounding. [mm]"""


def stated_scale(part: Part, place: tuple[str | int, ...]) -> float | FanScale | None:
    """True scale that is stated for a part, after a look whether it is stated twice.

    Parameters
    ----------
    part : Part
        As it is described.
    place : tuple
        Path to the part in the question, for refusals.

    Returns
    -------
    float, FanScale or None
        None for a part that has a label or readings alone. [mm]

    Raises
    ------
    UndefinedPartError
        Nothing says what the part's scale is.
        Something is said of a scale that is not stated.
    ContradictoryPartError
        It is stated twice, and the two differ; or of other frets than the part has.
    TooFewPitchesError
        Its listed pitches end before its last fret.
    """
    if part.true_scale is None and part.layout_scale is None and part.label is None and part.survey is None:
        message = (
            "nothing says what this part's scale is; give its true_scale, layout_scale and rule, label or readings"
        )
        raise UndefinedPartError(message, field=place, example={"true_scale": "25.4 in"})
    _refuse_other_frets(part, place)
    _refuse_short_list(part, place)
    _refuse_idle(part, place)
    of_layout = None
    if part.layout_scale is not None:
        if part.rule is None:
            message = "a layout scale means nothing without its spacing rule; add the rule"
            raise UndefinedPartError(message, field=(*place, "rule"), example="eighteenth")
        of_layout = true_scale_of(part.rule, part.layout_scale)
        if of_layout is None:
            message = "this rule has no octave fret, so its layout scale gives no true scale; give the true_scale"
            raise UndefinedPartError(message, field=(*place, "rule"))
    if isinstance(part.true_scale, FanScale):
        if of_layout is not None or part.survey is not None:
            message = (
                "a fan board has a scale for each side; one layout scale or one line of readings cannot define both, "
                "so give them as parts of their own"
            )
            raise ContradictoryPartError(message, field=(*place, "true_scale"))
        sides = (part.true_scale.bass, part.true_scale.treble)
        return FanScale(*(without_setback(side, part, place) for side in sides))
    stated = None if part.true_scale is None else without_setback(part.true_scale, part, place)
    if stated is not None and of_layout is not None and abs(stated - of_layout) > max(STATED_ALIKE, part.tolerance):
        message = (
            f"the stated true scale is {length_in_words(stated, 0.01)}, and layout scale and rule give "
            f"{length_in_words(of_layout, 0.01)}: they differ by {abs(stated - of_layout):.2f} mm; leave one out, "
            "or mend it"
        )
        raise ContradictoryPartError(
            message, field=(*place, "true_scale"), part=part.id, stated_mm=stated, from_layout_mm=of_layout
        )
    return of_layout if stated is None else stated


def without_setback(length: float, part: Part, place: tuple[str | int, ...]) -> float:
    """True scale that a part means by a length that it is stated or labelled with.

    Parameters
    ----------
    length : float
        As stated. [mm]
    part : Part
        Whose it is.
    place : tuple
        Path to the part in the question, for refusals.

    Returns
    -------
    float
        The length itself, or less the setback that is in a string length. [mm]

    Raises
    ------
    UndefinedPartError
        A string length without its setback.
    ContradictoryPartError
        A setback longer than the string.
    """
    if part.made_to == "true_scale":
        return length
    if part.setback is None:
        message = "a string length gives a true scale only with the setback that is in it; add the setback"
        raise UndefinedPartError(message, field=(*place, "setback"), example="2.5 mm")
    if length <= part.setback:
        message = "less its setback nothing is left of this string length; check both"
        raise ContradictoryPartError(message, field=(*place, "setback"))
    return length - part.setback


def _refuse_short_list(part: Part, place: tuple[str | int, ...]) -> None:
    """Refuse listed pitches that end before a fret that the part is said to have, or that was read on it."""
    read = max(part.survey.procedure.end) if part.survey is not None else 0
    needed = max(part.frets or 0, part.body_joint_fret or 0, (part.datum_fret or 0) if part.fretted else 0, read)
    if part.rule is not None and needed:
        with refused_within(place):
            cents(part.rule, needed)


def _refuse_other_frets(part: Part, place: tuple[str | int, ...]) -> None:
    """Refuse frets of a part that carries none, and those beyond the last of one that does."""
    if not part.fretted:
        for name, number in (("frets", part.frets), ("body_joint_fret", part.body_joint_fret)):
            if number is not None:
                message = f"a bridge or a template carries no frets; leave {name} out, or give it to the board"
                raise ContradictoryPartError(message, field=(*place, name))
        return
    if part.frets is None:
        return
    read = max(part.survey.procedure.end) if part.survey is not None else 0
    for field, number in (
        (("readings",), read),
        (("datum_fret",), part.datum_fret or 0),
        (("body_joint_fret",), part.body_joint_fret or 0),
    ):
        if number > part.frets:
            message = f"this part has {counted(part.frets, 'fret')}, and no fret {number}; mend one of the two"
            raise ContradictoryPartError(message, field=(*place, *field))


def _refuse_idle(part: Part, place: tuple[str | int, ...]) -> None:
    """Refuse what is said of a scale that is not stated, as it would be passed over without a word."""
    states = part.true_scale is not None or part.layout_scale is not None
    if part.tolerance and not states:
        message = (
            "a tolerance is that of a stated scale, and this part states none; state its true_scale, or leave the "
            "tolerance out (readings have an instrument_uncertainty instead)"
        )
        raise UndefinedPartError(message, field=(*place, "tolerance"))
    if part.made_to == "string_length" and part.true_scale is None and part.label is None:
        message = "only a true_scale or a label can be a string length, and this part has neither; leave made_to out"
        raise UndefinedPartError(message, field=(*place, "made_to"))
    # A label alone may name a string length without saying so; its meanings count with the setback.
    label_alone = part.label is not None and not states and part.survey is None
    if part.made_to == "string_length" and part.true_scale is None and part.setback is None and not label_alone:
        message = "a label that is a string length says nothing beside what is better known without its setback; add it"
        raise UndefinedPartError(message, field=(*place, "setback"), example="2.5 mm")
    if part.setback is not None and part.made_to == "true_scale" and not label_alone:
        message = (
            'a setback is in a string length, and this part is made to its true scale; say "made_to": '
            '"string_length", or leave the setback out'
        )
        raise UndefinedPartError(message, field=(*place, "setback"))
