"""Remarks as short clean sentences: where the words of one begin and end, and how its clauses are joined."""

from __future__ import annotations

from extract.remarks.breaths import Breath
from extract.remarks.reading import Reading, sentence
from extract.remarks.signs import sign_words
from extract.spans import Note
from extract.steps import own_work

_COMMANDING = ("forbids", "minding", "keeping_clear", "power_off", "guarding_gear", "always", "halting")
"""A caution begins where the first of these is said, or with the clause that it stands in."""
_BARE = ("forbids_a_thing", "limit")
"""These hold for the words before them too: "twenty gentle stops, never to a lock"."""
_STARTS = frozenset({"do", "do n't", "never", "mind", "watch", "keep", "careful", "beware", "be", "stand", "take"})
_LINKS = frozenset({"or", "otherwise", "because", "else"})
_MOST_WORDS = 34
_HANGING = frozenset({"don't", "never", "not", "to", "the", "a", "don’t"})
_POINTING = frozenset({"that", "it", "that's", "it's", "they", "those", "this", "these"})
_QUESTIONS = frozenset({"whether", "if", "which", "what", "who", "how", "where"})
_UNTIL = frozenset({"afore", "while", "before", "till", "until", "see"})
_SAYING = ("unknowing", "unvouched", "to_look_up")


def caution_text(reading: Reading, breaths: tuple[Breath, ...], index: int) -> str:
    """The words of a caution, with what happens otherwise; "" where too little is left."""
    breath = breaths[index]
    if reading.bench.word(breath.start) == "because":
        return ""
    start = _caution_start(reading, breath)
    if index and start == breath.start and reading.bench.word(start) in _LINKS:
        start = breaths[index - 1].start
    end = breath.end
    behind = breaths[index + 1] if index + 1 < len(breaths) else None
    if behind is not None and _goes_on(reading, breath, behind):
        end = behind.end
    text = _joined(reading, start, end)
    return sentence(text) if len(text.split()) > 1 else ""


def _goes_on(reading: Reading, breath: Breath, behind: Breath) -> bool:
    """True where the next breath says what happens otherwise."""
    bench = reading.bench
    if bench.cue[behind.start] - bench.cue[breath.start] > 1 or behind.end - breath.start > _MOST_WORDS:
        return False
    opens = bench.word(behind.start) in _LINKS or bench.lower[behind.start : behind.start + 2] == ("you", "'ll")
    return (opens and not bench.narration.punctuated) or bench.word(behind.start) in _LINKS


def _caution_start(reading: Reading, breath: Breath) -> int:
    bench, words = reading.bench, sign_words()
    hits = [
        (hit[0], name in _BARE or (bench.word(hit[0]) == "never" and bench.tag(hit[1]) in {"IN", "DT", "RB", "TO"}))
        for name in (*_COMMANDING, *_BARE)
        if (hit := words[name].first_in(bench.lower, breath.start, breath.end))
    ]
    if not hits:
        return _lead(reading, breath, breath.first)
    first, bare = min(hits)
    at = next(k for k in range(breath.first, breath.last) if first < reading.pieces[k].end)
    piece = reading.pieces[at]
    if bare or (piece.leans and at > breath.first):
        return _lead(reading, breath, max(at - 1, breath.first))
    return first if _may_begin(reading, max(piece.lead, breath.start), first) else _lead(reading, breath, at)


def _lead(reading: Reading, breath: Breath, at: int) -> int:
    """Where a piece begins within a breath: behind its openers, but with the "if" or "when" that it leans on."""
    bench, piece = reading.bench, reading.pieces[at]
    start = max(piece.start if piece.leans else piece.lead, breath.start)
    if bench.word(start) in {"it", "that"} and bench.word(start + 1) in {"'s", "is"}:
        start += 2
    while start > breath.start and bench.word(start - 1) in {"no", "not", "never", "none", "if", "n't", "do"}:
        start -= 1
    return start


def _may_begin(reading: Reading, lead: int, first: int) -> bool:
    """True for "mind your eyes" behind another command, false for what a subject stands before."""
    bench = reading.bench
    if bench.word(first) not in _STARTS:
        return False
    return not any(bench.word(at) in {"i", "we", "you", "one", "they", "it", "to"} for at in range(lead, first))


def _joined(reading: Reading, start: int, end: int) -> str:
    """The clauses between two tokens: what follows from a command behind a colon, others behind commas."""
    bench = reading.bench
    parts: list[str] = []
    colon = bench.word(start) in {"if", "when", "once"}
    whole = True
    for piece in reading.pieces:
        if piece.end <= start or piece.start >= end:
            continue
        at = max(piece.start, start)
        said = reading.said(at, min(piece.end, end))
        if not said:
            continue
        if not parts:
            parts.append(said)
            whole = _has_verb(reading, at, min(piece.end, end))
            continue
        if (piece.leans and bench.word(piece.start) not in _LINKS) or parts[-1].split()[-1] in _HANGING:
            glue = " "
        elif bench.word(piece.start) in {"and", "or", "but", "so", "because", "otherwise"} or colon:
            glue = ", "
        elif not (whole and bench.begins_clause(at)) and not bench.narration.punctuated:
            glue = " "
        else:
            glue, colon = ": ", True
        if len(" ".join(parts).split()) + len(said.split()) > _MOST_WORDS:
            break
        parts.append(glue + said)
        whole = _has_verb(reading, at, min(piece.end, end))
    return "".join(parts)


