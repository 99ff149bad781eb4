"""What the speaker is not sure of and would look up: "i think it's a replacement, i'd want to look that up".

Refuses "about 3 mm, i think" (a hedge on a figure), "the number's in the book, look it up" (advice to viewers).
"""

from __future__ import annotations

from extract.clauses import Piece
from extract.remarks.reading import Reading, cues, sentence
from extract.spans import Note
from extract.steps import own_work

_LOOK_BACK = 4
_QUESTIONS = frozenset({"if", "whether", "what", "which", "who", "how", "where"})


def plain_doubts(reading: Reading) -> tuple[Note, ...]:
    """Statements to be looked up that the plain rules find, in order, each once."""
    notes: list[Note] = []
    for index, _ in enumerate(reading.pieces):
        if reading.told[index]:
            continue
        note = _unsure(reading, index) or _hearsay(reading, index)
        if note is None:
            continue
        if notes and (
            note.start < notes[-1].end or reading.bench.cue[note.start] == reading.bench.cue[notes[-1].start]
        ):
            continue
        if notes and _same_breath(reading, notes[-1], note):
            notes[-1] = Note(notes[-1].start, note.end, notes[-1].text)
            continue
        notes.append(note)
    return tuple(notes)


def _same_breath(reading: Reading, before: Note, note: Note) -> bool:
    """ "somebody told me that's an old trick | no idea if that's true" is one doubt."""
    cue = reading.bench.cue
    return cue[note.start] - cue[before.end - 1] <= 1 and reading.bench.word(note.end - 1) in {"true", "right"}


def _unsure(reading: Reading, index: int) -> Note | None:
    bench, piece = reading.bench, reading.pieces[index]
    found = reading.finds(cues().unsure, _to_sentence_end(reading, index))
    if found is None or found[0] >= piece.end:
        return None
    end = _clause_end(reading, index, found[1])
    asked = bench.word(found[1] - 1)
    pointed = (
        bench.word(found[1]) in {"that", "this"} and not bench.is_noun(found[1] + 1) and bench.tag(found[1] + 1) != "JJ"
    )
    if asked in _QUESTIONS and found[1] < end and not pointed:
        word = "whether" if asked == "if" else asked
        return Note(piece.start, end, _worded(f"{word} {reading.said(found[1], end)}"))
    hedged = _hedged_before(reading, index, found[0])
    if hedged is not None:
        return hedged
    if bench.word(piece.lead) in {"look", "check", "do", "double"} or bench.word(found[0]) in {"but", "so"}:
        return None
    about = _statement(reading, index)
    return None if about is None else Note(about.start, piece.end, _worded(reading.said(about.lead, about.end)))


def _to_sentence_end(reading: Reading, index: int) -> Piece:
    """The piece stretched over the one behind, for a phrase that a cut runs through."""
    piece = reading.pieces[index]
    if index + 1 < len(reading.pieces) and reading.pieces[index + 1].sentence == piece.sentence:
        behind = reading.pieces[index + 1]
        return Piece(piece.start, behind.end, piece.joiner, piece.lead, piece.sentence)
    return piece


def _clause_end(reading: Reading, index: int, at: int) -> int:
    """Where the clause at a token ends."""
    for k, piece in enumerate(reading.pieces[index : index + 4], start=index):
        behind = reading.pieces[k + 1] if k + 1 < len(reading.pieces) else None
        if piece.end > at and not (behind and behind.joiner == "or" and behind.sentence == piece.sentence):
            if behind and behind.sentence == piece.sentence and reading.bench.word(behind.start) == "or":
                continue
            return piece.end
    return at


def _hedged_before(reading: Reading, index: int, before: int) -> Note | None:
    """The hedged statement that the doubt is about, in this piece or shortly before."""
    for back in range(index, max(-1, index - 1 - _LOOK_BACK), -1):
        if not reading.near(index, back, 2):
            return None
        piece = reading.pieces[back]
        for phrases in (cues().hearsay, cues().hedge):
            found = phrases.first_in(reading.bench.lower, piece.start, min(piece.end, before))
            if found is None:
                continue
            start, end = _content(reading, back, found)
            if end > start:
                return Note(piece.start, reading.pieces[index].end, _worded(reading.said(start, min(end, before))))
    return None


def _content(reading: Reading, index: int, found: tuple[int, int]) -> tuple[int, int]:
    """What was hedged: behind the hedge, or the whole clause around "probably"."""
    piece = reading.pieces[index]
    if found[1] < piece.end and sum(not reading.bench.doc[k].is_punct for k in range(found[1], piece.end)) >= 2:
        start = piece.lead if reading.bench.word(found[0]) in {"might", "may", "could", "probably"} else found[1]
        return start, piece.end
    behind = reading.pieces[index + 1] if index + 1 < len(reading.pieces) else piece
    return (behind.start, behind.end) if behind is not piece else (piece.start, found[0])


def _hearsay(reading: Reading, index: int) -> Note | None:
    piece = reading.pieces[index]
    found = reading.finds(cues().hearsay, piece)
    if found is None:
        return None
    start, end = _content(reading, index, found)
    if end <= start:
        return None
    if not any(reading.bench.tag(k) in {"VBZ", "VBP", "VBD", "MD"} for k in range(start, end)):
        return None
    claim = reading.said(start, end)
    return Note(piece.start, max(end, piece.end), _worded(claim))


def _statement(reading: Reading, index: int) -> Piece | None:
    for back in range(index - 1, max(-1, index - 1 - _LOOK_BACK), -1):
        if not reading.near(index, back, 2):
            return None
        piece = reading.pieces[back]
        if sum(reading.bench.doc[k].is_alpha for k in range(piece.lead, piece.end)) < 3 or piece.leans:
            continue
        claims = any(reading.bench.tag(k) in {"VBZ", "VBP", "VBD", "MD", "CD"} for k in range(piece.lead, piece.end))
        if (
            claims
            and own_work(reading.bench, piece) is None
            and "remember" not in reading.bench.lower[piece.lead : piece.end]
        ):
            return piece
    return None


def _claims(reading: Reading, piece: Piece) -> bool:
    """False for work and for what is said of the speaker's memory: neither can be looked up."""
    bench, span = reading.bench, range(piece.lead, piece.end)
    states = any(bench.tag(k) in {"VBZ", "VBP", "VBD", "MD", "CD"} for k in span)
    recalls = any(bench.word(k) in {"remember", "recall", "forget"} for k in span)
    return states and not recalls and own_work(bench, piece) is None


def _worded(claim: str) -> str:
    return sentence(f"To be checked: {claim}")
