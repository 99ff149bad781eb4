"""A figure that no bench knows beside such a word: a feeler of 5 mm, glue in a water bath at 600 degrees.

Takes "the gap must be 5 mm at the most, I use the feeler" and "humidity's at 450 percent"; refuses "a shim 0.1 mm thick
under a leg of 40 mm". Source: the row's own, in data/checks.toml.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from fractions import Fraction

from extract.checks.finding import Suspicion
from extract.checks.linear import conversion
from extract.checks.scale import is_usual
from extract.checks.slips import SLIPS, Meant
from extract.checks.span_text import span_text
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import CommonBand, Phrase, check_words

_BEFORE, _BEHIND = 6, 9
_LONGEST = 4
_SENTENCES = 2
_MARKS = frozenset(".?!")
_FAR = Fraction(2)
"""A figure this many times outside is past what a strange job explains."""
_ACROSS = frozenset({"wide", "long", "across", "square", "tall", "high", "deep"})
_OF_SOMETHING_ELSE = frozenset({"under", "into", "from", "onto", "across", "along", "past", "over"})


def find_uncommon(talk: Talk) -> Iterator[Suspicion]:
    """Each figure outside the band of the word beside it, with the slip that explains it."""
    things = _names(talk)
    for one in talk.said:
        if one.measure.unit is None or len(one.figures) > 1:
            continue
        before = _near(one)[-_BEFORE:]
        for band in check_words().common:
            found = _judge(one, band) if _is_beside(one, band, before, things) else None
            if found is not None:
                if not is_usual(talk, one):
                    yield found
                break


def _is_beside(one: Said, band: CommonBand, before: Phrase, things: frozenset[str]) -> bool:
    if one.measure.difference and not band.difference:
        return False
    if before[-1:] == ("every",):
        return False
    if one.after[:1] and (one.after[0] in _ACROSS or one.after[0] in things):
        return False
    if _holds(before, band.words):
        return not _OF_SOMETHING_ELSE & {*before[-2:]}
    return band.behind and _holds(one.after[:_BEHIND], band.words)


def _near(one: Said) -> tuple[str, ...]:
    """The words before a figure that are in its own sentence or in the one before."""
    said = re.split(r"(?<=[.?!])\s", one.measure.before.rstrip())
    sentences = _SENTENCES - bool(said[-1][-1:] in _MARKS)
    return tuple(words_of(" ".join(said[-sentences:])))


def _names(talk: Talk) -> frozenset[str]:
    """Single words that name a part or tool: in "a quarter inch slot" the figure is the slot's."""
    terms = (*talk.trade.parts, *talk.trade.tools, *talk.trade.subjects)
    return frozenset(said for term in terms for said in term.said)


def _holds(words: tuple[str, ...], phrases: frozenset[Phrase]) -> bool:
    return any(words[at : at + length] in phrases for at in range(len(words)) for length in range(1, _LONGEST + 1))


def _judge(one: Said, band: CommonBand) -> Suspicion | None:
    measure = one.measure
    convert = conversion(measure.unit or "", band.unit)
    if convert is None:
        return None
    value = convert(one.figure.value)
    low, high = Fraction(band.low).limit_denominator(10**6), Fraction(band.high).limit_denominator(10**6)
    if low <= value <= high:
        return None
    far = value > high * _FAR or (low > 0 and value < low / _FAR)
    meant = _meant(one, low, high, band.unit)
    usual = span_text(band.low, band.high, band.unit, measure)
    message = f"{measure.display} lies outside {usual}, where {band.name} lies"
    if meant is not None:
        message += f"; {meant.text} if {meant.reason}"
    severe = far and (meant is not None or value > high * _FAR * _FAR)
    return Suspicion("implausible", "stop" if severe else "look", (measure,), message, band.source)


def _meant(one: Said, low: Fraction, high: Fraction, unit: str) -> Meant | None:
    for slip in SLIPS:
        meant = slip(one)
        convert = conversion(meant.unit, unit) if meant is not None else None
        if meant is not None and convert is not None and low <= convert(meant.value) <= high:
            return meant
    return None
