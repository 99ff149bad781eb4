"""What is left for later: "the arm's got a wiggle too but that's for mud season", "the tuning can wait".

Refuses "it's tomorrow, let's look at the neck" (the day, not a delay), "leave it till tomorrow" (a step's own wait).
"""

from __future__ import annotations

from extract.clauses import Piece, kind_of, thing_at
from extract.remarks.reading import Reading, cues, sentence
from extract.spans import Note
from extract.steps import own_work

_POINTING = frozenset({"that", "it", "those", "they", "this"})
_BEING = frozenset({"'s", "is", "are", "'re", "was", "'ll", "will"})
_LOOK_BACK = 4


def plain_follow_ups(reading: Reading) -> tuple[Note, ...]:
    """Every piece in which the plain rules find something put off, with what it puts off, in order."""
    notes: list[Note] = []
    for index, piece in enumerate(reading.pieces):
        if reading.told[index] or (notes and piece.start < notes[-1].end):
            continue
        if _heads(reading, piece):
            note = _headed(reading, index)
            notes += [note] if note is not None else []
            continue
        note = _deferred(reading, index) or _planned(reading, index)
        if note is not None and not (notes and note.start <= notes[-1].start):
            notes.append(note)
    return tuple(notes)


def _heads(reading: Reading, piece: Piece) -> bool:
    """ "Still to do.": a heading for what is said behind it, and nothing by itself."""
    words = tuple(word for word in reading.bench.lower[piece.start : piece.end] if word[:1].isalpha())
    return words in {("still", "to", "do"), ("still", "to", "be", "done"), ("to", "do"), ("yet", "to", "do")}


def _headed(reading: Reading, index: int) -> Note | None:
    """What is said behind the heading, unless it says itself that it is for later."""
    behind = reading.pieces[index + 1] if index + 1 < len(reading.pieces) else None
    if behind is None or not reading.near(index, index + 1) or _deferred(reading, index + 1) is not None:
        return None
    if _planned(reading, index + 1) is not None:
        return None
    work = own_work(reading.bench, behind)
    said = f"{work.said} {reading.said(*work.rest)}" if work else reading.said(behind.lead, behind.end)
    return Note(behind.start, behind.end, sentence(f"{said}: left for later"))


def _deferred(reading: Reading, index: int) -> Note | None:
    bench, piece = reading.bench, reading.pieces[index]
    when = _when(reading, piece)
    phrase = reading.finds(cues().deferred, piece)
    if phrase is None and not (when and _points_later(reading, piece, when)):
        return None
    thing = thing_at(bench, piece.lead, piece.end)
    named = thing is not None and not thing.pronoun and kind_of(bench, thing) not in {"people", "time", "abstract"}
    first = when[0] + (bench.word(when[0]) in {"in", "at"}) if when else 0
    time = f"left for {_capital_days(bench.lower[first : when[1]])}" if when else "left for later"
    if bench.word(when[0]) == "on" if when else False:
        time = "on order"
    if named and thing is not None and bench.word(thing.end) in _BEING | {"can", "has", "have", "needs", "wants"}:
        earlier = index - 1
        if not (when and piece.joiner in {"and", "but", "so"} and reading.near(index, earlier, 1)):
            return Note(piece.start, piece.end, sentence(f"{reading.said(thing.start, thing.end)}: {time}"))
    about = _statement(reading, index)
    if about is None:
        return None
    return Note(about.start, piece.end, sentence(f"{reading.said(about.lead, about.end)}: {time}"))


def _when(reading: Reading, piece: Piece) -> tuple[int, int] | None:
    """The words that say when, with "next" before a day."""
    bench = reading.bench
    found = reading.finds(cues().later, piece)
    if found is not None:
        return found
    for at in range(piece.start, piece.end):
        if bench.word(at) in cues().days:
            return at - (bench.word(at - 1) in {"next", "on", "wet", "rainy", "quiet"}), at + 1
    return None


def _points_later(reading: Reading, piece: Piece, when: tuple[int, int]) -> bool:
    """True for "that's for Thursday", "spokes are a Wednesday problem", "Another day."; not "it's tomorrow"."""
    bench = reading.bench
    lead = bench.word(piece.lead)
    alone = not any(bench.doc[k].is_alpha for k in (*range(piece.lead, when[0]), *range(when[1], piece.end)))
    if alone:
        return bench.word(when[0]) not in {"tomorrow", "later", "today"}
    being = next((k for k in range(piece.lead, when[0]) if bench.word(k) in _BEING), None)
    if being is None:
        return bench.word(when[0]) == "on" and bench.word(when[0] + 1) == "order"
    joined = cues().deferred_before.first_in(bench.lower, being, when[0]) is not None
    behind = bench.word(when[1]) in cues().deferred_after
    if lead == "it":
        return "for" in bench.lower[being : when[0]] or behind
    return (lead in _POINTING and joined) or behind


def _statement(reading: Reading, index: int) -> Piece | None:
    """The piece before that says what is put off."""
    return _statement_before(reading, index, named=True) or _statement_before(reading, index, named=False)


def _statement_before(reading: Reading, index: int, *, named: bool) -> Piece | None:
    bench = reading.bench
    for back in range(index - 1, max(-1, index - 1 - _LOOK_BACK), -1):
        if not reading.near(index, back, 2):
            return None
        piece = reading.pieces[back]
        if sum(bench.doc[k].is_alpha for k in range(piece.lead, piece.end)) < 2 or piece.leans:
            continue
        if bench.word(piece.lead) in _POINTING and bench.word(piece.lead + 1) in _BEING:
            continue
        thing = thing_at(bench, piece.lead, piece.end)
        if named and bench.word(piece.lead) != "there" and (thing is None or thing.pronoun):
            continue
        return _with_topic(reading, back)
    return None


def _with_topic(reading: Reading, index: int) -> Piece:
    """ "the gilt edges | i've left alone": what was named first is what it is about."""
    piece = reading.pieces[index]
    before = reading.pieces[index - 1] if index else None
    if before is None or reading.bench.word(piece.lead) not in {"i", "we"} or before.sentence != piece.sentence:
        return piece
    thing = thing_at(reading.bench, before.lead, before.end)
    return before if thing is not None and thing.end == before.end == piece.start else piece


def _planned(reading: Reading, index: int) -> Note | None:
    """ "i will turn a new one in the winter", "we ask it again tomorrow"."""
    piece = reading.pieces[index]
    if reading.finds(cues().later, piece) is None and _when(reading, piece) is None:
        return None
    work = own_work(reading.bench, piece)
    if (
        work is None
        or work.mode == "done"
        or reading.bench.words.kind(work.verb) == "idle"
        or "you" in reading.bench.lower[piece.lead : piece.end]
    ):
        return None
    rest = reading.said(*work.rest)
    return Note(piece.start, piece.end, sentence(f"{work.said} {rest}"))


def _capital_days(words: tuple[str, ...]) -> str:
    said = " ".join(word.capitalize() if word in cues().days - {"weekend"} else word for word in words)
    return f"an{said}" if said.startswith("other ") else said
