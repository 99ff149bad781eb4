"""A figure that the thing can't have, at whatever bench: a cover board 25 mm thick, a bow of 610 grams.

Takes "the boards are 25 mm thick" among books and "the platter runs at 330 rpm"; refuses "25 mm from the board" and the
"thou" that a thing is out by. Source: the row's own, in data/magnitudes.toml.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.arithmetic.window import COUNTS
from extract.checks.finding import Suspicion, figure_text, symbol_of, with_unit
from extract.checks.linear import conversion
from extract.checks.magnitudes import ANY, SIZE, Magnitude, magnitudes
from extract.checks.offsets import is_no_size
from extract.checks.slips import SLIPS, Meant
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import Phrase, check_words

_REACH = 11
"""Words before a figure among which its thing, and how it is measured, are looked for."""
_IT = frozenset({"it", "it's", "its", "them", "they", "they're", "that's", "these", "this", "here", "both"})
_THE = (("the",), ("its",), ("each",))
_NEAR = 6
_BORDERS = frozenset({"and", "so", "then", "but", "or", "now"})
_NO_THING = frozenset({"it's", "that's", "there's", "here's", "he's", "she's", "what's", "let's", "today's", "who's"})
_FAR, _FARTHER = 1.25, 6
"""So many times outside its span a figure needs a slip that explains it, and so many times none."""
_FAR_BELOW = 3
"""Small figures of a large thing are seldom its size."""
_DEGREES = 60
"""The same of a temperature, whose zero is no nothing, in kelvins."""


def find_out_of_scale(talk: Talk) -> Iterator[Suspicion]:
    """Each figure far outside where that dimension of its thing lies."""
    for one in talk.said:
        if not _is_a_size(one):
            continue
        rows = _rows_for(talk, one)
        if rows and not any(_is_inside(row, one) for row in rows):
            found = _judge(one, min(rows, key=lambda row: _times_outside(row, one)))
            if found is not None:
                yield found


def _is_a_size(one: Said) -> bool:
    words, measure = check_words(), one.measure
    if measure.unit is None or measure.kind is None or len(one.figures) > 1:
        return False
    return not (one.after[:1] and (one.after[0] in words.no_size or one.after[:2] in words.no_size_pairs))


def _is_own(one: Said) -> bool:
    """A length of the thing itself: none that comes off it or lies between two."""
    words, attribute = check_words(), one.measure.attribute
    taken = words.taking & {*one.clause[-_REACH:], *one.after[:1]}
    if one.measure.difference:
        return False
    return one.measure.kind != "length" or not (taken or is_no_size(one) or attribute in words.not_own)


def _rows_for(talk: Talk, one: Said) -> list[Magnitude]:
    """The rows of the thing that is named nearest, for the dimension that is said."""
    behind, own = _named_behind(one), _is_own(one)
    if behind is None and _is_amount(one):
        return []
    for thing in (behind, named_before(talk, one.clause[-_REACH:]), _recorded(talk, one), _worked_at(one)):
        rows = [
            row
            for row in magnitudes().by_thing.get(thing or (), ())
            if row.kind == one.measure.kind and (not row.context or row.context & talk.words)
        ]
        if rows:
            return _of_dimension(one, [row for row in rows if row.what == ANY or own], behind is not None)
    return []


def _named_behind(one: Said) -> Phrase | None:
    """ "A 3 amp fuse", "the 500 mm black webbing": the thing that a figure stands right before."""
    known, words = magnitudes().by_thing, one.after
    for start in (0, 1) if words[:1] and words[0] in magnitudes().adjectives else (0,):
        for length in range(min(magnitudes().longest, len(words) - start), 0, -1):
            name = _singular(words[start : start + length])
            if name in known and not {*name} <= magnitudes().adjectives:
                return name
    return None


def _is_amount(one: Said) -> bool:
    """ "Half a metre of hemp": the figure is of what comes behind it, unless that is a dimension."""
    return one.after[:1] == ("of",) and not any(
        one.after[:length] in dimension.after for dimension in magnitudes().dimensions.values() for length in (2, 3)
    )


def named_before(talk: Talk, words: tuple[str, ...]) -> Phrase | None:
    """The last thing named before a figure that isn't a mere place: "from the board", "on the first string"."""
    known = magnitudes()
    for end in range(len(words), 0, -1):
        for length in range(min(known.longest, end), 0, -1):
            name = _singular(words[end - length : end])
            if name not in known.by_thing or _is_counted(words[: end - length]):
                continue
            if not _is_a_place(words[max(0, end - length - 3) : end - length]):
                return name
        if words[end - 1].endswith("'s") and words[end - 1] not in _NO_THING:
            return None
        if words[end - 1] in talk.materials:
            return None
    return None