def _has_verb(reading: Reading, start: int, end: int) -> bool:
    """False for "because the bit", whose verb is still to come, and for what ends on a joining word."""
    bench = reading.bench
    said = any(bench.tag(at).startswith("VB") or bench.tag(at) == "MD" for at in range(start, end))
    if bench.word(start) in {"no", "not", "never", "careful", "gently"}:
        return True
    return said and bench.tag(end - 1) not in {"IN", "DT", "CC", "TO", "WRB"} and bench.word(end - 1) not in _UNTIL


def doubt_text(reading: Reading, breaths: tuple[Breath, ...], index: int) -> Note | None:
    """What is to be looked up: the question itself, what was hedged, or the statement before."""
    breath = breaths[index]
    if _is_opinion(reading, breath):
        return None
    claim = _question(reading, breath) or _hedged(reading, breath)
    if claim is None and index:
        before = breaths[index - 1]
        if reading.bench.cue[breath.start] - reading.bench.cue[before.start] <= 1:
            claim = _question(reading, before) or _hedged(reading, before) or (before.start, before.end)
            breath = Breath(before.first, breath.last, before.start, breath.end)
    start, end = claim or (breath.start, breath.end)
    start = _led(reading, start)
    if reading.bench.word(start) == "it" and reading.bench.verb(start + 1) is None:
        start += reading.bench.tag(start + 1) in {"CD", "NN", "JJ"}
    if not _names_something(reading, start, end):
        start, end = _before_it(reading, breaths, index, start)
    said = reading.said(start, end)
    named = _names_something(reading, start, end) and len(said.split()) > 2
    return Note(breath.start, breath.end, sentence(f"To be checked: {said}")) if named else None


def _names_something(reading: Reading, start: int, end: int) -> bool:
    """False for "i believe", "i always mix those up", "i wouldn't know": no thing is named that could be looked up."""
    bench = reading.bench
    return any(bench.tag(at).startswith("NN") or bench.tag(at) in {"CD", "JJ"} for at in range(start, end))


def _before_it(reading: Reading, breaths: tuple[Breath, ...], index: int, start: int) -> tuple[int, int]:
    """What was said before a doubt that names nothing, in its own breath or the one before."""
    breath = breaths[index]
    if start - breath.start > 3 and _names_something(reading, breath.start, start):
        return _led(reading, breath.start), start
    before = breaths[max(0, index - 1)]
    return _led(reading, before.start), before.end


def _is_opinion(reading: Reading, breath: Breath) -> bool:
    """ "i think that looks rather fine": praise, and nobody asks for it to be looked up."""
    words, lower = sign_words(), reading.bench.lower
    asked = any(words[name].first_in(lower, breath.start, breath.end) for name in (*_SAYING, "asks"))
    return not asked and words["praise"].first_in(lower, breath.start, breath.end) is not None


def _led(reading: Reading, start: int) -> int:
    """Behind the openers of a piece: "and i want to find out whether"."""
    return next((piece.lead for piece in reading.pieces if piece.start == start), start)


def _question(reading: Reading, breath: Breath) -> tuple[int, int] | None:
    """ "whether the shell is English": the clause behind what says that it is not known."""
    bench, words = reading.bench, sign_words()
    asked = next((at for at in range(breath.start, breath.end) if bench.word(at) in _QUESTIONS - {"how"}), None)
    if asked is None or not any(words[name].first_in(bench.lower, breath.start, breath.end) for name in _SAYING):
        return None
    end = next((at for at in range(asked + 2, breath.end) if bench.word(at) in {".", ",", ";", "?"}), breath.end)
    return (asked, end) if end - asked > 2 else None


def _hedged(reading: Reading, breath: Breath) -> tuple[int, int] | None:
    """What stands behind "i think", or the clause around "might be", up to where the looking up is spoken of."""
    bench, words = reading.bench, sign_words()
    said = [hit for name in _SAYING if (hit := words[name].first_in(bench.lower, breath.start, breath.end))]
    hedge = words["hedged"].first_in(bench.lower, breath.start, breath.end)
    stops = [at for at, _ in said]
    for at in range(breath.first, breath.last):
        piece = reading.pieces[at]
        if piece.start > breath.start and any(piece.start <= one < piece.end for one in stops):
            stops.append(piece.start)
    end = min((one for one in stops if one > breath.start + 1), default=breath.end)
    if hedge is None or hedge[0] >= end:
        return (breath.start, end) if said and end - breath.start > 3 and end < breath.end else None
    first = bench.word(hedge[0]) == "i" and end - hedge[1] >= 2
    return (hedge[1] if first else breath.start, end)


def follow_up_text(reading: Reading, breaths: tuple[Breath, ...], index: int) -> Note | None:
    """What is left for later: the work as an instruction where the speaker says it, else the statement."""
    breath = breaths[index]
    for at in range(breath.first, breath.last):
        work = own_work(reading.bench, reading.pieces[at])
        if work is not None and work.mode == "planned" and reading.bench.words.kind(work.verb) in {"work", "light"}:
            start, end = work.rest
            rest = reading.said(start, end)
            if len(rest.split()) > 1 and (work.thing is None or not work.thing.pronoun):
                return Note(breath.start, breath.end, sentence(f"{work.said} {rest}"))
    start = max(reading.pieces[breath.first].lead, breath.start)
    said = _joined(reading, start, breath.end)
    if index and (reading.bench.word(start) in _POINTING or len(said.split()) < 3):
        before = breaths[index - 1]
        if reading.bench.cue[start] - reading.bench.cue[before.start] <= 1:
            said = f"{_joined(reading, max(reading.pieces[before.first].lead, before.start), before.end)}: {said}"
    if len(said.split()) < 3 or (not index and not _names_something(reading, start, breath.end)):
        return None
    timed = sign_words()["later"].first_in(reading.bench.lower, breath.start, breath.end) is not None
    return Note(breath.start, breath.end, sentence(said if timed else f"{said}: left for later"))
