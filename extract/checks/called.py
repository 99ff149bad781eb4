"""A unit of another kind than the words near its figure call for, where none of them tells of its own kind.

Takes "light strings pull about 160 inches on that joint" and "the bubble runs back inside four grams, quick enough";
refuses "pull it out two inches" and "it weighs, with the 3 mm washer on it, 40 grams".
Source: the words themselves; which words call for which kind stands in data/kind_words.toml.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

from extract.checks.finding import Suspicion
from extract.checks.said_in import words_for
from extract.checks.talk import Said, Talk
from extract.checks.units import SOURCE, a_kind, allowed, choices
from extract.checks.vocabulary import Phrase
from extract.roots import root

_TABLE = "called"
_BEFORE, _CALLING, _BEHIND = 10, 8, 4
_RIGHT_BY = 2
"""Words before a figure among which what calls for its kind does so whatever else is said."""
_LONGEST = 3
_FEWEST = 2
_UNSAID = frozenset({"time", "temperature"})
"""Kinds of which a figure without its unit is no other one that merely stands near."""
_SETTLES = 4
"""Cues up to which another figure of the kind gives one its unit."""
_LENGTH = "length"


@dataclass(frozen=True, slots=True)
class _Kind:
    firm: frozenset[Phrase]
    loose: frozenset[Phrase]


@dataclass(frozen=True, slots=True)
class _Near:
    """Roots of the words about a figure: of its sentence, of its own statement, and behind it."""

    sentence: Phrase
    own: Phrase
    behind: Phrase


def find_miscalled(talk: Talk) -> Iterator[Suspicion]:
    """Each figure whose unit is of a kind that nothing near speaks of, beside words that call for another."""
    for one in talk.said:
        measure = one.measure
        if measure.kind not in _kinds() or (not measure.unit_said and len(one.figures) > 1):
            continue
        near = _near(one)
        for kind in _kinds():
            phrases = _held(near.own, _kinds()[kind].firm) + _calling_behind(near.behind, measure.kind, kind)
            if not phrases or measure.kind in allowed(frozenset({kind}), kind):
                continue
            if not _is_at_home(near, measure.kind, phrases):
                if measure.unit_said:
                    yield _miscalled(one, phrases[-1], kind)
                elif kind in _UNSAID and not _is_settled(talk, one, kind):
                    yield _unsaid(one, phrases[-1], kind)
                break


def _calling_behind(behind: Phrase, own: str, kind: str) -> list[Phrase]:
    """What calls for a kind right behind a figure: not "the weight of", which begins what is said next.

    Any time may have its "to pull" behind it.
    """
    if own == "time" and behind[:1] == ("to",):
        return []
    return [phrase for phrase in _held(behind, _kinds()[kind].firm, _FEWEST) if phrase[-1] != "of"]


def _miscalled(one: Said, phrase: Phrase, kind: str) -> Suspicion:
    measure = one.measure
    words = _as_said(one, phrase)
    message = (
        f'{measure.display} is {a_kind(measure.kind or "")}, but "{words}" calls for {a_kind(kind)}, in {choices(kind)}'
    )
    return Suspicion("dimension", "stop", (measure,), message, SOURCE)


def _unsaid(one: Said, phrase: Phrase, kind: str) -> Suspicion:
    words = _as_said(one, phrase)
    needed = f'"{words}" calls for {a_kind(kind)}, in {choices(kind)}'
    message = f"{one.measure.quote} has no unit, and nothing near it settles one; {needed}"
    return Suspicion("unit_missing", "stop", (one.measure,), message, SOURCE)


def _as_said(one: Said, phrase: Phrase) -> str:
    said = {root(word): word for word in (*one.clause, *one.after)}
    return " ".join(said.get(word, word) for word in phrase)


def _is_settled(talk: Talk, one: Said, kind: str) -> bool:
    """Another figure of that kind is said with its unit near by."""
    return any(
        other.kind == kind and other.unit_said and abs(other.cue - one.measure.cue) <= _SETTLES
        for other in talk.record.measures
    )


def _near(one: Said) -> _Near:
    sentence = tuple(root(word) for word in one.clause[_of_last(one) :][-_BEFORE:])
    borders = words_for(_TABLE, "borders")
    last = max((at for at, word in enumerate(sentence) if word in borders), default=-1)
    own = sentence[last + 1 :] if len(sentence) - last > _FEWEST else sentence
    behind = tuple(root(word) for word in one.after[:_BEHIND])
    end = next((at for at, word in enumerate(behind) if word in borders | words_for(_TABLE, "subjects")), len(behind))
    return _Near(sentence, own[-_CALLING:], behind[:end])


def _of_last(one: Said) -> int:
    """How many words at the beginning are of the figure before: "30 cm in diameter, 5 kg"."""
    if not one.place or not one.near or len(one.clause) < len(one.before):
        return 0
    return 2 if one.before[:1] in (("in",), ("of",)) else 1


def _is_at_home(near: _Near, kind: str, phrases: list[Phrase]) -> bool:
    """Words near a figure tell of its own kind; loose ones don't where it is called otherwise right by it."""
    used = {word for phrase in phrases if len(phrase) > 1 for word in phrase}
    before = tuple(word for word in near.sentence if word not in used)
    behind = tuple(word for word in near.behind if word not in used)
    if _held(before, _kinds()[kind].firm) or _held(behind, _kinds()[kind].firm):
        return True
    foreign = [phrase for phrase in phrases if phrase not in _kinds()[kind].loose]
    if any(phrase[-1] in near.own[-_RIGHT_BY:] for phrase in foreign) and kind != _LENGTH:
        return False
    # A length is at home nearly anywhere, so only what stands right by it tells.
    before, behind = (before[-_RIGHT_BY:], behind[:1]) if kind == _LENGTH else (before, behind)
    return bool(_held(before, _kinds()[kind].loose) or _held(behind, _kinds()[kind].loose))


def _held(words: Phrase, phrases: frozenset[Phrase], first: int = _BEFORE) -> list[Phrase]:
    """Every one of the phrases that begins with one of the first so many words."""
    pieces = (words[at : at + size] for at in range(min(first, len(words))) for size in range(1, _LONGEST + 1))
    return [piece for piece in pieces if piece in phrases]


@cache
def _kinds() -> dict[str, _Kind]:
    data = tomllib.loads((files("extract") / "data" / "kind_words.toml").read_text(encoding="utf-8"))
    return {kind: _Kind(_phrases(row["firm"]), _phrases(row["loose"])) for kind, row in data.items()}


def _phrases(rows: list[str]) -> frozenset[Phrase]:
    return frozenset(tuple(root(word) for word in row.split()) for row in rows)
