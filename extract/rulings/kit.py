"""Tools and materials as a person has them: named otherwise, struck, put in; the steps that use them follow."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from extract.record import Former, Mention, Ruled, Step
from extract.rulings.fate import Fate
from extract.rulings.items import kit_id
from extract.rulings.model import Add, Kind


@dataclass(frozen=True, slots=True)
class Kit:
    """Tools, or materials, after rulings."""

    kept: tuple[Mention, ...]
    struck: dict[str, str]
    """Ids of rulings by the ids of what they struck."""
    called: dict[str, str | None]
    """What a thing is called by the name that the machine has for it; null where it was struck."""

    def names(self, names: Iterable[str]) -> tuple[str, ...]:
        """Names of the machine's as the person has them."""
        told = (self.called.get(name, name) for name in names)
        return tuple(dict.fromkeys(name for name in told if name is not None))


def ruled_kit(kind: Kind, mentions: Iterable[Mention], added: Iterable[Add], fates: dict[str, Fate]) -> Kit:
    """Things in the machine's order, those that a person put in behind them."""
    kept: list[Mention] = []
    struck: dict[str, str] = {}
    called: dict[str, str | None] = {}
    for one in (*mentions, *(_added(add) for add in added)):
        name = one.id or kit_id(kind, one.name)
        fate = fates.get(name)
        if fate is None:
            kept.append(one)
        elif fate.verdict == "strike":
            struck[name] = fate.ruling
            called[one.name] = None
        else:
            kept.append(_ruled(one, name, fate))
            called[one.name] = kept[-1].name
    return Kit(tuple(kept), struck, called)


def with_kit(step: Step, tools: Kit, materials: Kit) -> Step:
    """A step with its tools and materials as the person has them."""
    named = tools.names(step.tools), materials.names(step.materials)
    if named == (step.tools, step.materials):
        return step
    return step.model_copy(update={"tools": named[0], "materials": named[1]})


def _ruled(one: Mention, name: str, fate: Fate) -> Mention:
    new = fate.to.text or one.name
    was = Former(text=one.name) if new != one.name else None
    ruled = Ruled(verdict=fate.verdict, ruling=fate.ruling, was=was)
    return one.model_copy(update={"id": name, "name": new, "ruling": ruled})


def _added(add: Add) -> Mention:
    ruled = Ruled(verdict="add", ruling=add.id)
    return Mention(id=add.on.id, name=add.to.text or add.on.words, cues=(add.on.cue,), ruling=ruled)
