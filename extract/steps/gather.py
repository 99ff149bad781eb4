"""From pieces to candidates: shapes, what they lean on, and the signs for and against them."""

from __future__ import annotations

from dataclasses import dataclass, replace

from extract.clauses.bench import Bench
from extract.clauses.history import told_history
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, extent, kind_of, thing_at
from extract.clauses.topics import Topics
from extract.steps.candidate import Candidate
from extract.steps.evidence import signs_of
from extract.steps.scene import Scene
from extract.steps.shapes import LOOSE, SHAPES
from extract.steps.shapes.again import again
from extract.steps.shapes.headed import headed
from extract.steps.shapes.listed import tool_list
from extract.steps.shapes.named import heading
from extract.steps.shapes.tool_named import tool_named
from extract.steps.vetoes import DOUBTS, VETOES

_MARKS = frozenset({"now", "next", "first", "then"})


@dataclass(frozen=True, slots=True)
class Told:
    """A candidate and the signs that speak for and against it."""

    candidate: Candidate
    signs: frozenset[str]


def gather(bench: Bench, pieces: tuple[Piece, ...]) -> tuple[Told, ...]:
    """All candidates in spoken order, the doubtful ones too, with what their pronouns mean."""
    history = told_history(bench, pieces)
    topics = Topics(bench)
    told: list[Told] = []
    trusted: list[Candidate] = []
    for index, piece in enumerate(pieces):
        candidate = _read(bench, pieces, index)
        if candidate is None and trusted and not history[index]:
            candidate = again(bench, piece, trusted[-1])
        worked_on = None
        if candidate is not None:
            scene = Scene(bench, candidate, pieces, index, history[index])
            if any(veto(scene) for _, veto in VETOES):
                candidate = None
        if candidate is not None:
            doubts = [name for name, doubt in DOUBTS if doubt(scene)]
            candidate = _with_meaning(bench, _carried_on(candidate, trusted, pieces, index), topics)
            scene = replace(scene, candidate=candidate)
            told.append(Told(candidate, signs_of(scene, doubts, [one.candidate for one in told])))
            if not doubts:
                trusted.append(candidate)
                worked_on = _worked_on(bench, candidate)
        topics.head(_section(bench, piece))
        topics.hear(piece, worked_on)
    return tuple(told)


def _section(bench: Bench, piece: Piece) -> Thing | None:
    """The part that a sentence opens by naming alone: "Key heights.", "neck cork now", "parting bead next"."""
    thing = heading(bench, piece) if bench.begins_breath(piece.start) else None
    if thing is None or kind_of(bench, thing) in {"tool", "material", "damage"}:
        return None
    alone = piece.end == len(bench) or bool(bench.doc[piece.end].is_sent_start)
    marked = not _MARKS.isdisjoint(bench.lower[piece.start : piece.end])
    return thing if marked or (alone and bench.tag(thing.start) in {"DT", "PRP$", "NNS"}) else None


def _worked_on(bench: Bench, candidate: Candidate) -> Thing | None:
    """What a candidate leaves to be spoken of: its object, or the tool that was put on."""
    start = candidate.rest[0]
    through = candidate.shape == "laid to" and bench.word(start) in {"through", "between", "under", "behind"}
    laid_on = candidate.tool is not None and (candidate.shape == "put" or through)
    return candidate.tool if laid_on else candidate.meant


def _read(bench: Bench, pieces: tuple[Piece, ...], index: int) -> Candidate | None:
    piece = pieces[index]
    candidate = _shaped(bench, piece)
    if candidate is None or candidate.shape == "shown":
        return (
            tool_list(bench, pieces, index)
            or candidate
            or tool_named(bench, pieces, index)
            or headed(bench, pieces, index, lambda piece: _shaped(bench, piece))
            or next((read for _, shape in LOOSE if (read := shape(bench, piece)) is not None), None)
        )
    if _is_relative(bench, pieces, index, candidate):
        return None
    if candidate.fronted is None and index and candidate.shape in {"own hand", "advice"}:
        topic = _topic(bench, pieces[index - 1], piece)
        if topic is not None and (candidate.thing is None or bench.tag(candidate.rest[0]) in {"IN", "RB", "RP", ""}):
            return replace(candidate, thing=topic, fronted=topic, start=topic.start)
    return candidate


def _shaped(bench: Bench, piece: Piece) -> Candidate | None:
    """What the first shape that fits makes of a piece."""
    return next((read for _, shape in SHAPES if (read := shape(bench, piece)) is not None), None)


def _is_relative(bench: Bench, pieces: tuple[Piece, ...], index: int, candidate: Candidate) -> bool:
    """ "i've got a palette knife | i ground down": says which knife, not what is done now."""
    piece = pieces[index]
    if candidate.shape != "own hand" or candidate.thing is not None or not index or piece.lead != piece.start:
        return False
    before = pieces[index - 1]
    started_with_verb = thing_at(bench, before.lead, before.end) is None
    return before.end == piece.start and bench.is_noun(piece.start - 1) and started_with_verb


def _topic(bench: Bench, before: Piece, piece: Piece) -> Thing | None:
    """The object that was said first: "tailpiece | i snug down"."""
    if bench.word(piece.lead) not in {"i", "we", "you"} or piece.lead != piece.start:
        return None
    for at in range(before.lead, before.end):
        thing = thing_at(bench, at, before.end)
        pointed = thing is not None and thing.pronoun and bench.word(thing.head) in {"that", "those", "these", "this"}
        if thing is not None and (pointed or not thing.pronoun) and extent(bench, thing, before.end) == before.end:
            started = at == before.lead or bench.word(at - 1) in {"and", "but"}
            return thing if started else None
    return None


def _carried_on(candidate: Candidate, found: list[Candidate], pieces: tuple[Piece, ...], index: int) -> Candidate:
    """ "new mull is cut wider, glued with paste and rubbed down": the thing of the first is the thing of all."""
    if candidate.shape != "bare participle" or candidate.mode != "done" or candidate.thing is not None or not found:
        return candidate
    last = found[-1]
    near = (
        index - 3 <= pieces.index(last.piece, max(0, index - 8))
        if last.piece in pieces[max(0, index - 8) : index]
        else False
    )
    if (
        near
        and last.shape in {"passive", "shown", "bare participle"}
        and last.piece.sentence == candidate.piece.sentence
    ):
        return replace(candidate, thing=last.thing, own_subject=False)
    return candidate


def _with_meaning(bench: Bench, candidate: Candidate, topics: Topics) -> Candidate:
    thing = candidate.thing
    if thing is not None and not thing.pronoun:
        belongs = bench.word(thing.head) in bench.words.belongings
        about = topics.last(candidate.start) if belongs else topics.heading(candidate.start)
        return replace(candidate, meant=thing, sure=True, about=about)
    if thing is not None and bench.word(thing.head) == "everything":
        return replace(candidate, meant=thing)
    meant, sure = topics.meant_by(thing, candidate.start)
    return replace(candidate, meant=meant, sure=sure)
