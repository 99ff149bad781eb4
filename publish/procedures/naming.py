"""What a procedure is called before a person names it: the telling act, on the part that it is about.

Gives "Level the frets", not "Mask the fingerboard"; what is taken out and put in new is replaced, what is taken off and
glued on again is reglued (a neck is reset). Where nothing tells a job ("Let the reed", "Use the frets") it is work on
the part that is spoken of most.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from math import log

from extract.roots import root
from publish.procedures.acts import act_words, begins_with_verb
from publish.procedures.deeds import Deed
from publish.procedures.things import words_of

_BARE, _MEASURING, _LIGHT, _PREPARING, _COMMON, _VAGUE, _WORD = 0.05, 0.2, 0.3, 0.25, 0.3, 0.4, 0.6
"""Weights beside 1 for a telling act on a telling part."""
_ADJUSTING = 0.6
_APPLIED = {"glue": 1.0, "grease": 0.6}
_REPLACED, _AGAIN, _NEW = 1.1, 1.05, 0.9
_OFTEN = 0.5
"""What each doubling of how often a part is spoken of adds, in parts of one."""
_TELLS = 0.1
"""Least weight of what a job is named after."""
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
    doing = [deed for deeds in versions for deed in deeds if part in (*_objects(deed), *deed.things.materials)]
    verb = _verb(act, part, doing) if best >= _TELLS * len(versions) else "work on"
    return _short([f"{verb[:1].upper()}{verb[1:]} the {_said(part, doing)}"])


def _weighed(deeds: Sequence[Deed]) -> dict[tuple[str, str], float]:
    """Act and part, once a version."""
    weights: dict[tuple[str, str], float] = {}
    often = Counter(part for deed in deeds for part in (_objects(deed) or deed.things.materials[:1]))
    removed: set[str] = set()
    worn: set[str] = set()
    words = act_words()

    def weigh(act: str, part: str, weight: float) -> None:
        told = weight * _share(part) * (1 + _OFTEN * log(often[part], 2))
        weights[act, part] = max(weights.get((act, part), 0.0), told)

    for deed in deeds:
        for part in _objects(deed):
            told = 1.0 if part in deed.things.parts else _WORD
            weigh(deed.act, part, _weight(deed) * told)
            if deed.act == "glue" and (part in removed or part in words.again):
                weigh(words.again.get(part, "reglue"), part, _AGAIN * told)
        # A material by itself is worked with, not on; it can be replaced, as a leather is.
        things = _objects(deed) or deed.things.materials[:1]
        for thing in [one for one in (*things, *deed.things.materials[:1]) if one in removed][:1] or things:
            told = 1.0 if thing in deed.things.parts or thing in removed else _WORD
            if deed.act == "remove":
                removed.add(thing)
                worn |= {thing} if _says(deed, words.worn) else set()
            elif deed.act in {"fit", "solder"} and (thing in worn or _says(deed, words.fresh)) and not _goes_back(deed):
                weigh("replace", thing, (_REPLACED if thing in removed else _NEW) * told)
    return weights


def _objects(deed: Deed) -> tuple[str, ...]:
    """What a deed is done to: its part ("the bottom of the bridge" is the bridge), else the first other word."""
    of = deed.things
    if of.parts:
        return (next((part for part in of.parts if _share(part) == 1.0), of.parts[0]),)
    return () if of.materials else tuple(word for word in of.words if word not in act_words().applied)[:1]


def _says(deed: Deed, any_of: frozenset[str]) -> bool:
    return not any_of.isdisjoint(words_of(deed.text))


def _goes_back(deed: Deed) -> bool:
    """The same thing is put on again: "refit the top", "put the rod back in"."""
    return not _says(deed, act_words().fresh) and _says(deed, act_words().back)


def _weight(deed: Deed) -> float:
    words, act = act_words(), deed.act
    if act == "measure":
        return _MEASURING
    if act in words.light:
        return _ADJUSTING if act == "adjust" else _LIGHT
    if act in words.applied.values():
        return _APPLIED[act]
    if act in words.bare or begins_with_verb(words_of(deed.text)) in words.bare:
        return _BARE
    return _PREPARING if act in words.preparing else 1.0


def _share(part: str) -> float:
    words = act_words()
    return _COMMON if part in words.common else _VAGUE if part in words.vague else 1.0


def _verb(act: str, part: str, doing: Iterable[Deed]) -> str:
    """The verb that most say; the act's own name where anyone says that, or where it is put on or put in new."""
    said = Counter(
        verb
        for deed in doing
        if deed.act == act and _objects(deed) == (part,)
        if (verb := begins_with_verb(words_of(deed.text))) and verb not in act_words().bare
    )
    if act in said or act in {"replace", "reglue", "clamp", *act_words().applied.values()} or not said:
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
