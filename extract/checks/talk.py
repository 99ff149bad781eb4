"""A record's figures as the checks read them: in order, with the words between.

A rule looks at a figure, the one or two before it and the few words between, never further, so that all rules together
are linear in the number of measures.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from extract.checks.figure import Figure, parse_figure
from extract.record import Measure, Record
from extract.trade import Trade

_RANGE = re.compile(r"(?<=\d)\s+(?:to|or|-|–)\s+(?=[\d.-])")
_WORD = re.compile(r"[a-z0-9][a-z0-9'./-]*")
_FEW = 3
_END = re.compile(r"[.?!](?=\s|$)")
_SMALLER = {"foot": 12, "pound": 16, "hour": 60, "minute": 60, "yard": 36, "day": 24, "week": 7}
"""How many of the next smaller unit a unit holds: "4 lb 12 oz" is said to the ounce."""
_BORDERS = frozenset({"and", "so", "but", "then", "because"})
_STEM = 4
_TALK_GAP = 21
"""Words before a figure from which on the figure before it is too far away to belong with it."""


def words_of(text: str) -> list[str]:
    """The words of a text in lower case, without marks."""
    return [word.rstrip(".-/'") for word in _WORD.findall(text.lower().replace("’", "'"))]


def names_attribute(words: Iterable[str], attribute: str) -> bool:
    """Some of the words name an attribute, in whatever form: "thick" is known for "thickness" by its first letters."""
    return bool({word[:_STEM] for word in words} & {word[:_STEM] for word in words_of(attribute)})


@dataclass(frozen=True, slots=True)
class Said:
    """A standing measure: its figures (two for a range) and the words about it."""

    measure: Measure
    place: int
    """0-based place among all measures of the record."""
    figures: tuple[Figure, ...]
    before: tuple[str, ...]
    after: tuple[str, ...]
    clause: tuple[str, ...] = ()
    """Those of the words before that are in the figure's own sentence, where the talk has marks."""

    @property
    def figure(self) -> Figure:
        """The figure, the lower one of a range."""
        return self.figures[0]

    @property
    def near(self) -> bool:
        """The figure before this one is only a few words away."""
        return len(self.before) < _TALK_GAP


def figures_of(measure: Measure) -> tuple[Figure, ...]:
    """What was said as figures with their precision: one, or both ends of a range."""
    texts = _RANGE.split(measure.display) if measure.low is not None else [measure.display]
    values = [measure.value] if measure.low is None or measure.high is None else [measure.low, measure.high]
    if len(texts) != len(values):
        texts = [measure.display] * len(values)
    return tuple(_figure(text, value, measure) for text, value in zip(texts, values, strict=True))


def _figure(text: str, value: float, measure: Measure) -> Figure:
    try:
        figure = parse_figure(text, measure.hedged)
    except ValueError:
        figure = Figure(Fraction(value).limit_denominator(100_000), Fraction(1, 100), hedged=measure.hedged)
    inner = _SMALLER.get(measure.unit or "")
    if inner and _is_compound(measure):
        exact = Fraction(value).limit_denominator(inner * 16)
        return Figure(exact, Fraction(1, inner), hedged=measure.hedged)
    if abs(float(figure.value) - value) > 1e-4 * max(1.0, abs(value)):
        return Figure(Fraction(value).limit_denominator(100_000), figure.step, figure.fraction, measure.hedged)
    return figure


def _is_compound(measure: Measure) -> bool:
    """ "4 pounds 12 ounces", "two foot six": two numbers for one value, no range and no decimals said."""
    if measure.low is not None or measure.value == int(measure.value):
        return False
    quote = measure.quote.lower()
    return not any(mark in quote for mark in (".", "point", "half", "quarter", "/", "third", "eighth", "sixteenth"))


def _sentence(text: str) -> str:
    """What is left of the sentence that a figure is in."""
    return _END.split(text, maxsplit=1)[0]


def _up_to_border(words: tuple[str, ...]) -> tuple[str, ...]:
    """Those before the first word that begins another statement."""
    return words[: next((at for at, word in enumerate(words) if word in _BORDERS), len(words))]


class Talk:
    """All of a record's measures in order of speaking."""

    def __init__(self, record: Record, trade: Trade) -> None:
        self.record = record
        self.trade = trade
        self.said: tuple[Said, ...] = tuple(
            Said(
                one,
                place,
                figures_of(one),
                tuple(words_of(one.before)),
                tuple(words_of(_sentence(one.after))),
                tuple(words_of(_END.split(one.before)[-1])),
            )
            for place, one in enumerate(record.measures)
            if one.stands
        )
        self._before = {place: tuple(words_of(one.before)) for place, one in enumerate(record.measures)}

    @cached_property
    def words(self) -> frozenset[str]:
        """Every word of the record, as far as it holds them."""
        record = self.record
        texts = [record.session.title, record.session.subject or "", *(one.quote for one in record.steps)]
        texts += [one.name for one in (*record.tools, *record.materials)]
        for one in record.measures:
            texts += [one.before, one.after]
        return frozenset(word.removesuffix("'s") for text in texts for word in words_of(text))

    @cached_property
    def tells_pitch(self) -> bool:
        """Something is tuned in this talk, so that "flat" may be of pitch."""
        return any(one.measure.kind == "pitch" for one in self.said)

    @cached_property
    def materials(self) -> frozenset[str]:
        """Single words that name a material of the trade."""
        return frozenset(said for term in self.trade.materials for said in term.said if " " not in said)

    @cached_property
    def by_id(self) -> dict[str, Said]:
        """Standing measures by id."""
        return {one.measure.id: one for one in self.said}

    @cached_property
    def by_place(self) -> dict[int, Said]:
        """Standing measures by their place among all."""
        return {one.place: one for one in self.said}

    def near(self, one: Said, back: int, ahead: int = 0, few: int = _FEW, beyond: bool = False) -> tuple[str, ...]:
        """Words about a figure, those of the figure before it included where it has hardly any of its own."""
        words = list(one.before[-back:])
        place = one.place
        while len(words) < few and place in self._before and self._before[place]:
            place -= 1
            words = [*self._before.get(place, ())[len(words) - back :], *words]
        behind = one.after[:ahead]
        return (*words, *(behind if beyond else _up_to_border(behind)))

    def previous(self, one: Said) -> Said | None:
        """The figure said just before, where it stands and is near."""
        return self.by_place.get(one.place - 1) if one.near else None
