"""A verb that says little, read by its tool or place: "put a calliper on every fret" measures the frets.

Also "look at the bridge", "do it with a brass brush", "drop it in the cleaner"; refuses "run the wire through".
"""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench
from extract.clauses.things import Thing, is_workable, kind_of, thing_at
from extract.steps.shapes.phrase import VerbPhrase
from extract.steps.shapes.tools import container_verb, tool_verb

_LAID = frozenset(
    {
        "on",
        "over",
        "to",
        "in",
        "into",
        "along",
        "across",
        "round",
        "around",
        "onto",
        "against",
        "inside",
        "under",
        "between",
        "through",
        "down",
        "up",
    }
)
_CHECKING = frozenset({"slip", "slide", "hold", "poke", "offer"})


def looked_at(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "i look at the bridge from the side", "have a look under the foot": inspecting, where it is a part."""
    if phrase.said != "look" or phrase.lemma != "look":
        return None
    at = phrase.at + 1
    if bench.word(at) == "with":
        tool = thing_at(bench, at + 1, end)
        known = tool is not None and tool_verb(bench, tool) in {"measure", "check"}
        return replace(phrase, lemma="check", thing=None, placed=True) if known else None
    if bench.word(at) not in {"at", "over", "under", "inside", "along", "down", "through", "behind"}:
        return None
    thing = thing_at(bench, at + 1, end)
    if thing is None or thing.pronoun or not is_workable(bench, thing):
        return None
    if kind_of(bench, thing) != "part" and bench.tag(thing.start) not in {"DT", "PRP$"}:
        return None
    return replace(phrase, lemma="inspect", thing=thing, placed=True)


def done_with(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "the body i did with a brass brush", "notches i make with a round file": the tool tells the work."""
    if phrase.said not in {"do", "make", "work", "go", "hit", "take"}:
        return None
    for at in range(phrase.at + 1, end):
        tool = thing_at(bench, at + 1, end) if bench.word(at) == "with" else None
        verb = tool_verb(bench, tool) if tool is not None else None
        if verb is not None:
            return replace(phrase, lemma=verb, placed=True)
    return None


def put_into(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "drop it in the cleaner": the place tells the work."""
    if phrase.said not in bench.words.light or phrase.thing is None:
        return None
    work = container_verb(bench, phrase.thing.end, end)
    return None if work is None else replace(phrase, lemma=work, placed=True)


def laid_to_thing(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "put a calliper on every fret", "run a biro over it": the tool tells the work, the place what it is done to."""
    thing = phrase.thing
    if thing is None or thing.pronoun:
        return None
    if kind_of(bench, thing) == "body":
        target = thing_at(bench, thing.end + 1, end) if bench.word(thing.end) in _LAID else None
        feels = target is not None and phrase.said in {"hold", "run", "put", "lay", "rub", "press"}
        return (
            replace(phrase, thing=target, placed=True)
            if target is not None and feels and is_workable(bench, target)
            else None
        )
    if phrase.said not in bench.words.light | _CHECKING:
        return None
    verb = tool_verb(bench, thing)
    if phrase.said in _CHECKING and verb not in {"measure", "check"}:
        return None
    if bench.word(thing.end) == "of":
        thing = thing_at(bench, thing.end + 1, end) or thing
    if thing.end >= end:
        return None
    if bench.word(thing.end) in {"inside", "behind", "underneath"} and verb in {"check", "measure"}:
        target = thing_at(bench, thing.end + 1, end)
        seen = target if target is not None and _near(bench, target) else None
        return replace(phrase, lemma=verb, thing=seen, tool=thing, placed=True)
    if verb is None and kind_of(bench, thing) != "tool":
        return None
    if bench.word(thing.end) not in _LAID:
        return None
    target = thing_at(bench, thing.end + 1, end)
    if target is None:
        return None
    return replace(phrase, lemma=verb or phrase.lemma, thing=target, tool=thing, placed=True)


def _near(bench: Bench, thing: Thing) -> bool:
    """False for "no daylight" behind "a light inside": what is seen there, not what is looked at."""
    return bench.word(thing.start) not in {"no", "nothing"} and is_workable(bench, thing)
