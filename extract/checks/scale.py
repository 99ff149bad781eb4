"""A figure that the thing can't have, at whatever bench: a cover board 25 mm thick, a bow of 610 grams.

Takes "the boards are 25 mm thick" among books and "the platter runs at 330 rpm"; refuses "25 mm from the board" and the
"thou" that a thing is out by. Source: the row's own, in data/magnitudes*.toml.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion
from extract.checks.linear import conversion
from extract.checks.named import (
    REACH,
    agrees,
    is_counted,
    named_before,
    named_behind,
    recorded,
    says_one_of,
    singular,
    spoken_of,
    worked_at,
)
from extract.checks.offsets import is_no_size
from extract.checks.said_in import holding, words_for
from extract.checks.slips import SLIPS, Meant
from extract.checks.span_text import span_text
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import check_words
from extract.magnitudes import ANY, SIZE, Magnitude, magnitudes

_FAR, _FARTHER = 1.25, 6
"""So many times outside its span a figure needs a slip that explains it, and so many times none."""
_FAR_BELOW = 3
"""Small figures of a large thing are seldom its size."""
_IN_REACH = 7
_RATE = (("in",), ("per",), ("every",))
_INWARDS = frozenset({"depth", "length"})
_SUPPOSED = 2
"""So many times outside where a thing usually lies, or where that lies which the record supposes."""
_DEGREES = 60
"""The same of a temperature, whose zero is no nothing, in kelvins."""


def find_out_of_scale(talk: Talk) -> Iterator[Suspicion]:
    """Each figure far outside where that dimension of its thing lies."""
    for one in talk.said:
        if not _is_a_size(one):
            continue
        rows = _rows_for(talk, one)
        found = _beyond(one, rows) if rows else _beyond_supposed(one, _supposed(talk, one))
        if found is not None:
            yield found


def _beyond(one: Said, rows: list[Magnitude]) -> Suspicion | None:
    """What is wrong with a figure that lies in no span, or in none where it usually does, as a slip explains."""
    usual = [row for row in rows if row.usual]
    if any(_is_inside(row, one) for row in usual):
        return None
    slipped = [row for row in usual if _times_outside(row, one) >= _SUPPOSED and _meant(one, row) is not None]
    if slipped:
        return _judge(one, _nearest(slipped, one))
    return _judge(one, _nearest(rows, one)) if rows and not any(_is_inside(row, one) for row in rows) else None


def _nearest(rows: list[Magnitude], one: Said) -> Magnitude:
    """The row that a figure lies least outside of; of those that it lies beyond rather than short of."""
    return min(rows, key=lambda row: ((_value(row, one) or 0) <= row.low, _times_outside(row, one)))


def _beyond_supposed(one: Said, rows: list[Magnitude]) -> Suspicion | None:
    """The same of what the record supposes: it must lie farther outside, and a slip must explain it."""
    if not rows or not one.measure.unit_said or any(_is_inside(row, one) for row in rows):
        return None
    row = _nearest([row for row in rows if row.usual] or rows, one)
    return _judge(one, row) if _times_outside(row, one) >= _SUPPOSED and _meant(one, row) is not None else None


def _supposed(talk: Talk, one: Said) -> list[Magnitude]:
    """Rows of what the record has a figure measure, or of the item that it has, though no words near it say so."""
    measure, known = one.measure, magnitudes()
    if measure.difference or one.before[-1:] in _RATE:
        return []
    if measure.kind == "length" and (is_no_size(one) or _reaches_in(one)):
        return []
    name = singular(tuple(words_of(measure.attribute or "")))
    rows = [row for row in known.by_thing.get(name, ()) if row.what == ANY and row.kind != "length"]
    item = singular(tuple(words_of(measure.item or "")))
    if not item or not agrees(one, item) or is_counted(one, item):
        return [row for row in rows if row.kind == measure.kind and row.is_of(talk.words)]
    of_item = next((known.by_thing[item[at:]] for at in range(len(item)) if item[at:] in known.by_thing), ())
    dimensions = {what for what, one_of in known.dimensions.items() if measure.attribute in one_of.recorded}
    if measure.attribute not in check_words().not_own:
        rows += [row for row in of_item if row.what in dimensions or (row.kind != "length" and row.what != ANY)]
    return [row for row in rows if row.kind == measure.kind and row.is_of(talk.words)]


def is_usual(talk: Talk, one: Said) -> bool:
    """Whether a row of its own says that the thing may be of that size: a door's clearance is wider than others."""
    return any(_is_inside(row, one) for row in _rows_for(talk, one))


