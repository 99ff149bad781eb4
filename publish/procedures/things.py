"""What an instruction speaks of: the trade's own parts, materials and tools by one name, and other words by their root.

Takes "slots" and "nut slot" of stringed instruments as one part; says of "carefully" nothing.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache

from extract.clauses.terms import Terms
from extract.roots import root
from extract.trade import load_trade, trade_names
from publish.procedures.acts import act_words

_WORD = re.compile(r"[^\W\d_]+(?:['’-][^\W\d_]+)*")
_SHORTEST = 3


@dataclass(frozen=True, slots=True)
class Things:
    """What an instruction speaks of, each name once, in the order in which it stands there."""

    parts: tuple[str, ...] = ()
    materials: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    """Roots of words that are no term of the trade."""


def words_of(text: str) -> tuple[str, ...]:
    """The words of a text in lower case, without figures."""
    return tuple(match.group().replace("’", "'") for match in _WORD.finditer(text.casefold()))


@cache
def terms_of(name: str) -> Terms:
    """The terms of the trade of that name; of the general one where there is none."""
    folded = " ".join(name.casefold().split())
    return Terms(load_trade(folded if folded in trade_names() else trade_names()[0]))


def things_in(words: tuple[str, ...], terms: Terms, full: Callable[[str], str | None] = lambda _: None) -> Things:
    """The things in the words of an instruction, its verb left off.

    `full` gives the whole name of a part that is named by its last word alone: "saddle slot" for "slot".
    """
    spans = terms.find(words)
    empty = act_words().empty
    found: dict[str, list[str]] = {"part": [], "material": [], "tool": [], "word": []}
    at = 0
    while at < len(words):
        term, word = spans.get(at), root(words[at])
        if term is not None:
            whole = full(word) if term.kind == "part" and term.end == at + 1 else None
            found[term.kind].append(whole or term.name)
            at = term.end
            continue
        if len(word) >= _SHORTEST and word not in empty and words[at] not in empty:
            found["word"].append(word)
        at += 1
    return Things(*(tuple(dict.fromkeys(found[kind])) for kind in ("part", "material", "tool", "word")))


def full_names(words: tuple[str, ...], terms: Terms) -> dict[str, str]:
    """Last word -> the part that is named with more than one word here, the last of them: "slot" -> "saddle slot"."""
    return {
        root(words[term.end - 1]): term.name
        for term in terms.find(words).values()
        if term.kind == "part" and term.end - term.start > 1
    }
