"""The ledger of errata that were published: kept in the shop, so that none ever vanishes silently.

    errata.json     machine-made, one entry an erratum: when it was first published, and when it was taken out again

An erratum that was published and is no longer in any record (a person struck it, or the talk was heard anew) stays on
the errata page as taken out, with its day. The same statement found again stands again.
"""

from __future__ import annotations

import re
from datetime import date
from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, ValidationError

from capture.errors import ShopError
from capture.files import write_atomic

_PUT_IN = re.compile(r" \[[^\]]*\]$")
"""A unit that was left out, at the end of what was said."""

How = Literal["on_film", "proof", "later_session", "put_right_later"]


class Listed(BaseModel):
    """One erratum, as it was published."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    session: str
    """Folder of the session in which it was taken back, or, put right later, in which it was said."""
    title: str
    """That session's title."""
    wrong: str
    """As said."""
    right: str
    """What to read instead."""
    how: How
    """Said and put right on the film, found at the proof, what takes back something of an earlier session, or, of the
    statement in that earlier session, put right later."""
    second: float
    """When it was taken back, in that session's recording."""
    anchor: str
    """Its id on that session's page."""
    by: str = ""
    """Put right later: folder of the session that did so."""
    by_anchor: str = ""
    """And the id of its words on that one's page."""
    by_title: str = ""
    by_second: float = 0.0
    proposed: bool = False
    """The machine takes it to be this statement, and no person has confirmed it."""
    first: date
    """Day on which it was first published."""
    out: date | None = None
    """Day on which it was found to be in no record any more; null while it stands."""

    @property
    def key(self) -> str:
        """What makes it the same erratum from publish to publish: session, both readings, without what was put in."""
        parts = (self.session, _PUT_IN.sub("", self.wrong), self.right)
        return "|".join(" ".join(part.casefold().split()) for part in parts)


class Ledger(BaseModel):
    """All errata that were ever published, the oldest first."""

    model_config = ConfigDict(frozen=True, extra="forbid", defer_build=True)

    format: Literal["spokeshave-errata/1"] = "spokeshave-errata/1"
    errata: tuple[Listed, ...] = ()

    @property
    def standing(self) -> tuple[Listed, ...]:
        """Those that stand."""
        return tuple(one for one in self.errata if one.out is None)

    @property
    def told_once(self) -> tuple[Listed, ...]:
        """Those that stand, without what a later session said where the statement that it put right is listed."""
        known = {(one.by, one.by_anchor) for one in self.standing if one.by}
        return tuple(one for one in self.standing if (one.session, one.anchor) not in known)

    @property
    def taken_out(self) -> tuple[Listed, ...]:
        """Those that were published and are in no record any more."""
        return tuple(one for one in self.errata if one.out is not None)


def read_ledger(path: Path) -> Ledger:
    """The ledger in a file, empty where there is none yet. Raises `ShopError` where it can't be read."""
    try:
        return Ledger.model_validate_json(path.read_bytes())
    except FileNotFoundError:
        return Ledger()
    except (OSError, ValidationError) as error:
        said = error.strerror if isinstance(error, OSError) else error.errors()[0]["msg"]
        raise ShopError(path, f"is no ledger of errata ({said})", "put back the last good copy of it") from error


def brought_up(ledger: Ledger, found: tuple[Listed, ...], left_out: frozenset[str], today: date) -> Ledger:
    """The ledger after a publish that found these errata, in their order behind the known ones.

    Errata of the sessions in `left_out`, which could not be read this time, stay as they are.
    """
    now = {one.key: one for one in found}
    kept = []
    for one in ledger.errata:
        again = now.pop(one.key, None)
        if again is not None:
            kept.append(again.model_copy(update={"first": one.first}))
        elif one.out is None and one.session not in left_out:
            kept.append(one.model_copy(update={"out": today}))
        else:
            kept.append(one)
    return Ledger(errata=(*kept, *now.values()))


def write_ledger(path: Path, ledger: Ledger) -> None:
    """Write the ledger where it says something new. Raises `OSError` where the disk refuses."""
    text = ledger.model_dump_json(indent=1) + "\n"
    if ledger.errata and not (path.is_file() and path.read_text(encoding="utf-8") == text):
        write_atomic(path, text)
