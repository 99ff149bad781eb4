"""Light verbs with nothing in hand: "take", "we go", "let that be", "i've got a knife"."""

from __future__ import annotations

from extract.clauses.grammar import PARTICLES
from extract.clauses.things import is_workable, kind_of
from extract.steps.scene import Scene

_PLACED = frozenset(
    {"state", "inverted", "goes", "returned", "laid to", "figured", "put", "dosed", "shown", "instrument"}
)
_HAVING = frozenset(
    {
        "get",
        "make",
        "keep",
        "come",
        "find",
        "give",
        "leave",
        "let",
        "do",
        "use",
        "start",
        "stop",
        "go",
        "sit",
        "stand",
        "rest",
    }
)
_PLACES = PARTICLES | {
    "into",
    "onto",
    "to",
    "between",
    "with",
    "from",
    "inside",
    "under",
    "alone",
    "for",
    "at",
    "against",
}


def empty(scene: Scene) -> bool:
    """True where a light verb has no thing, or no place to put it."""
    candidate, bench = scene.candidate, scene.bench
    verb, _, particle = candidate.verb.partition(" ")
    if candidate.said == "give" and particle:
        return True
    if candidate.shape in _PLACED or bench.words.kind(verb, particle) != "light":
        return False
    if candidate.thing is None or not is_workable(bench, candidate.thing):
        return True
    if verb in {"get", "make"} and not particle and _says_nothing(scene):
        return True
    if verb == "keep" and particle in {"away", "out", "off", "clear"}:
        return True
    if verb == "keep" and kind_of(bench, candidate.thing) not in {"part", "tool", "material", "pronoun"}:
        return True
    direct = candidate.fronted is not None or candidate.thing.start <= candidate.rest[0] + 1
    if candidate.verb == candidate.said and verb in {"give", "have", "make"} and not direct:
        return True
    if particle or verb not in _HAVING | {"take", "put", "run", "stick", "hold"}:
        return False
    start, end = candidate.rest
    sized = candidate.fronted is not None and bool(bench.unit_kinds(start, end))
    placed = sized or any(bench.word(k) in _PLACES or bench.tag(k) == "IN" for k in range(start, end))
    return not placed and verb in _HAVING and not (verb in {"use", "let", "do", "find"} and not candidate.thing.pronoun)


def _says_nothing(scene: Scene) -> bool:
    """ "got them", "make it twelve", "got a dining chair here": had or put right, nothing done."""
    candidate, bench = scene.candidate, scene.bench
    thing = candidate.thing
    if thing is None or candidate.verb != candidate.said:
        return False
    had = candidate.said == "get" and (bench.word(thing.start) in {"a", "an"} or thing.pronoun)
    return (
        (had and candidate.mode == "done")
        or (candidate.said == "make" and thing.pronoun)
        or (candidate.said == "get" and thing.pronoun and thing.end >= candidate.rest[1] - 1)
    )
