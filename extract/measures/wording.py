"""Words in their plainest form: pieces of a phrase, the singular of a noun, the base of a verb."""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from functools import cache, lru_cache
from importlib.resources import files

_CLITIC = re.compile(r"(n't|'(?:s|re|ve|ll|d|m))(?=\s|$)")
_IRREGULAR = {
    "feet": "foot",
    "teeth": "tooth",
    "leaves": "leaf",
    "knives": "knife",
    "halves": "half",
    "shelves": "shelf",
    "wolves": "wolf",
    "men": "man",
    "women": "woman",
    "people": "people",
    "axes": "axe",
    "dies": "die",
    "glasses": "glass",
}
_SAME = frozenset(
    {
        "bellows",
        "series",
        "brass",
        "gas",
        "lens",
        "works",
        "pliers",
        "scissors",
        "canvas",
        "bus",
        "chassis",
        "always",
        "perhaps",
    }
)


def pieces(phrase: str) -> tuple[str, ...]:
    """A phrase cut as the tokeniser cuts speech: "that's it" gives that, 's, it."""
    return tuple(_CLITIC.sub(r" \1", phrase).split())


@lru_cache(maxsize=8192)
def singular(word: str) -> str:
    """The singular of a lower-case noun: "balls" gives ball; "brass" and "bellows" stay.

    Only the endings that are regular in English are cut; it must never lengthen or invent a word.
    """
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word in _SAME or len(word) < 4 or not word.endswith("s") or word.endswith(("ss", "us", "is")):
        return word
    if word.endswith("ies") and len(word) > 4:
        return word[:-3] + "y"
    if word.endswith(("sses", "xes", "ches", "shes", "zes")):
        return word[:-2]
    return word[:-1]


@cache
def base_forms() -> dict[str, str]:
    """Inflected form -> base of the verbs in data/verbs.toml: "planed" is of "plane", whatever a model thinks."""
    data = tomllib.loads(files("extract").joinpath("data/verbs.toml").read_text(encoding="utf-8"))
    verbs = {verb for group in data["work"].values() for verb in group if " " not in verb and verb.isalpha()}
    forms = {form: verb for verb in sorted(verbs) for form in _inflections(verb)}
    return {form: verb for form, verb in forms.items() if form not in verbs}


def _inflections(verb: str) -> Iterator[str]:
    """The regular forms of a verb."""
    stem = verb.removesuffix("e")
    if verb.endswith("y") and verb[-2:-1] not in "aeou":
        yield from (f"{verb[:-1]}ied", f"{verb[:-1]}ies", f"{verb}ing")
        return
    yield from (f"{stem}ed", f"{stem}ing", f"{verb}es" if verb.endswith(("s", "x", "z", "ch", "sh")) else f"{verb}s")
    if re.fullmatch(r"[^aeiou]*[aeiou][bdgklmnprt]", verb):
        yield from (f"{verb}{verb[-1]}ed", f"{verb}{verb[-1]}ing")
