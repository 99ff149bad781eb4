"""What a procedure is called before a person names it: the telling act, on the part that it is done to.

Gives "Level the frets", not "Mask the fingerboard"; what is taken out and put in new is replaced.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence

from extract.roots import root
from publish.procedures.acts import act_words, begins_with_verb
from publish.procedures.deeds import Deed
from publish.procedures.things import words_of

_LIGHT, _PREPARING, _COMMON, _REPLACED = 0.3, 0.4, 0.3, 1.1
"""Weights beside 1 for a telling act on a telling part."""
_LONGEST = 48


def name_of(versions: Sequence[Sequence[Deed]]) -> str:
    """The name; never empty."""
    weights: Counter[tuple[str, str]] = Counter()
    for deeds in versions:
        weights.update(_weighed(deeds))
    if not weights:
        return _short(deed.text for deeds in versions for deed in deeds)
    best = max(weights.values())
    act, part = min((key for key, weight in weights.items() if weight == best), key=lambda key: len(key[1]))
    doing = [deed for deeds in versions for deed in deeds if part in (*deed.things.parts, *deed.things.materials)]
    return _short([f"{_verb(act, part, doing).capitalize()} the {_said(part, doing)}"])


def _weighed(deeds: Sequence[Deed]) -> dict[tuple[str, str], float]:
    """Act and part, once a version."""
    weights: dict[tuple[str, str], float] = {}
    removed: set[str] = set()
    for deed in deeds:
        for part in deed.things.parts[:1]:
            weights[deed.act, part] = _weight(deed.act) * _share(part)
        things = {*deed.things.parts[:1], *deed.things.materials[:1]}
        if deed.act == "remove":
            removed |= things
        elif deed.act in {"fit", "solder"}:
            weights |= {("replace", part): _REPLACED * _share(part) for part in things & removed}
    return weights


def _weight(act: str) -> float:
    words = act_words()
    return _LIGHT if act in words.light else _PREPARING if act in words.preparing else 1.0


def _share(part: str) -> float:
    return _COMMON if part in act_words().common else 1.0


def _verb(act: str, part: str, doing: Iterable[Deed]) -> str:
    """The verb that most say; the act's own name where anyone says that, or where it is put on or put in new."""
    said = Counter(
        verb
        for deed in doing
        if deed.act == act and deed.things.parts[:1] == (part,)
        if (verb := begins_with_verb(words_of(deed.text)))
    )
    if act in said or act in {"replace", *act_words().applied.values()} or not said:
        return act
    most = max(said.values())
    return next(verb for verb, number in said.items() if number == most)


def _said(part: str, doing: Iterable[Deed]) -> str:
    """The part's whole name, as one or as many as most say."""
    *whole, last = part.split()
    heard = Counter(word for deed in doing for word in words_of(deed.text) if root(word) == root(last))
    return " ".join([*whole, heard.most_common(1)[0][0].removesuffix("'s") if heard else last])


def _short(texts: Iterable[str]) -> str:
    """The first text with words in it, cut to length at a word."""
    text = next((one.strip() for one in texts if one.strip()), "Procedure")
    return text if len(text) <= _LONGEST else text[:_LONGEST].rsplit(" ", 1)[0] + "\N{HORIZONTAL ELLIPSIS}"
