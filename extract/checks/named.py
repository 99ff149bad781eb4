"""The thing that a figure is of, by the words about it, among the things of data/magnitudes*.toml.

Takes "the boards are" and "a 3 amp fuse"; refuses a mere place ("from the board") and what is counted ("14 frets").
Source: common usage of spoken English; no source.
"""

from __future__ import annotations

from extract.checks.arithmetic.counting import COUNTS
from extract.checks.said_in import words_for
from extract.checks.talk import Said, Talk, words_of
from extract.checks.vocabulary import Phrase, check_words
from extract.magnitudes import magnitudes

REACH = 11
"""Words before a figure among which its thing, and how it is measured, are looked for."""
_IT = frozenset({"it", "it's", "its", "them", "they", "they're", "that's", "these", "this", "here", "both"})
_ONE = frozenset({"it", "it's", "its", "that's", "this"})
"""Those of them that stand for one thing alone."""
_THE = (("the",), ("its",), ("each",))
_NEAR = 6
_BORDERS = frozenset({"and", "so", "then", "but", "or", "now"})
_NO_THING = frozenset({"it's", "that's", "there's", "here's", "he's", "she's", "what's", "let's", "today's", "who's"})


def named_behind(one: Said) -> Phrase | None:
    """ "A 3 amp fuse", "the 500 mm black webbing": the thing that a figure stands right before."""
    known, words = magnitudes().by_thing, one.after
    for start in (0, 1) if words[:1] and words[0] in magnitudes().adjectives else (0,):
        for length in range(min(magnitudes().longest, len(words) - start), 0, -1):
            name = singular(words[start : start + length])
            ends = words[start + length - 1]
            if name in known and not {*name} <= magnitudes().adjectives and not ends.endswith("'s"):
                return name
    return None


def named_before(talk: Talk, words: tuple[str, ...], heads: bool = False) -> Phrase | None:
    """The last thing named before a figure that isn't a mere place: "from the board", "on the first string".

    With `heads` it must end its phrase: a "top loader" is no top.
    """
    known, one_thing = magnitudes(), {*words[-_NEAR:]} & _ONE
    for end in range(len(words), 0, -1):
        for length in range(min(known.longest, end), 0, -1):
            name = singular(words[end - length : end])
            if name not in known.by_thing or _is_counted(words[: end - length]):
                continue
            if one_thing & {*words[end:]} and _is_many(words[end - 1], name):
                return None
            if not _is_a_place(words[max(0, end - length - 4) : end - length]) and not (
                heads and _goes_on(words[end:])
            ):
                return name
        if words[end - 1].endswith("'s") and words[end - 1] not in _NO_THING:
            return None
        if words[end - 1] in talk.materials:
            return None
    return None


def _goes_on(words: tuple[str, ...]) -> bool:
    """What stands behind a name may be its noun: no small word."""
    return bool(words) and words[0] not in check_words().between | _BORDERS | _IT


def spoken_of(talk: Talk, one: Said) -> Phrase | None:
    """What "it" stands for that is heated: "my glue pot's a bottle warmer, I hold it at 70"."""
    if one.measure.kind != "temperature" or not _IT & {*one.clause[-_NEAR:]}:
        return None
    reached = len(one.before) - len(one.clause[-REACH:])
    return named_before(talk, one.before[:reached], heads=True)


def _is_a_place(words: tuple[str, ...]) -> bool:
    """ "From the old", before "board": a preposition that reaches the thing; "calipers on the" measures it."""
    reach = next((at for at in range(len(words), 0, -1) if words[at - 1] in _BORDERS), 0)
    placing = [at for at in range(reach, len(words)) if words[at] in check_words().placing]
    return any(not at or words[at - 1] not in words_for("measuring", "tools") for at in placing)


def _is_counted(words: tuple[str, ...]) -> bool:
    """ "Fourteen frets to the body": so many of them are no size of one."""
    return bool(words) and (words[-1].isdigit() or words[-1] in COUNTS)


def recorded(talk: Talk, one: Said) -> Phrase | None:
    """The item that the record gives, or the known thing that it is a kind of."""
    words = singular(tuple(words_of(one.measure.item or "")))
    is_said = {*words} & {singular((word,))[0] for word in one.clause}
    if (not is_said and not _IT & {*one.clause[-_NEAR:]}) or not agrees(one, words):
        return None
    if is_counted(one, words):
        return None
    if not {*words} <= talk.words | {word.removesuffix("s") for word in talk.words}:
        return None
    return next((words[at:] for at in range(len(words)) if words[at:] in magnitudes().by_thing), None)


def agrees(one: Said, item: Phrase) -> bool:
    """ "It" is not what was last named as more than one: "the locks look newer, it's 38 inches wide"."""
    said = {*one.clause[-_NEAR:]}
    last = next((word for word in reversed(one.before) if singular((word,))[0] == item[-1]), "") if item else ""
    return not (_is_many(last, item) and _ONE & said and not _IT - _ONE & said)


def is_counted(one: Said, item: Phrase) -> bool:
    """Wherever the item is named it is told how many there are: "40 stitches come out at"."""
    places = [at for at, word in enumerate(one.clause) if singular((word,))[0] in item]
    return bool(places) and all(_is_counted(one.clause[:at]) for at in places)


def _is_many(word: str, name: Phrase) -> bool:
    """The name was said of more than one: "the locks"."""
    return word.endswith("s") and word != name[-1] and not word.endswith("'s")


def worked_at(one: Said) -> Phrase | None:
    """ "At the top edge I plane it to": the place is what has the dimension that is said."""
    words = one.clause[-REACH:]
    start = next((at for at in range(len(words) - 1, -1, -1) if words[at] == "at"), len(words)) + 1
    start += words[start : start + 1] in _THE
    for length in range(min(magnitudes().longest, len(words) - start), 0, -1):
        name, rest = singular(words[start : start + length]), words[start + length :]
        if name in magnitudes().by_thing and any(
            says_one_of(rest, dimension.before) for dimension in magnitudes().dimensions.values()
        ):
            return name
    return None


def singular(words: Phrase) -> Phrase:
    """A name whose last word is in the singular, or as the rows have it."""
    if not words:
        return words
    last = words[-1].removesuffix("'s")
    if (*words[:-1], last) in magnitudes().by_thing:
        return (*words[:-1], last)
    return (*words[:-1], last.removesuffix("s"))


def says_one_of(words: tuple[str, ...], phrases: frozenset[Phrase]) -> bool:
    """One of the phrases is said among the words."""
    return any(words[at : at + length] in phrases for at in range(len(words)) for length in (1, 2, 3, 4, 5))
