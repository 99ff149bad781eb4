"""Sentence starts in raw captions, which have no marks.

A border is the place between two breaths: where a cue begins, or a pause inside one. Most sentences begin at a border,
but a sentence often runs over two or three of them. Each rule looks at one border and says yes, no, or nothing; the
first that speaks decides. Between borders the parser decides, but never inside a number, behind an article, or
so that a single word is left over at either end of a breath.

Takes "... home to the same hook / hoop's off" as two sentences; "with a / nine sixteenths bit" and "till it's about /
three eighths" run on.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from spacy.tokens import Doc, Token

from extract.narration import Narration
from extract.segments.words import Phrase, sentence_words

_VERBS = frozenset({"VB", "VBP", "VBZ", "VBD", "VBG"})
_CUT_WORDS = frozenset({"the", "a", "an", "of", "my", "your", "our", "every"})
"""The parser may begin no sentence behind one of these."""


@dataclass(frozen=True, slots=True)
class Pauses:
    """Seconds of silence that tell something; from listening to bench talk, no source."""

    breath: float = 0.4
    """A speaker who waits this long has usually ended a sentence."""
    work: float = 1.5
    """A speaker who waits this long has gone to work, whatever the words look like."""


@dataclass(frozen=True, slots=True)
class Border:
    """The place between two tokens and the silence there."""

    before: Token
    after: Token
    gap: float
    pauses: Pauses


def _opened_by(token: Token, phrases: frozenset[Phrase]) -> bool:
    return any(
        token.i + len(phrase) <= len(token.doc) and all(token.nbor(k).lower_ == word for k, word in enumerate(phrase))
        for phrase in phrases
        if phrase[0] == token.lower_
    )


def _closed_by(token: Token, phrases: frozenset[Phrase]) -> bool:
    return any(
        token.i + 1 >= len(phrase) and all(token.nbor(-k).lower_ == word for k, word in enumerate(reversed(phrase)))
        for phrase in phrases
        if phrase[-1] == token.lower_
    )


def after_work(border: Border) -> bool | None:
    """A long silence: whatever follows is begun anew."""
    return True if border.gap >= border.pauses.work else None


def dangling(border: Border) -> bool | None:
    """ "... out of the / holes": the phrase is not done."""
    if _closed_by(border.before, sentence_words().danglers):
        return False
    if border.before.tag_ == "IN" and border.after.tag_ in {"DT", "PRP$"} and border.gap < border.pauses.breath:
        return False
    return False if border.before.tag_ in {"PRP$", "CC", "TO", "WRB"} else None


def leaning(border: Border) -> bool | None:
    """ "... cold / because the glue": the words after can't stand alone."""
    return False if _opened_by(border.after, sentence_words().continuers) else None


def figure(border: Border) -> bool | None:
    """ "five / sixteenths", "a thirty / second": a number and what it counts belong together."""
    counts = border.before.tag_ == "CD" or border.before.lower_ in {"half", "quarter"}
    counted = border.after.tag_ in {"CD", "NNS"} or border.after.lower_ in {"inch", "foot"}
    return False if counts and counted and border.gap < border.pauses.breath else None


def opener(border: Border) -> bool | None:
    """ "now the old bridge", "and then": the speaker turns to something new."""
    return True if _opened_by(border.after, sentence_words().openers) else None


def breath(border: Border) -> bool | None:
    """A pause, where the words don't speak against it."""
    return True if border.gap >= border.pauses.breath else None


def clause(border: Border) -> bool | None:
    """ "i drop every nut", "there's 24 of them": a pronoun begins a clause."""
    words = sentence_words()
    if not _opened_by(border.after, words.subjects):
        return None
    return None if border.before.tag_ in _VERBS or border.before.lower_ == "that" else True


def joined(border: Border) -> bool | None:
    """ "and the head smells older" stands alone; "and press the bushing in" leans on the sentence before."""
    if not _opened_by(border.after, sentence_words().joins) or border.after.i + 2 >= len(border.after.doc):
        return None
    subject = border.after.nbor()
    return True if _opened_by(subject, sentence_words().subjects) or subject.tag_ in {"DT", "PRP$", "EX"} else None


def phrase(border: Border) -> bool | None:
    """ "strings are off", "tap them home": a noun or a bare verb behind a finished phrase."""
    if border.before.tag_ in _VERBS | {"JJ", "CD", "IN", "MD", "POS"}:
        return None
    return (
        True if border.after.tag_ in {"NN", "NNS", "NNP", "PDT", "VB", "VBG", "JJ", "UH", "EX", "DT", "PRP$"} else None
    )


RULES: tuple[tuple[str, Callable[[Border], bool | None]], ...] = (
    ("after work", after_work),
    ("dangling", dangling),
    ("figure", figure),
    ("opener", opener),
    ("leaning", leaning),
    ("breath", breath),
    ("clause", clause),
    ("joined", joined),
    ("phrase", phrase),
)
"""In order; the first rule that says yes or no decides."""


def border_starts(
    doc: Doc, narration: Narration, begin: int, end: int, pauses: Pauses | None = None
) -> list[bool | None]:
    """Sentence starts of tokens `begin` to `end` from breaths and pauses, with `begin` a start."""
    pauses = pauses or Pauses()
    starts: list[bool | None] = [True]
    borders = [True]
    for at in range(begin + 1, end):
        gap = narration.start[at] - narration.end[at - 1]
        border = Border(doc[at - 1], doc[at], gap, pauses)
        borders.append(narration.cue[at] != narration.cue[at - 1] or gap >= pauses.breath)
        if borders[-1]:
            starts.append(next((said for _, rule in RULES if (said := rule(border)) is not None), None))
        else:
            starts.append(_inside(border))
    for at in range(1, len(starts)):
        lone_first = borders[at - 1] and starts[at - 1] is not False
        lone_last = at + 1 == len(starts) or borders[at + 1]
        if not borders[at] and (lone_first or lone_last):
            starts[at] = False
    return starts


def _inside(border: Border) -> bool | None:
    """Within a breath: False inside a number and behind an article, else the parser decides."""
    numbers = border.before.tag_ == "CD" and border.after.tag_ in {"CD", "NNS"}
    return False if numbers or border.before.lower_ in _CUT_WORDS else None
