"""The signs that speak for or against a candidate: "starts cue", "verb work", "object part", "talk word", "doubt idle".

Each is a fact about one clause that a reader can check; none decides alone. What they weigh is fitted on marked
narrations and stands in data/step_weights.toml.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from extract.clauses.bench import Bench
from extract.clauses.talk import talk
from extract.clauses.things import Thing, kind_of
from extract.steps.candidate import Candidate
from extract.steps.scene import Scene

_JOINERS = frozenset({"and", "then", "so", "but", "or", "which"})
_OPENERS = ("now", "next", "then", "first", "right", "just", "so")
_UNITS = frozenset({"length", "time", "torque", "temperature", "mass"})
_MODALS = frozenset({"would", "should", "could", "might", "may", "can", "must", "'d"})
_POINTING = frozenset({"the", "this", "that", "these", "those"})
_DETERMINERS = {"PRP$": "poss", "CD": "num"}
_BREATH, _WORK = 1.5, 5.0
"""Seconds of silence after which a speaker has paused, and has gone to work."""
_SHORT, _LONG = 3, 12
"""Tokens of a short and a long clause."""
_TALK = 12
"""Cues of a talk long enough to begin and end."""
_RECENT = 12
"""Cues within which work told again is the same work."""


def signs_of(scene: Scene, doubts: Iterable[str], earlier: list[Candidate]) -> frozenset[str]:
    """All signs of a candidate, `earlier` being the ones read before it in spoken order."""
    found = {f"doubt {name}" for name in doubts}
    for of in (_work, _things, _clause, _talked, _silences, _said):
        found.update(of(scene))
    found.update(_again(scene.bench, scene.candidate, earlier))
    return frozenset(found)


def _work(scene: Scene) -> Iterator[str]:
    bench, candidate = scene.bench, scene.candidate
    verb, _, particle = candidate.verb.split(" / ")[0].partition(" ")
    yield f"shape {candidate.shape}"
    yield f"verb {bench.words.kind(verb, particle)}"
    trade = bench.words.class_of(verb, particle)
    if trade:
        yield f"class {trade}"
    if particle:
        yield "particle"
    yield f"mode {candidate.mode}"
    form = bench.tag(candidate.rest[0] - 1)
    if form.startswith("V"):
        yield f"form {form}"
    if not candidate.own_subject:
        yield "carried on"
    if candidate.laid or candidate.tool:
        yield "tool laid"


def _things(scene: Scene) -> Iterator[str]:
    bench, candidate, piece = scene.bench, scene.candidate, scene.piece
    thing, meant = candidate.thing, candidate.meant
    yield f"object {_kind(bench, thing)}"
    yield f"meant {_kind(bench, meant)}"
    if thing is not None:
        yield f"before object {_determiner(bench, thing)}"
    if candidate.fronted is not None:
        yield "object first"
    for kind in ("tool", "material", "part"):
        if any(bench.term_kind[k] == kind for k in range(piece.start, piece.end)):
            yield f"names {kind}"
    for kind in bench.unit_kinds(piece.start, piece.end):
        yield f"figure of {kind if kind in _UNITS else 'another kind'}"
    yield from {f"figure {bench.phases[at]}" for at in range(piece.start, piece.end) if at in bench.phases}


def _kind(bench: Bench, thing: Thing | None) -> str:
    return "none" if thing is None else kind_of(bench, thing)


def _determiner(bench: Bench, thing: Thing) -> str:
    word = bench.word(thing.start)
    if word in _POINTING:
        return "the"
    return "a" if word in {"a", "an"} else _DETERMINERS.get(bench.tag(thing.start), "bare")


def _clause(scene: Scene) -> Iterator[str]:
    bench, piece = scene.bench, scene.piece
    said = bench.lower[piece.start : piece.end]
    subject = bench.word(piece.lead)
    yield f"subject {subject if subject in {'i', 'we', 'you', 'it', 'one'} else 'none'}"
    yield f"joined by {piece.joiner if piece.joiner in _JOINERS else 'another' if piece.joiner else 'nothing'}"
    opened = set(bench.lower[piece.start : piece.lead])
    yield from (f"opens {word}" for word in _OPENERS if word in opened)
    if "with" in said:
        yield "with"
    if any(word in {"n't", "not", "never"} for word in said):
        yield "denied"
    if not _MODALS.isdisjoint(said):
        yield "modal"
    begin, end = scene.sentence
    if "?" in bench.lower[piece.start : end]:
        yield "asked"
    if "if" in bench.lower[begin : piece.start]:
        yield "behind if"
    if piece.start == begin:
        yield "starts sentence"
    size = piece.end - piece.start
    if size <= _SHORT:
        yield "short"
    elif size >= _LONG:
        yield "long"


def _talked(scene: Scene) -> Iterator[str]:
    bench, words = scene.bench, talk()
    begin, end = scene.breath
    if not words.telling.isdisjoint(bench.lower[begin:end]):
        yield "talk word"
    if begin and not words.telling.isdisjoint(bench.lower[scene.breath_of(begin - 1)[0] : begin]):
        yield "talk word before"
    if words.history.first_in(bench.lower, begin, end):
        yield "history"
    if words.later.first_in(bench.lower, begin, end):
        yield "put off"
    yield from _place(bench, scene.candidate)


def _said(scene: Scene) -> Iterator[str]:
    """The words of the breath, each by its lemma: those that the fit saw often enough have a weight."""
    begin, end = scene.breath
    return (f"said {scene.bench.doc[at].lemma_.lower()}" for at in range(begin, end) if scene.bench.doc[at].is_alpha)


def _place(bench: Bench, candidate: Candidate) -> Iterator[str]:
    """Greetings stand at the beginning, farewells at the end; a note of a few breaths has neither."""
    if bench.cue[-1] < _TALK:
        return
    place = bench.cue[candidate.start] / bench.cue[-1]
    if place < 0.1:
        yield "in first tenth"
    elif place < 0.2:
        yield "in second tenth"
    elif place > 0.9:
        yield "in last tenth"


def _silences(scene: Scene) -> Iterator[str]:
    narration, begin = scene.bench.narration, scene.breath[0]
    end = scene.breath_of(scene.candidate.end - 1)[1]
    if scene.candidate.start == begin:
        yield "starts breath"
    before = narration.start[begin] - narration.end[begin - 1] if begin else 0.0
    behind = narration.start[end] - narration.end[end - 1] if end < len(scene.bench) else 0.0
    for name, silence in (("before", before), ("behind", behind)):
        if silence >= _WORK:
            yield f"work pause {name}"
        elif silence >= _BREATH:
            yield f"pause {name}"


def _again(bench: Bench, candidate: Candidate, earlier: list[Candidate]) -> Iterator[str]:
    cue, head = bench.cue[candidate.start], _head(bench, candidate)
    recent = [one for one in earlier if cue - bench.cue[one.start] <= _RECENT]
    verbs = [one for one in recent if one.verb == candidate.verb]
    if verbs:
        yield "verb again"
    if head and any(_head(bench, one) == head for one in recent):
        yield "object again"
    if head and any(_head(bench, one) == head for one in verbs):
        yield "work again"
    if any(bench.cue[one.start] == cue for one in recent):
        yield "breath taken"


def _head(bench: Bench, candidate: Candidate) -> str:
    return "" if candidate.meant is None else bench.word(candidate.meant.head)
