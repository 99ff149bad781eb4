"""The verb of a piece with its particle and object: what every shape with a verb has in common.

"give it a spin" is spinning, "use a fine file to true the edge" is truing, "put a calliper on every fret" is measuring
frets, "i had the strings off" is removing them: the work is named, the instruction keeps the words as said.
"""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench, Verb
from extract.clauses.grammar import PARTICLES
from extract.clauses.things import Thing, kind_of, thing_at
from extract.steps.shapes.by_tool import done_with, laid_to_thing, looked_at, put_into
from extract.steps.shapes.phrase import VerbPhrase
from extract.steps.shapes.tools import tool_verb
from extract.steps.shapes.work_nouns import work_noun

_ADVERBS = frozenset({"RB", "RBR", "UH"})
_ALWAYS_PART = frozenset({"off", "out", "down", "up", "apart", "back", "in", "on", "together", "home"})
_NOT_PLACES = frozenset({"for", "by", "of", "about", "than", "till", "until", "before", "after"})
_GIVING = frozenset({"give", "do", "have", "take", "make"})
_BEGINNING = frozenset({"start", "begin", "finish", "end", "kick", "carry"})


def verb_phrase(bench: Bench, verb: Verb, end: int) -> VerbPhrase:
    """Read on from a verb to the end of its piece."""
    behind = verb.at + 1
    particle = ""
    if behind < end and bench.word(behind) in PARTICLES and not _is_place(bench, behind, end):
        particle, behind = _particle(bench, behind, end)
    at = behind
    while at < end and bench.tag(at) in _ADVERBS and bench.word(at) not in PARTICLES:
        at += 1
    if bench.word(at) in {"that", "if", "whether"} and thing_at(bench, at + 1, end) is not None:
        at += 1
    thing = thing_at(bench, at, end)
    behind_thing = thing.end if thing is not None and not particle else end
    if behind_thing < end and bench.word(behind_thing) in PARTICLES and not _is_place(bench, behind_thing, end):
        particle, _ = _particle(bench, behind_thing, end)
    placed = bool(particle) or any(
        bench.tag(k) in {"IN", "RP", "TO"} or bench.word(k) in PARTICLES for k in range(behind, end)
    )
    lemma = _joined(bench, verb.lemma, particle)
    if lemma in bench.words.idle and "of" in (bench.word(behind), bench.word(behind_thing + 1)):
        lemma = verb.lemma
    if thing is not None and kind_of(bench, thing) == "measure":
        behind, thing = thing.end, _measured_out(bench, thing, end)
    phrase = VerbPhrase(verb.lemma, lemma, verb.at, thing, placed)
    phrase = _meant(bench, phrase, end)
    if phrase.thing is None:
        phrase = replace(phrase, thing=_placed_thing(bench, behind, end))
    return phrase


def _measured_out(bench: Bench, thing: Thing, end: int) -> Thing | None:
    """ "a bit of brass shim" is brass shim; "a bit" is nothing."""
    inner = thing_at(bench, thing.end + 1, end) if bench.word(thing.end) == "of" else None
    return None if inner is None or inner.pronoun or kind_of(bench, inner) == "measure" else inner


def _particle(bench: Bench, at: int, end: int) -> tuple[str, int]:
    if (
        bench.word(at) == "back"
        and at + 1 < end
        and bench.word(at + 1) in {"on", "in", "together"}
        and not _is_place(bench, at + 1, end)
    ):
        return f"back {bench.word(at + 1)}", at + 2
    return bench.word(at), at + 1


def _joined(bench: Bench, lemma: str, particle: str) -> str:
    if not particle:
        return lemma
    joined = f"{lemma} {particle}"
    if joined in bench.words.work or joined in bench.words.idle:
        return joined
    if lemma in bench.words.plain_verbs and particle in bench.words.plain:
        return bench.words.plain[particle]
    return joined if lemma in bench.words.light or particle in _ALWAYS_PART else lemma


def _is_place(bench: Bench, at: int, end: int) -> bool:
    """True where the particle is a preposition with its noun: "in the cleaner", not "in" in "slide it in"."""
    if bench.word(at) in {"back", "apart", "together", "away", "home"}:
        return False
    thing = thing_at(bench, at + 1, end)
    return thing is not None and bench.tag(at) == "IN" and bench.tag(thing.start) not in {"CD", "PDT"}


