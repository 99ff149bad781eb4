"""Where another job or another time is told of: "when i did the tenor banjo i broke two hooks"."""

from __future__ import annotations

from extract.clauses.bench import Bench
from extract.clauses.pieces import Piece
from extract.clauses.talk import talk


def told_history(bench: Bench, pieces: tuple[Piece, ...]) -> tuple[bool, ...]:
    """For each piece: is another job being told there?

    From a word of history to the end of its sentence, and the past forms behind it go on telling it until the speaker
    comes back to the bench.
    """
    told: list[bool] = []
    marked_sentence = -1
    for index, piece in enumerate(pieces):
        if _is_marked(bench, piece):
            marked_sentence = piece.sentence
        if piece.sentence == marked_sentence:
            told.append(True)
            continue
        going_on = bool(told) and told[-1] and not _returns(bench, piece) and _is_past(bench, piece)
        told.append(going_on and bench.cue[piece.start] - bench.cue[pieces[index - 1].start] <= 1)
    return tuple(told)


def _is_marked(bench: Bench, piece: Piece) -> bool:
    words = talk()
    for at in range(piece.start, piece.end):
        if words.history.length_at(bench.lower, at):
            return True
        if bench.word(at) == "in" and bench.lower[at + 1 : at + 2] and _is_year(bench.word(at + 1)):
            return True
    return False


def _is_year(word: str) -> bool:
    return len(word) == 4 and word.isdigit() and word[:2] in {"18", "19", "20"}


def _returns(bench: Bench, piece: Piece) -> bool:
    return talk().returns.length_at(bench.lower, piece.start) > 0


def _is_past(bench: Bench, piece: Piece) -> bool:
    tags = {bench.tag(k) for k in range(piece.start, piece.end)}
    return bool(tags & {"VBD", "VBN"}) and not tags & {"VBZ", "VBP", "VB"}
