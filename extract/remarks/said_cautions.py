"""Cautions that the speaker gives: "don't force the posts", "leather gloves and your face off to the side".

Refuses "don't quote me" (talk), "i don't use it" (a habit), "don't do that" (a correction), "no wonder".
"""

from __future__ import annotations

from extract.clauses import Piece, thing_at
from extract.remarks.reading import Reading, cues, sentence
from extract.spans import Warned

SAID_ON_FILM = "said on film"
_OWNERS = frozenset({"i", "we", "they", "he", "she", "people", "folks", "who", "you"})


def plain_cautions(reading: Reading) -> tuple[Warned, ...]:
    """What the plain rules find, one caution a cue at most, in order."""
    found: list[Warned] = []
    for index, piece in enumerate(reading.pieces):
        if reading.told[index] or reading.finds(cues().chat, piece) is not None:
            continue
        start = _forbids(reading, index) or _guards(reading, piece) or _threatens(reading, index)
        start = start or _always(reading, index)
        if start is None:
            continue
        if found and reading.bench.cue[found[-1].start] == reading.bench.cue[piece.start]:
            continue
        found.append(Warned(piece.start, _text(reading, index, start - 1), SAID_ON_FILM, said=True))
    return tuple(found)


def _forbids(reading: Reading, index: int) -> int | None:
    """One more than the token where a prohibition begins, or null."""
    bench, piece = reading.bench, reading.pieces[index]
    found = reading.finds(cues().forbid, piece)
    if found is not None:
        subject = any(bench.word(k) in _OWNERS or bench.is_noun(k) for k in range(piece.start, found[0]))
        subject = subject or _has_subject_before(reading, index)
        at = found[1]
        while bench.tag(at) == "RB":
            at += 1
        verb = bench.verb(at)
        works = verb is not None and verb.at < piece.end and bench.words.kind(verb.lemma) != "idle"
        placed = bench.word(found[0]) == "never" and bench.tag(at) in {"IN", "RB"}
        return found[0] + 1 if not subject and (works or placed) else None
    found = reading.finds(cues().forbid_noun, piece)
    if found is None:
        return None
    doing = bench.verb(found[1])
    if bench.word(found[1] - 1) == "no" and (doing is None or doing.form != "ing"):
        return None
    return found[0] + 1 if found[0] <= piece.lead + 1 else None


def _has_subject_before(reading: Reading, index: int) -> bool:
    """ "so the hide glue | don't chill": a bare noun phrase before is the subject."""
    if not index:
        return False
    before, bench = reading.pieces[index - 1], reading.bench
    thing = thing_at(bench, before.lead, before.end)
    return thing is not None and thing.end == before.end and before.joiner in {"so", "that", "and", "because"}


def _always(reading: Reading, index: int) -> int | None:
    """ "always over a tray, because the balls leave": a standing rule with its reason."""
    bench, piece = reading.bench, reading.pieces[index]
    at = next((k for k in range(piece.start, piece.lead + 1) if bench.word(k) == "always"), None)
    if at is None or index + 1 >= len(reading.pieces) or bench.tag(at + 1) not in {"IN", "VB"}:
        return None
    return at + 1 if reading.pieces[index + 1].joiner in {"because", "or", "otherwise"} else None


def _guards(reading: Reading, piece: Piece) -> int | None:
    found = reading.finds(cues().guard, piece)
    if found is None:
        return None
    bench = reading.bench
    keeping = bench.word(found[0]) in {"keep", "mind", "watch"}
    subject = any(bench.word(k) in {"i", "we", "he", "she"} for k in range(piece.start, found[0]))
    if keeping and not _guards_body(reading, found[1], piece.end):
        return None
    return None if subject else min(found[0], piece.lead) + 1


def _guards_body(reading: Reading, start: int, end: int) -> bool:
    nouns = reading.bench.words.nouns
    words = reading.bench.lower[start - 1 : end]
    return any(nouns.get(word) == "body" for word in words) or "the" in words[:1]


def _threatens(reading: Reading, index: int) -> int | None:
    """ "put a caul there or you'll leave teeth marks": a command and what happens otherwise."""
    bench, piece = reading.bench, reading.pieces[index]
    if index + 1 >= len(reading.pieces):
        return None
    behind = _otherwise(reading, index)
    if behind is None or cues().consequence.length_at(bench.lower, behind.start) == 0:
        return None
    verb = bench.verb(piece.lead)
    commanded = verb is not None and verb.form == "base"
    held_back = any(bench.word(k) == "not" for k in range(piece.start, piece.end))
    return piece.lead + 1 if commanded or held_back else None


def _otherwise(reading: Reading, index: int) -> Piece | None:
    """The "or" clause behind a piece, with a leaning clause between them at most."""
    for piece in reading.pieces[index + 1 : index + 3]:
        if piece.joiner == "or":
            return piece
        if not piece.leans:
            return None
    return None


def _text(reading: Reading, index: int, start: int) -> str:
    piece = reading.pieces[index]
    otherwise = _otherwise(reading, index)
    end = otherwise.start if otherwise is not None else piece.end
    if reading.bench.word(start) in {"it", "that"} and reading.bench.word(start + 1) in {"'s", "is"}:
        start += 2
    text = reading.said(start, end)
    behind = otherwise or (reading.pieces[index + 1] if index + 1 < len(reading.pieces) else None)
    if behind is None or not reading.near(index, index + 1, 1):
        return sentence(text)
    if behind.joiner in {"or", "because"}:
        return sentence(f"{text}, {reading.said(behind.start, behind.end)}")
    if reading.bench.lower[behind.start : behind.start + 2] == ("you", "'ll"):
        return sentence(f"{text}: {reading.said(behind.start, behind.end)}")
    return sentence(text)