def _is_a_place(words: tuple[str, ...]) -> bool:
    """ "From the old", before "board": a preposition that reaches the thing."""
    reach = next((at for at in range(len(words), 0, -1) if words[at - 1] in _BORDERS), 0)
    return bool(check_words().placing & {*words[reach:]})


def _is_counted(words: tuple[str, ...]) -> bool:
    """ "Fourteen frets to the body": so many of them are no size of one."""
    return bool(words) and (words[-1].isdigit() or words[-1] in COUNTS)


def _recorded(talk: Talk, one: Said) -> Phrase | None:
    """The item that the record gives, or the known thing that it is a kind of."""
    words = _singular(tuple(words_of(one.measure.item or "")))
    if not {*words} & {_singular((word,))[0] for word in one.clause} and not _IT & {*one.clause[-_NEAR:]}:
        return None
    places = [at for at, word in enumerate(one.clause) if _singular((word,))[0] in words]
    if places and all(_is_counted(one.clause[:at]) for at in places):
        return None
    if not {*words} <= talk.words | {word.removesuffix("s") for word in talk.words}:
        return None
    return next((words[at:] for at in range(len(words)) if words[at:] in magnitudes().by_thing), None)


def _worked_at(one: Said) -> Phrase | None:
    """ "At the top edge I plane it to": the place is what has the dimension that is said."""
    words = one.clause[-_REACH:]
    start = next((at for at in range(len(words) - 1, -1, -1) if words[at] == "at"), len(words)) + 1
    start += words[start : start + 1] in _THE
    for length in range(min(magnitudes().longest, len(words) - start), 0, -1):
        name, rest = _singular(words[start : start + length]), words[start + length :]
        if name in magnitudes().by_thing and any(
            _holds(rest, dimension.before) for dimension in magnitudes().dimensions.values()
        ):
            return name
    return None


def _singular(words: Phrase) -> Phrase:
    if not words:
        return words
    last = words[-1].removesuffix("'s")
    if (*words[:-1], last) in magnitudes().by_thing:
        return (*words[:-1], last)
    return (*words[:-1], last.removesuffix("s"))


def _of_dimension(one: Said, rows: list[Magnitude], behind: bool) -> list[Magnitude]:
    """Of a length those of the dimension that is said; where none is, those that hold for every dimension."""
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
        and is_beside(one, row)
        and one.measure.attribute in dimension.recorded
        and _singular(item)[-len(row.thing.split()) :] == tuple(row.thing.split())
    )


def is_beside(one: Said, row: Magnitude) -> bool:
    """The thing was named right before the figure, with only small words between."""
    words, name = one.clause[-_REACH:], tuple(row.thing.split())
    end = next((at for at in range(len(words), 0, -1) if _singular(words[at - len(name) : at]) == name), None)
    between = check_words().between | {*words_of(one.measure.item or "")}
    return end is not None and all(word in between for word in words[end:])


def _says_firmly(one: Said, name: str) -> bool:
    """The dimension is said right behind the figure, or by name before it."""
    dimensions = magnitudes().dimensions
    pieces = [one.after[:length] for length in (1, 2, 3)]
    if any(piece in dimensions[name].after for piece in pieces):
        return True
    if any(piece in other.after for other in dimensions.values() for piece in pieces):
        return False
    return _holds(one.clause[-_REACH:], frozenset({(noun,) for noun in dimensions[name].recorded}))


def _says(one: Said, name: str) -> bool:
    return _says_firmly(one, name) or _holds(one.clause[-_REACH:], magnitudes().dimensions[name].before)


def _holds(words: tuple[str, ...], phrases: frozenset[Phrase]) -> bool:
    return any(words[at : at + length] in phrases for at in range(len(words)) for length in (1, 2, 3, 4, 5))


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
    low, high = (figure_text(convert.inverse(Fraction(end).limit_denominator(10**9))) for end in (row.low, row.high))
    usual = with_unit(f"{low} to {high}", symbol_of(measure))
    message = f"{measure.display} lies outside {usual}, where {row.name} {'lie' if row.is_plural else 'lies'}"
    meant = _meant(one, row)
    if meant is not None:
        message += f"; {meant.text} if {meant.reason}"
    unsure = _FARTHER if not measure.unit_said else _FAR
    explained = meant is not None and (measure.unit_said or not meant.other_unit)
    sure = (times >= _FARTHER and measure.unit_said) or (explained and times >= unsure)
    return Suspicion("implausible", "stop" if sure else "look", (measure,), message, row.source)


def _meant(one: Said, row: Magnitude) -> Meant | None:
    for slip in SLIPS:
        meant = slip(one)
        convert = conversion(meant.unit, row.unit) if meant is not None else None
        if meant is not None and convert is not None and row.low <= convert(meant.value) <= row.high:
            return meant
    return None