def _is_a_size(one: Said) -> bool:
    words, measure = check_words(), one.measure
    if measure.unit is None or measure.kind is None or len(one.figures) > 1:
        return False
    if one.before[-1:] == ("every",):
        return False
    if measure.kind != "length":
        return True
    return not (one.after[:1] and (one.after[0] in words.no_size or one.after[:2] in words.no_size_pairs))


def _is_own(one: Said) -> bool:
    """A length of the thing itself: none that comes off it or lies between two."""
    words, attribute = check_words(), one.measure.attribute
    taken = words.taking & {*one.clause[-REACH:], *one.after[:1]}
    if one.measure.difference or (one.measure.kind == "length" and _reaches_in(one)):
        return False
    return one.measure.kind != "length" or not (taken or is_no_size(one) or attribute in words.not_own)


def _reaches_in(one: Said) -> bool:
    """ "The feeler goes under it 15 mm deep": how far it gets in is no size of it."""
    words = one.clause[-_IN_REACH:]
    at = next((at for at, word in enumerate(words) if word in words_for("reaching", "verbs")), len(words))
    if at == len(words) or not words_for("reaching", "into") & {*words[at + 1 :], *one.after[:1]}:
        return False
    return not any(_says_firmly(one, name) for name in magnitudes().dimensions if name not in _INWARDS)


def _rows_for(talk: Talk, one: Said) -> list[Magnitude]:
    """The rows of the thing that is named nearest, for the dimension that is said."""
    behind, own = named_behind(one), _is_own(one)
    if behind is None and _is_amount(one):
        return []
    for thing in (
        behind,
        named_before(talk, one.clause[-REACH:]),
        recorded(talk, one),
        worked_at(one),
        spoken_of(talk, one),
    ):
        rows = [
            row
            for row in magnitudes().by_thing.get(thing or (), ())
            if row.kind == one.measure.kind and row.is_of(talk.words)
        ]
        if rows:
            return _of_dimension(one, [row for row in rows if row.what == ANY or own], behind is not None)
    return []


def _is_amount(one: Said) -> bool:
    """ "Half a metre of hemp": the figure is of what comes behind it, unless that is a dimension."""
    return one.after[:1] == ("of",) and not any(
        one.after[:length] in dimension.after for dimension in magnitudes().dimensions.values() for length in (2, 3)
    )


def _of_dimension(one: Said, rows: list[Magnitude], behind: bool) -> list[Magnitude]:
    """Of a length those of the dimension that is said; where none is, those that hold for every dimension."""
    if one.measure.kind == "mass" and words_for("pulls", "words") & {*one.clause[-REACH:]}:
        return [row for row in rows if row.what == ANY]
    if one.measure.kind != "length":
        return [row for row in rows if row.what not in magnitudes().dimensions or _says(one, row.what)]
    said = [name for name in magnitudes().dimensions if _says_firmly(one, name)]
    said = said or [name for name in magnitudes().dimensions if _says(one, name)]
    chosen = [row for row in rows if row.what in said]
    if chosen or said:
        return chosen or [row for row in rows if row.what == SIZE or (row.what == ANY and is_beside(one, row))]
    chosen = [row for row in rows if row.what in (ANY, SIZE) and (behind or is_beside(one, row))]
    return chosen or [row for row in rows if _is_recorded(one, row)]


def _is_recorded(one: Said, row: Magnitude) -> bool:
    """The record gives the figure that dimension of that thing, though the words don't say which it is."""
    dimension, item = magnitudes().dimensions.get(row.what), tuple(words_of(one.measure.item or ""))
    return (
        dimension is not None
        and (is_beside(one, row) or row.what != "length")
        and one.measure.attribute in dimension.recorded
        and singular(item)[-len(row.thing.split()) :] == tuple(row.thing.split())
    )


