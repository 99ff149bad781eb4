"""Names as a person types them: which thing of a list is meant, and what may be a new name."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from difflib import get_close_matches
from typing import TypeVar

from extract.rulings import RulingError

LONGEST = 200
"""Characters of a name."""
_NEAR = 3
"""Names that are shown where none is meant, by Ratcliff and Obershelp's ratio (difflib)."""

One = TypeVar("One")


def same_letters(text: str) -> str:
    """A text as names are compared: without case and with single spaces."""
    return " ".join(text.casefold().split())


def name_given(name: str, what: str) -> str:
    """A new name with single spaces; `what` says of which kind of thing. Raises `RulingError`."""
    told = " ".join(name.split())
    if not told:
        raise RulingError(f"a {what} can't be called nothing", "give it a name")
    if not told.isprintable():
        raise RulingError(f"{told!r} has characters that can't be printed", "give it a name without them")
    if len(told) > LONGEST:
        raise RulingError(f"a name of {len(told)} characters is too long", f"use {LONGEST} at most")
    return told


def only_one(
    wanted: str,
    tries: Iterable[Callable[[One], bool]],
    listed: Sequence[One],
    *,
    label: Callable[[One], str],
    names: Callable[[One], Iterable[str]],
    what: str,
    where: str,
) -> One:
    """The one thing that is meant by the first of `tries` that any meets. Raises `RulingError`, with near names.

    `label` tells one from another where several are meant; `names` gives all that a thing is called; `what` says what
    kind of thing they are, `where` what lists them all.
    """
    for meets in tries:
        hits = [one for one in listed if meets(one)]
        if len(hits) == 1:
            return hits[0]
        if hits:
            known = ", ".join(label(one) for one in hits)
            raise RulingError(f"more than one {what} is called {wanted!r}", f"name one of: {known}")
    called = {same_letters(name): name for one in listed for name in names(one)}
    near = [f"“{called[one]}”" for one in get_close_matches(same_letters(wanted), called, _NEAR)]
    remedy = f"near it: {', '.join(near)}; see {where}" if near else f"see {where}"
    raise RulingError(f"no {what} is called {wanted!r}", remedy)