def _placed_thing(bench: Bench, start: int, end: int) -> Thing | None:
    """Without an object of its own the verb works on what stands behind its preposition: "go over the tops"."""
    for at in range(start, end):
        if bench.word(at) in {"like", "as", "than"}:
            return None
        if bench.tag(at) in {"IN", "TO"} and bench.word(at) not in _NOT_PLACES:
            thing = thing_at(bench, at + 1, end)
            if thing is not None and bench.word(at) != "with" and kind_of(bench, thing) != "measure":
                return thing
    return None


def _meant(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase:
    for reading in (
        _noun_for_verb,
        _used_to,
        _got_done,
        _let_do,
        _begun_by,
        laid_to_thing,
        put_into,
        looked_at,
        done_with,
    ):
        found = reading(bench, phrase, end)
        if found is not None:
            return found
    return phrase


def _noun_for_verb(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "give it a spin", "do a dry run with clamps": the noun names the work."""
    if phrase.said not in _GIVING or phrase.thing is None or phrase.lemma != phrase.said:
        return None
    given = thing_at(bench, phrase.thing.end, end) if phrase.said == "give" else phrase.thing
    if given is None or given.pronoun:
        return None
    inner = thing_at(bench, given.end + 1, end) if bench.word(given.end) == "of" else None
    work = work_noun(bench, given) or (tool_verb(bench, inner) if inner is not None else None)
    if work is None:
        return None
    target = phrase.thing if phrase.said == "give" else _placed_thing(bench, given.end, end)
    return replace(phrase, lemma=work, thing=target, placed=True)


def _used_to(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "use a fine file to true the edge"."""
    if phrase.said not in {"use", "take"} or phrase.thing is None:
        return None
    at = phrase.thing.end
    verb = bench.verb(at + 1) if bench.word(at) in {"to", "and"} and at + 1 < end else None
    known = tool_verb(bench, phrase.thing)
    if phrase.said == "use" and known and not any(bench.doc[k].is_alpha for k in range(at, end)):
        return replace(phrase, lemma=known, thing=None, tool=phrase.thing, placed=True)
    if verb is None or verb.form != "base" or bench.words.kind(verb.lemma) == "idle":
        return None
    inner = verb_phrase(bench, verb, end)
    return replace(phrase, lemma=inner.lemma, thing=inner.thing or phrase.thing, placed=True)


def _got_done(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "get it cleaned up", "i had the neck clamped"."""
    if phrase.said not in {"get", "have"} or phrase.thing is None:
        return None
    if bench.lower[phrase.thing.end : phrase.thing.end + 2] in {("in", "place"), ("in", "position")} or (
        bench.lower[phrase.thing.end : phrase.thing.end + 4] == ("in", "the", "right", "place")
    ):
        return replace(phrase, lemma="set", placed=True)
    verb = bench.verb(phrase.thing.end) if phrase.thing.end < end else None
    if verb is None or verb.form not in ("past", "ing") or bench.words.kind(verb.lemma) != "work":
        return None
    inner = verb_phrase(bench, verb, end)
    return replace(phrase, lemma=inner.lemma, placed=True)


def _let_do(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "let everything dry for 3 days", "leave it to soak", "leave the glue to set": what it is left to do."""
    if phrase.said not in {"let", "leave"} or phrase.thing is None or phrase.lemma != phrase.said:
        return None
    at = phrase.thing.end + (bench.word(phrase.thing.end) == "to")
    verb = bench.verb(at) if at < end else None
    if verb is None or verb.form not in ("base", "ing") or bench.words.kind(verb.lemma) != "work":
        return None
    return replace(phrase, lemma=verb.lemma, placed=True)


def _begun_by(bench: Bench, phrase: VerbPhrase, end: int) -> VerbPhrase | None:
    """ "start by masking the top"."""
    if phrase.said not in _BEGINNING:
        return None
    for at in range(phrase.at + 1, min(phrase.at + 4, end)):
        verb = bench.verb(at)
        if verb is not None and verb.form == "ing":
            inner = verb_phrase(bench, verb, end)
            return replace(phrase, lemma=inner.lemma, thing=inner.thing, placed=True)
    return None
