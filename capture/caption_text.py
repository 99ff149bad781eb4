"""The text of one cue: markup, speaker labels and sounds taken out, words with the moments that tags tie them to."""

from __future__ import annotations

import html
import re
from dataclasses import dataclass

_MOMENT = re.compile(r"<((?:\d+:)?\d{1,2}:\d{2}\.\d{1,3})>")
"""A WebVTT timestamp tag: the words behind it are said from then on (WebVTT, 3.3)."""

_TAG = re.compile(r"</?[A-Za-z][^<>]*>|</?>|\{\\[^{}]*\}")
"""WebVTT and SRT tags, and the braces that SRT borrows from SubStation."""

_SOUND = re.compile(r"\[[^\[\]]*\]|[♪♫]+")
"""A sound in square brackets, or notes: nobody says these."""

_LABEL = re.compile(
    r"^\s*(?:[-–]\s+)?(?:>>+\s*)?(?:((?:SPEAKER|Speaker)[ _]?\d+|[A-Z][A-Z.'’]+(?: [A-Z][A-Z.'’]+){0,2})\s*:\s+)?"
)
"""A dialogue dash, chevrons or a name in capitals at the head of a line."""

_NO_LABEL = frozenset({"WARNING", "CAUTION", "DANGER", "NOTE", "NOTICE", "IMPORTANT", "REMEMBER", "OK", "OKAY"})
"""Words in capitals with a colon behind them that are said, not names."""

_UNSEEN = dict.fromkeys(map(ord, "\u200b\u200c\u200d\u200e\u200f\u2060\ufeff\u00ad"))


@dataclass(frozen=True, slots=True)
class SpokenWord:
    """A word and the second that a tag gives it, null where no tag does."""

    text: str
    moment: float | None = None


Line = tuple[SpokenWord, ...]


def read_lines(raw: str) -> list[Line]:
    """The lines of a cue as words. Takes "<v Mira>set it to &frac12; inch" as "set it to ½ inch".

    A cue that holds nothing but a sound ("[music]") keeps it, so that cues are counted as other programs count them.
    """
    lines = [_words(line, keep_sounds=False) for line in raw.splitlines()]
    if not any(lines):
        lines = [_words(line, keep_sounds=True) for line in raw.splitlines()]
    return [line for line in lines if line]


def _words(line: str, *, keep_sounds: bool) -> Line:
    line = _TAG.sub("", line)
    if not keep_sounds:
        line = _SOUND.sub(" ", line)
    words: list[SpokenWord] = []
    parts = _MOMENT.split(line)
    moment: float | None = None
    for number, part in enumerate(parts):
        if number % 2:
            moment = _seconds(part)
            continue
        text = html.unescape(part).translate(_UNSEEN)
        if number == 0 and not keep_sounds:
            text = _without_label(text)
        for word in text.split():
            words.append(SpokenWord(word, moment))
            moment = None
    return tuple(words)


def _without_label(text: str) -> str:
    found = _LABEL.match(text)
    if found is None or (found[1] or "").upper() in _NO_LABEL:
        return text
    return text[found.end() :]


def _seconds(stamp: str) -> float:
    seconds = 0.0
    for part in stamp.split(":"):
        seconds = seconds * 60 + float(part)
    return seconds
