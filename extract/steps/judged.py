"""Whether words read as an instruction: a verb of work that is one, something that it is done to, and no statement.

Takes "warm the joint for two minutes", "wind them in"; refuses "string the twelfth fret" where "is nine sixty-fourths"
follows (a noun taken for a verb), "free", "rock", "etch on the race" (an adjective, a noun, a state).
"""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.grammar import PARTICLES
from extract.clauses.things import kind_of
from extract.steps.candidate import Candidate
from extract.steps.complement import states
from extract.steps.phrase_words import phrase_words

_BY_VERB = frozenset({"command", "stray", "own hand", "advice", "bare participle", "mixed"})
"""Shapes whose instruction begins with a verb that was said, its object behind it."""
_COMMANDING = frozenset({"command", "stray", "mixed", "bare participle"})
_FINITE = frozenset({"'s", "is", "are", "was", "were", "'re", "'ll", "'ve", "i", "am", "'m", "n't", "he", "she", "who"})
_WITHOUT_VERB = frozenset({"laid to", "placed"})
_BEING = frozenset({"is", "'s", "are", "was", "were"})
_NO_THINGS = frozenset({"people", "abstract", "time", "film"})
_POINTING = frozenset({"it", "them", "that", "this", "these", "those", "one"})
_USED = 5
"""Words of the shortest instruction to use something: "use the lamp on it"."""
_NOT_VERBS = ("NN", "JJ", "IN", "RB", "CD", "DT")


def reads_well(bench: Bench, candidate: Candidate, text: str) -> bool:
    """True where the text can stand as an instruction of its own."""
    said = text.lower().split()
    if not said or not _FINITE.isdisjoint(said) or said[-1] in phrase_words().hanging:
        return False
    if _is_told(bench, candidate):
        return False
    verb, _, particle = candidate.verb.split(" / ")[0].partition(" ")
    if len(said) == 1 or (candidate.thing is None and candidate.tool is None and not _is_placed(bench, candidate)):
        alone = text.lower() in phrase_words().alone or " ".join(said[:2]) in phrase_words().alone
        return alone and (len(said) > 1 or _ends(bench, candidate.rest[0]))
    if bench.words.kind(verb, particle) == "idle" or verb == "do" or _lacks_object(said):
        return False
    thing = candidate.thing
    if thing is not None and not thing.pronoun and not bench.is_noun(thing.head):
        return False
    if candidate.thing is not None and kind_of(bench, candidate.thing) in _NO_THINGS:
        return False
    return candidate.shape not in _BY_VERB or (_is_verb(bench, candidate) and not _is_stated(bench, candidate))


def _is_told(bench: Bench, candidate: Candidate) -> bool:
    """ "the string height at the twelfth fret is nine", "and the dark line on the plate?": a statement, a question."""
    piece = candidate.piece
    if bench.word(piece.end - 1) == "?":
        return True
    laid = candidate.tool is not None and candidate.shape in _WITHOUT_VERB
    return laid and any(bench.word(at) in _BEING for at in range(piece.lead, piece.end))


def _lacks_object(said: list[str]) -> bool:
    """ "put under the chassis", "use the lights", "pull off": something is still to be said."""
    words = phrase_words()
    if len(said) == 2 and said[1] in PARTICLES:
        return " ".join(said) not in words.alone
    if said[0] in words.needs_object and said[1] in words.places and said[2:3] != ["it"]:
        return True
    if said[0] == "put" and not any(word in words.places or word in PARTICLES for word in said[2:]):
        return said[1] not in PARTICLES | words.places
    if said[0] in words.needs_place and len(said) == 2 and said[1] in _POINTING:
        return True
    if said[0] in words.needs_object and said[1] in PARTICLES and said[2] in words.places:
        return True
    return said[0] == "use" and len(said) < _USED


def _ends(bench: Bench, at: int) -> bool:
    """True where nothing more is said of the verb: "wait", not "play me a low note"."""
    return at >= len(bench) or not bench.doc[at].is_alpha or bench.begins_breath(at) or bench.tag(at) in {"CC", "RB"}


def _is_placed(bench: Bench, candidate: Candidate) -> bool:
    """True where a particle, a place or a measure follows the verb."""
    at = candidate.rest[0]
    return at < candidate.rest[1] and (
        bench.word(at) in PARTICLES | phrase_words().places
        or bench.tag(at) in {"IN", "TO"}
        or bench.measure_end(at) is not None
    )


def _is_verb(bench: Bench, candidate: Candidate) -> bool:
    """The word that the instruction begins with is a verb: by its tag, or by the list with an object behind it."""
    at = candidate.rest[0] - 1
    verb, _, particle = candidate.said.partition(" ")
    word, behind = bench.word(at), bench.word(at + 1)
    closed = behind in PARTICLES and (bench.tag(at + 1) in {"RP", "RB"} or bench.takes_object(at + 2))
    objective = bench.takes_object(at + 1) or closed
    if word == candidate.said != bench.doc[at].lemma_.lower() and bench.tag(at) in {"VBD", "VBN"}:
        return False
    if bench.words.irregular.get(word, word) != word == candidate.said and word not in bench.words.same_past:
        return False
    if f"{word} {behind}" in bench.words.idle or (verb in {"come", "go", "get"} and not _goes_along(verb, behind)):
        return False
    if bench.tag(at).startswith(_NOT_VERBS) and not objective:
        return candidate.shape in {"own hand", "advice"} and bench.words.knows(verb)
    kind = bench.words.kind(verb, particle)
    if kind == "unknown":
        return objective and (bench.tag(at).startswith("VB") or bench.begins_breath(at))
    return True


def _goes_along(verb: str, behind: str) -> bool:
    words = phrase_words()
    return verb != "come" and behind in (words.along if verb == "get" else PARTICLES)


def _is_stated(bench: Bench, candidate: Candidate) -> bool:
    """ "string the twelfth fret | is": what seems to be commanded is the beginning of a statement."""
    thing = candidate.thing
    if candidate.shape not in _COMMANDING or thing is None or candidate.fronted is not None:
        return False
    if thing.pronoun and bench.word(thing.head) not in {"one", "ones", "that", "this", "these", "those"}:
        return False
    direct = candidate.rest[0] <= thing.start <= candidate.rest[0] + 1
    return direct and candidate.said not in phrase_words().clause_verbs and states(bench, thing.end)
