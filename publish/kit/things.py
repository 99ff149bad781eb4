"""The tools and materials of all sessions, each once, as a person rules on them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from extract.record import Mention, SaidAs
from publish.kit.naming import mentions
from publish.kit.rulings.model import Said, Sort
from publish.kit.rulings.replay import keyed
from publish.kit.same import same_thing, thing_key
from publish.source import SessionSource


@dataclass(frozen=True, slots=True)
class Spoken:
    """One name for a thing, as one session has it."""

    session: str
    """Folder of the session."""
    said: Said
    seconds: tuple[float, ...]
    """When it is said; a cue that the transcript lacks has none."""


@dataclass(frozen=True, slots=True)
class Thing:
    """A tool or material."""

    sort: Sort
    name: str
    by_hand: bool
    """A person named it."""
    spoken: tuple[Spoken, ...]
    """Oldest session first."""

    @property
    def said(self) -> tuple[Said, ...]:
        """Every name that sessions have for it, in the order in which each came first."""
        return tuple(keyed(one.said for one in self.spoken).values())

    @property
    def sessions(self) -> int:
        """How many name it."""
        return len({one.session for one in self.spoken})

    @property
    def label(self) -> str:
        """What it can be named by where a tool and a material are called alike."""
        return f"{self.sort} {self.name}"


Kit = tuple[Thing, ...]
"""Tools, then materials, by name."""


def kit_of(sources: Iterable[SessionSource]) -> Kit:
    """What all sessions name; their records have the shop's names already, oldest first."""
    found: dict[tuple[Sort, str], tuple[str, bool, list[Spoken]]] = {}
    for source in sources:
        for sort, one in mentions(source.record):
            by_hand = bool(one.said)
            new = (one.name, by_hand, list[Spoken]())
            found.setdefault((sort, thing_key(one.name, by_hand=by_hand)), new)[2].extend(_spoken(source, sort, one))
    things = (Thing(sort, name, by_hand, tuple(spoken)) for (sort, _), (name, by_hand, spoken) in found.items())
    return tuple(sorted(things, key=lambda one: (one.sort != "tool", same_thing(one.name), one.name)))


def _spoken(source: SessionSource, sort: Sort, one: Mention) -> Iterator[Spoken]:
    cues = source.transcript.cues if source.transcript else ()
    for said in one.said or (SaidAs(sort=sort, name=one.name, cues=one.cues),):
        seconds = tuple(cues[cue].start for cue in said.cues if 0 <= cue < len(cues))
        yield Spoken(source.slug, Said(sort=said.sort, name=said.name), seconds)
