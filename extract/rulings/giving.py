"""Giving rulings: one function a ruling, each checked against the proof that the person sees.

Each returns a line for `RulingLog.append`, and raises `RulingError` with one clear line where it can't be given.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from typing import TypedDict
from uuid import uuid4

from pydantic import ValidationError

from extract.record import Because, Mode, Phase
from extract.rulings.errors import RulingError
from extract.rulings.figures import check_unit, read_figure
from extract.rulings.findings import trade_of
from extract.rulings.items import digest_of
from extract.rulings.made import new_id
from extract.rulings.model import (
    Add,
    Amend,
    Changes,
    Figure,
    Item,
    Kind,
    Merge,
    Note,
    Pass,
    Portion,
    Redo,
    Reorder,
    Split,
    Stet,
    Strike,
    Undo,
)
from extract.rulings.proofed import Proofed
from extract.trade import Trade

_FIELDS: dict[Kind, frozenset[str]] = {
    "measure": frozenset({"figure", "attribute", "item", "where", "phase"}),
    "correction": frozenset({"text", "figure"}),
    "finding": frozenset(),
    "step": frozenset({"text", "mode"}),
    "follow_up": frozenset({"text"}),
    "doubt": frozenset({"text"}),
    "tool": frozenset({"text"}),
    "material": frozenset({"text"}),
}
"""What may be amended of what."""

_BESIDE = 10.0
"""Seconds within which the machine's measures are remembered when a person adds one."""


@dataclass(frozen=True, slots=True)
class Hand:
    """In whose hand a ruling is, and when. Who asks for a ruling makes its id, so that asking again is safe."""

    by: str = ""
    ruling_id: str = field(default_factory=lambda: uuid4().hex)
    at: datetime = field(default_factory=lambda: datetime.now(UTC))


class Wanted(TypedDict, total=False):
    """What a person may put in the place of what the machine had; a field that is left out stays."""

    figure: str
    """As typed: "7/64 in"; a bare number keeps the unit that the measure has."""
    attribute: str
    item: str
    where: str
    phase: Phase
    text: str
    mode: Mode


class _Given(TypedDict):
    id: str
    by: str
    at: datetime


def stet(proofed: Proofed, item_id: str, hand: Hand) -> Stet:
    """Let an item stand as the machine has it; a finding or doubt is settled by it."""
    return Stet(on=proofed.item(item_id), **_given(hand))


def strike(proofed: Proofed, item_id: str, hand: Hand) -> Strike:
    """Take an item out; a finding that is struck was a false alarm."""
    return Strike(on=proofed.item(item_id), **_given(hand))


def amend(
    proofed: Proofed,
    item_id: str,
    to: Wanted,
    hand: Hand,
    because: Because | None = None,
    overrule: bool = False,
    trade: Trade | None = None,
) -> Amend:
    """Put something else in the place of what the machine had.

    A figure that changes needs `because`. A unit that does not fit what is measured raises `UnitKindError`, unless the
    person means it (`overrule`). Raises `FigureError` for what is no figure, `RulingError` for a field that the item
    does not have.
    """
    item = proofed.item(item_id)
    measure = next((one for one in proofed.record.measures if one.id == item_id), None)
    changes = _changes(item.kind, to, measure.unit if measure else None)
    if item.kind == "measure" and changes.figure is not None:
        if because is None:
            raise RulingError(
                "the figure changes", "say whether it was said wrong on film, heard wrong, or is put otherwise"
            )
        named = changes.attribute if changes.attribute is not None else (measure.attribute if measure else None)
        _check(proofed, changes.figure, named, overrule, trade)
    return Amend(on=item, to=changes, because=because, overrule=overrule, **_given(hand))


def note(proofed: Proofed, item_id: str, text: str, hand: Hand) -> Note:
    """A remark on an item, for whoever proofs."""
    if not text.strip():
        raise RulingError("the note is empty", "write something, or leave it")
    return Note(on=proofed.item(item_id), text=text.strip(), **_given(hand))


