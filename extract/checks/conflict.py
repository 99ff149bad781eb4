"""Two figures for the same attribute of the same thing in the same phase, with no correction between.

Takes "we're after 7/64 at the twelfth" and later "remember, we're shooting for 9/64 at the twelfth"; "the left valve's
at 52, the right's at 31" and "it was 42, it's 36 now" pass. It is strict about what counts as the same thing: a false
alarm costs more than a miss. Source: consistency within one narration.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from extract.checks.agreement import agreement
from extract.checks.finding import Suspicion
from extract.checks.linear import conversion
from extract.checks.talk import Said, Talk
from extract.checks.vocabulary import check_words

SOURCE = "the narration itself: one thing, two figures"
_NEAR = 10
"""Words before a figure that may tell its thing from a neighbour."""
_BEHIND = 5
_SERIES = 3
"""After this many figures for one attribute its readings are a series, not a contradiction."""
_RECALL, _SPARE = 14, 9
_SHORT = 4
_STEMS = frozenset(
    {
        "",
        "that",
        "then",
        "with",
        "from",
        "when",
        "they",
        "this",
        "here",
        "have",
        "were",
        "down",
        "test",
        "seco",
        "mill",
        "inch",
    }
)
_CAME = frozenset({"came", "come", "was", "were", "started", "had", "found", "began", "arrived", "measured"})
_FOUND = frozenset({"as_found", "found", "came", "was", "started", "measured", "reads", "got"})
_ARTICLES = (("a",), ("an",), ("another",), ("each",))
_FAR = 2
"""Two sizes further apart than this are of two things, whatever they are called."""
_PHASES = ("as_found", "target", "as_left")
"""A figure of another instrument or a rule of thumb conflicts with nothing."""


def find_conflicts(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that differs from the one first said of the same thing."""
    first: dict[tuple[str | None, ...], list[Said]] = {}
    for one in talk.said:
        recalled = _recalled(talk, one)
        if recalled is not None:
            yield _misremembered(recalled, one)
            continue
        key = _thing(one)
        if key is None:
            continue
        earlier = first.setdefault(key, [])
        found = next((other for other in earlier if _differ(other, one) and _same_thing(talk, other, one)), None)
        if found is not None and len(earlier) < _SERIES:
            yield _suspect(found, one)
        if len(earlier) < _SERIES:
            earlier.append(one)


def _recalled(talk: Talk, one: Said) -> Said | None:
    """ "Down from the 48 it came in at": the figure once found of the same, where that was another."""
    words = check_words()
    said = next((n for n in (3, 2, 1) if one.before[-n:] in words.recall_before), 0)
    if not said or one.after[:1] not in {(word,) for word in words.recall_behind} or one.measure.unit is None:
        return None
    if not _CAME & {*one.after[:7]}:
        return None
    last = talk.previous(one)
    told = (*(last.before if last is not None else ()), *one.before)[-_RECALL:]
    names = {_stem(word) for word in (*told, *one.after[:6], *(one.measure.attribute or "").split())}
    earlier = [
        other
        for other in talk.said
        if other.place < one.place
        and other.measure.kind == one.measure.kind
        and _FOUND & {*other.before[-_RECALL:], other.measure.phase}
        and names
        & {_stem(word) for word in (*other.before[-_RECALL:], *(other.measure.attribute or "").split())} - _STEMS
    ]
    if not earlier and last is not None and len(one.before) < _SPARE and _CAME & {*last.after, *one.before}:
        earlier = [last]
    values = {other.measure.value for other in earlier}
    return earlier[-1] if len(values) == 1 and _differ(earlier[-1], one) else None


def _stem(word: str) -> str:
    """ "drop", "dropping" and "drops" alike; too short a word names nothing."""
    return word[:4] if len(word) >= _SHORT else ""


def _thing(one: Said) -> tuple[str | None, ...] | None:
    measure = one.measure
    if not measure.attribute or measure.phase not in _PHASES or measure.unit is None:
        return None
    if measure.difference or measure.limit or measure.tolerance or measure.same_as or len(one.figures) > 1:
        return None
    return measure.attribute, measure.phase, measure.kind


def _differ(first: Said, second: Said) -> bool:
    convert = conversion(first.measure.unit or "", second.measure.unit or "")
    if convert is None or first.figure.value == 0:
        return False
    ratio = abs(second.figure.value / (convert(first.figure.value) or 1))
    return Fraction(1, _FAR) < ratio < _FAR and agreement(first.figure, second.figure, convert) == "disagrees"


def _same_thing(talk: Talk, first: Said, second: Said) -> bool:
    """The words about both name one thing, none tells it from the other, and nothing was done between."""
    if first.measure.cue == second.measure.cue or _names_its_thing(first) or _names_its_thing(second):
        return False
    if (first.measure.where or second.measure.where) != (second.measure.where or first.measure.where):
        return False
    words = [frozenset(_root(word) for word in talk.near(one, _NEAR, _BEHIND)) for one in (first, second)]
    vocabulary = check_words()
    for row in vocabulary.telling_apart:
        here, there = (row & near for near in words)
        if here and there and not here & there:
            return False
    if any(bool(row & words[0]) != bool(row & words[1]) for row in vocabulary.alone):
        return False
    if vocabulary.changing & {*talk.near(second, _NEAR), *second.after[:3]}:
        return False
    recalled = bool(vocabulary.recalling & words[1]) and first.measure.item == second.measure.item
    return recalled or _named_in_both(first, second, words) or _named_again(talk, second, words[1])


def _named_again(talk: Talk, second: Said, words: frozenset[str]) -> bool:
    """ "So remember, on action we're shooting for 9/64": the attribute is named again and called known."""
    attribute = next((one for one in talk.trade.attributes if one.name == second.measure.attribute), None)
    named = attribute is not None and any(words >= {_root(w) for w in said.split()} for said in attribute.said)
    return named and bool(check_words().recalling_firmly & words)


def _named_in_both(first: Said, second: Said, words: list[frozenset[str]]) -> bool:
    """A word that names the thing, or tells which of several it is, stands near both figures."""
    items = {_root(word) for one in (first, second) for word in (one.measure.item or "").split()}
    shared = words[0] & words[1]
    which = frozenset().union(*check_words().telling_apart) & shared
    if first.measure.item == second.measure.item and items & shared:
        return True
    return bool(which) and bool(check_words().recalling & words[1])


def _root(word: str) -> str:
    word = word.removesuffix("'s")
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def _names_its_thing(one: Said) -> bool:
    """ "a 10k resistor", "a quarter inch driver": another size is another thing."""
    item = (one.measure.item or "").split()
    return bool(item) and bool(one.after) and one.after[0].removesuffix("s") in item and one.before[-1:] in _ARTICLES


def _misremembered(first: Said, second: Said) -> Suspicion:
    one, other = first.measure, second.measure
    what = f"the {one.attribute}" if one.attribute else "it"
    message = f"{what} was {one.display} as found, and is recalled here as {other.display}"
    return Suspicion("conflict", "stop", (one, other), message, SOURCE)


def _suspect(first: Said, second: Said) -> Suspicion:
    one, other = first.measure, second.measure
    where = f" ({other.where})" if other.where else ""
    of = f" of the {other.item}" if other.item and other.item == one.item else ""
    what = f"the {other.attribute}{of}{where}"
    phase = {"as_found": "as found", "target": "aimed at", "as_left": "as left"}[other.phase]
    message = f"{what}, {phase}, is {one.display} at first and {other.display} here, with no correction between"
    return Suspicion("conflict", "stop", (one, other), message, SOURCE)