def is_beside(one: Said, row: Magnitude) -> bool:
    """The thing was named right before the figure, with only small words between."""
    words, name = one.clause[-REACH:], tuple(row.thing.split())
    end = next((at for at in range(len(words), 0, -1) if singular(words[at - len(name) : at]) == name), None)
    between = check_words().between | {*words_of(one.measure.item or "")}
    return end is not None and all(word in between for word in _without_place(words[end:]))


def _without_place(words: tuple[str, ...]) -> tuple[str, ...]:
    """Without "near the chuck", which tells where it was measured."""
    at = next((at for at, word in enumerate(words) if word in ("near", "under", "behind", "beside")), None)
    return words if at is None else (*words[:at], *words[at + 1 + (2 if words[at + 1 : at + 2] == ("the",) else 1) :])


def _says_firmly(one: Said, name: str) -> bool:
    """The dimension is said right behind the figure, or by name before it."""
    dimensions = magnitudes().dimensions
    pieces = [one.after[:length] for length in (1, 2, 3)]
    if any(piece in dimensions[name].after for piece in pieces):
        return True
    if any(piece in other.after for other in dimensions.values() for piece in pieces):
        return False
    return says_one_of(one.clause[-REACH:], frozenset({(noun,) for noun in dimensions[name].recorded}))


def _says(one: Said, name: str) -> bool:
    return _says_firmly(one, name) or says_one_of(one.clause[-REACH:], magnitudes().dimensions[name].before)


def _value(row: Magnitude, one: Said) -> Fraction | None:
    convert = conversion(one.measure.unit or "", row.unit)
    return convert(one.figure.value) if convert is not None else None


def _is_inside(row: Magnitude, one: Said) -> bool:
    """Whether a figure lies in the span; a small length may be a difference unless its dimension is said."""
    value = _value(row, one)
    if value is None or (value < row.low and row.kind == "length" and not _may_be_too_small(row, one)):
        return True
    return row.low <= value <= row.high


def _may_be_too_small(row: Magnitude, one: Said) -> bool:
    if row.what == ANY:
        return one.clause[-len(row.thing.split()) - 1 :][: len(row.thing.split())] == tuple(row.thing.split())
    return row.what != SIZE and _says_firmly(one, row.what)


def _times_outside(row: Magnitude, one: Said) -> float:
    """How many times over its span a figure lies; a figure below counts for less."""
    value = float(_value(row, one) or 0)
    if row.kind == "temperature":
        return 1 + (max(value - row.high, row.low - value)) / _DEGREES
    if value > row.high:
        return value / row.high if row.high else _FARTHER
    return row.low / value * _FAR / _FAR_BELOW if value > 0 else 0


def _judge(one: Said, row: Magnitude) -> Suspicion | None:
    measure = one.measure
    convert = conversion(measure.unit or "", row.unit)
    times = _times_outside(row, one)
    if convert is None or times <= 1:
        return None
    usual = span_text(row.low, row.high, row.unit, measure)
    message = f"{measure.display} lies outside {usual}, where {row.name} {'lie' if row.is_plural else 'lies'}"
    meant = _meant(one, row)
    if meant is not None:
        message += f"; {meant.text} if {meant.reason}"
    unsure = _FARTHER if not measure.unit_said else _FAR
    explained = meant is not None and (measure.unit_said or not meant.other_unit)
    sure = (times >= _FARTHER and measure.unit_said) or (explained and times >= unsure)
    sure = sure and holding("totals", "said").search(" ".join(one.clause[-REACH:])) is None
    sure = sure and not (_may_be_ours(one, row) and not measure.unit_said)
    return Suspicion("implausible", "stop" if sure else "look", (measure,), message, row.source)


def _may_be_ours(one: Said, row: Magnitude) -> bool:
    """In the other system's unit the figure would be inside: where none was said, the one supplied may be wrong."""
    if one.figure.fraction:
        return False
    ways = (conversion(unit, row.unit) for unit in check_words().counterparts.get(one.measure.unit or "", ()))
    return any(way is not None and row.low <= way(one.figure.value) <= row.high for way in ways)


def _meant(one: Said, row: Magnitude) -> Meant | None:
    for slip in SLIPS:
        meant = slip(one)
        convert = conversion(meant.unit, row.unit) if meant is not None else None
        if meant is not None and convert is not None and row.low <= convert(meant.value) <= row.high:
            return meant
    return None