def add(
    proofed: Proofed,
    kind: Kind,
    start: float,
    cue: int,
    words: str,
    to: Wanted,
    hand: Hand,
    withdraws: str | None = None,
    overrule: bool = False,
    trade: Trade | None = None,
) -> Add:
    """Put in what the machine missed at second `start`, in cue `cue`; `words` are those said there.

    A measure needs a figure; a step, follow-up or doubt a text, a tool or material its name as text; a correction what
    holds instead, as text or figure, and may name the measure that it takes back. A finding can't be added.
    """
    changes = _changes(kind, to, None)
    needed = {"measure": {"figure"}, "correction": {"text", "figure"}, "finding": set()}.get(kind, {"text"})
    if not needed & changes.named:
        raise RulingError(
            f"a {kind.replace('_', '-')} needs its {' or '.join(sorted(needed))}"
            if needed
            else "a finding can't be added",
            "fill it in" if needed else "add a note to the measure instead",
        )
    if kind == "measure" and changes.figure is not None:
        _check(proofed, changes.figure, changes.attribute, overrule, trade)
    figures = (changes.figure.display,) if changes.figure else ()
    on = Item(kind=kind, id=new_id(kind, hand.ruling_id), words=words, start=start, cue=cue, figures=figures)
    taken_back = _of_kind(proofed, withdraws, "measure") if withdraws else None
    near = (
        [one.id for one in proofed.machine.measures if abs(one.start - start) <= _BESIDE] if kind == "measure" else []
    )
    return Add(on=on, to=changes, withdraws=taken_back, beside=tuple(near), overrule=overrule, **_given(hand))


def reorder(proofed: Proofed, step_id: str, after: str | None, hand: Hand) -> Reorder:
    """Put a step directly behind another; null for the first place."""
    if after == step_id:
        raise RulingError("a step can't stand behind itself", "name another one")
    behind = None if after is None else _of_kind(proofed, after, "step")
    return Reorder(on=_of_kind(proofed, step_id, "step"), after=behind, **_given(hand))


def merge(proofed: Proofed, step_ids: Sequence[str], hand: Hand, text: str = "") -> Merge:
    """Make one step of several, named in the order in which they are done; it keeps the first one's id and place."""
    if len(set(step_ids)) < 2 or len(set(step_ids)) != len(step_ids):
        raise RulingError("to merge takes two different steps at least", "name another one")
    first, *others = [_of_kind(proofed, one, "step") for one in step_ids]
    return Merge(on=first, others=tuple(others), text=text.strip(), **_given(hand))


def split(proofed: Proofed, step_id: str, into: Sequence[Portion | str], hand: Hand) -> Split:
    """Make several steps of one, in order. A text alone gets the measures that it shows, the first one the rest."""
    told = [one.strip() if isinstance(one, str) else one for one in into]
    parts = tuple(Portion(text=one) if isinstance(one, str) else one for one in told if one)
    if len(parts) < 2:
        raise RulingError("to split takes two texts at least", "write the second one, or amend the step instead")
    return Split(on=_of_kind(proofed, step_id, "step"), into=parts, **_given(hand))


def undo(proofed: Proofed, ruling_id: str, hand: Hand) -> Undo:
    """Take back a ruling that is in force."""
    if all(one.id != ruling_id for one in proofed.in_force):
        raise RulingError(f"no ruling {ruling_id!r} is in force", "load the proof again")
    return Undo(of=ruling_id, **_given(hand))


def redo(ruling_id: str, hand: Hand) -> Redo:
    """Give a ruling again that was taken back."""
    return Redo(of=ruling_id, **_given(hand))


def pass_for_press(proofed: Proofed, hand: Hand) -> Pass:
    """The person has held the record against the recording. Raises `RulingError` while anything must be settled."""
    stops = [one for one in proofed.open if one.rank == "stop"]
    if stops:
        raise RulingError(f"{len(stops)} must be settled first ({stops[0].message})", "settle them, then pass it")
    return Pass(record=digest_of(proofed.machine), **_given(hand))


def _given(hand: Hand) -> _Given:
    return {"id": hand.ruling_id, "by": hand.by, "at": hand.at}


def _of_kind(proofed: Proofed, item_id: str, kind: Kind) -> Item:
    item = proofed.item(item_id)
    if item.kind != kind:
        raise RulingError(f"{item_id!r} is a {item.kind.replace('_', '-')}", f"name a {kind}")
    return item


def _changes(kind: Kind, to: Wanted, unit: str | None) -> Changes:
    stray = sorted(set(to) - _FIELDS[kind])
    if stray:
        raise RulingError(f"a {kind.replace('_', '-')} has no {stray[0]}", "amend what it has")
    if not to:
        raise RulingError("nothing is changed", "change something, or let it stand")
    fields: dict[str, object] = {name: value.strip() for name, value in to.items() if isinstance(value, str)}
    if "figure" in to:
        fields["figure"] = read_figure(to["figure"], unit)
    if not fields.get("text", "-"):
        raise RulingError("the text is empty", "write something, or strike it")
    try:
        return Changes.model_validate(fields)
    except ValidationError as error:
        one = error.errors()[0]
        raise RulingError(f"{one['loc'][0]} can't be {one['input']!r}", one["msg"]) from error


def _check(proofed: Proofed, figure: Figure, attribute: str | None, overrule: bool, trade: Trade | None) -> None:
    if not overrule:
        check_unit(figure, attribute, trade or trade_of(proofed.machine))
