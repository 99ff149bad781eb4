"""From pieces to candidates: shapes, what they lean on, and vetoes."""

from __future__ import annotations

from dataclasses import replace

from extract.clauses.bench import Bench
from extract.clauses.history import told_history
from extract.clauses.pieces import Piece
from extract.clauses.things import Thing, extent, thing_at
from extract.clauses.topics import Topics
from extract.steps.candidate import Candidate
from extract.steps.scene import Scene
from extract.steps.shapes import SHAPES
from extract.steps.shapes.again import again
from extract.steps.shapes.headed import headed
from extract.steps.shapes.listed import tool_list
from extract.steps.shapes.tool_named import tool_named
from extract.steps.vetoes import VETOES


def gather(bench: Bench, pieces: tuple[Piece, ...]) -> tuple[Candidate, ...]:
    """All candidates that no veto refuses, in spoken order, with what their pronouns mean."""
    told = told_history(bench, pieces)
    topics = Topics(bench)
    found: list[Candidate] = []
    refused_at = -1
    for index, piece in enumerate(pieces):
        covered = bool(found) and piece.start < found[-1].end
        candidate = None if covered else _read(bench, pieces, index)
        if candidate is None and found and not told[index]:
            candidate = again(bench, piece, found[-1])
        if candidate is not None and _refused(Scene(bench, candidate, pieces, index, told[index]), refused_at):
            refused_at = index
            candidate = None
        if candidate is not None:
            candidate = _with_meaning(bench, _carried_on(candidate, found, pieces, index), topics)
            found.append(candidate)
        topics.hear(piece, _worked_on(bench, candidate))
    return tuple(found)


def _worked_on(bench: Bench, candidate: Candidate | None) -> Thing | None:
    """What a candidate leaves to be spoken of: its object, or the tool that was put on."""
    if candidate is None:
        return None
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


def _refused(scene: Scene, refused_at: int) -> bool:
    carried = not scene.candidate.own_subject and refused_at == scene.index - 1 and scene.piece.joiner == "and"
    carried = carried and scene.candidate.thing is None
    return carried or any(veto(scene) for _, veto in VETOES)


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
        about = topics.last(candidate.start) if bench.word(thing.head) in bench.words.belongings else None
        return replace(candidate, meant=thing, sure=True, about=about)
    if thing is not None and bench.word(thing.head) == "everything":
        return replace(candidate, meant=thing)
    meant, sure = topics.meant_by(thing, candidate.start)
    return replace(candidate, meant=meant, sure=sure)
