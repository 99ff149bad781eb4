"""Small counts among words: "thirty two at six grams" becomes "%32 at six grams"; "twenty to the inch" keeps it.

Common usage of spoken English; no source.
"""

from __future__ import annotations

from collections.abc import Iterator

_UNITS = "one two three four five six seven eight nine"
_TIES = "twenty thirty forty fifty sixty seventy eighty ninety"
_ONES = {word: count for count, word in enumerate(_UNITS.split(" "), start=1)}
_TEENS = "ten eleven twelve thirteen fourteen fifteen sixteen seventeen eighteen nineteen"
_TENS = {word: 10 * at for at, word in enumerate(_TIES.split(" "), 2)}
COUNTS = {
    **{word: count for word, count in _ONES.items() if count > 1},
    **{word: count for count, word in enumerate(_TEENS.split(" "), start=10)},
    **_TENS,
    "dozen": 12,
}
"""Words that are a count by themselves; "one" is said of too much."""
_HUNDRED = 100


def counted(words: tuple[str, ...]) -> Iterator[str]:
    """The words, each count up to 999 as one word `%n`."""
    at = 0
    while at < len(words):
        count, length = count_at(words, at)
        yield words[at] if count is None else f"%{count}"
        at += length


def count_at(words: tuple[str, ...], at: int) -> tuple[int | None, int]:
    """The count that begins at a place and how many words it takes; None and one where there is none."""
    word = words[at]
    if word.isdigit():
        return (int(word), 1) if len(word) < 4 else (None, 1)
    if word[:1].isdigit() or word in ("a", "one"):
        return (_HUNDRED, 2) if words[at + 1 : at + 2] == ("hundred",) and word == "a" else (None, 1)
    tens, _, ones = word.partition("-")
    if tens in _TENS and ones in _ONES:
        return _TENS[tens] + _ONES[ones], 1
    if word not in COUNTS:
        return None, 1
    if word in _TENS and words[at + 1 : at + 2] and words[at + 1] in _ONES:
        return _TENS[word] + _ONES[words[at + 1]], 2
    return COUNTS[word], 1
