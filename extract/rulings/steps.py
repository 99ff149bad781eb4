"""Steps as a person has them: reworded, struck, added, put elsewhere, merged, split. One ruling after the other."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

from extract.record import Former, Measure, Mode, Ruled, Step
from extract.rulings.made import new_id
from extract.rulings.model import Add, Amend, Item, Merge, OnItem, Portion, Reorder, Split, Stet, Strike
from extract.rulings.order import put_in
from extract.rulings.shown import shows_measure

_GONE = "it was merged into another step"


@dataclass(slots=True)
class Procedure:
    """The steps while rulings are carried out on them."""

    steps: list[Step]
    measures: dict[str, Measure]
    """Measures as ruled, by id."""
    struck: dict[str, Step] = field(default_factory=dict)
    """Struck steps by id; each says in `ruling` by what."""
    failed: dict[str, str] = field(default_factory=dict)
    """Why a ruling could not be carried out, by its id."""
    _before_amending: dict[str, Step] = field(default_factory=dict)
    """What a stet goes back to, by id."""

    def carry_out(self, rulings: Iterable[OnItem]) -> None:
        """All rulings on steps, in the order in which they were given."""
        self._before_amending = {step.id: step for step in self.steps}
        for one in rulings:
            if isinstance(one, Add):
                self._insert(self._new(_added(one)))
                continue
            at = self._at(one.on)
            if at is None and one.on.id in self.struck:
                at = self._back(one.on) if isinstance(one, Stet | Amend) else None
            if at is None:
                self.failed[one.id] = _GONE if one.on.id not in self.struck else "the step was struck"
            elif isinstance(one, Stet):
                self.steps[at] = _mark(self._before_amending[one.on.id], "stet", one.id)
            elif isinstance(one, Amend):
                self.steps[at] = _amended(self.steps[at], one)
            elif isinstance(one, Strike):
                self.struck[one.on.id] = _mark(self.steps.pop(at), "strike", one.id)
            else:
                self._arrange(one, at)

    def numbered(self) -> tuple[Step, ...]:
        """The steps with their numbers in the order of work."""
        return tuple(step.model_copy(update={"number": at}) for at, step in enumerate(self.steps, start=1))

    def _at(self, item: Item) -> int | None:
        return next((at for at, step in enumerate(self.steps) if step.id == item.id), None)

    def _back(self, item: Item) -> int | None:
        self._insert(self.struck.pop(item.id))
        return self._at(item)

    def _new(self, step: Step) -> Step:
        self._before_amending[step.id] = step
        return step

    def _insert(self, step: Step) -> None:
        """Put a step where its second stands among the others."""
        self.steps = [*put_in(self.steps, [step])]

    def _arrange(self, one: OnItem, at: int) -> None:
        if isinstance(one, Reorder):
            self._reorder(one, at)
        elif isinstance(one, Merge):
            self._merge(one, at)
        elif isinstance(one, Split):
            step = self.steps[at]
            self.steps[at : at + 1] = [self._new(self._portion(step, one, n, part)) for n, part in enumerate(one.into)]

    def _reorder(self, one: Reorder, at: int) -> None:
        behind = None if one.after is None else self._at(one.after)
        if one.after is not None and behind in (None, at):
            self.failed[one.id] = "the step that it was put behind is gone"
            return
        step = self.steps.pop(at)
        place = 0 if one.after is None else (self._at(one.after) or 0) + 1
        self.steps.insert(place, _mark(step, "reorder", one.id))

    def _merge(self, one: Merge, at: int) -> None:
        places = [self._at(other) for other in one.others]
        if any(place is None or place == at for place in places):
            self.failed[one.id] = "one of the steps that were merged is gone"
            return
        parts = [self.steps[at], *(self.steps[place] for place in places if place is not None)]
        self.steps[at] = self._new(_merged(parts, one))
        gone = {part.id for part in parts[1:]}
        self.steps = [step for step in self.steps if step.id not in gone]

    def _portion(self, step: Step, one: Split, number: int, part: Portion) -> Step:
        own = part.measures
        if own is None:
            shown = [name for name in step.measures if self._has(part, name)]
            rest = [name for name in step.measures if not any(self._has(other, name) for other in one.into)]
            own = tuple(name for name in step.measures if name in shown or (number == 0 and name in rest))
        update: dict[str, object] = {
            "text": part.text, "measures": own, "ruling": Ruled(verdict="split", ruling=one.id, was=_text_of(step))
        }  # fmt: skip
        if number:
            update |= {"id": new_id("step", one.id, number), "verb": _verb(part.text), "object": ""}
        return step.model_copy(update=update)

    def _has(self, part: Portion, name: str) -> bool:
        """Whether a part has a measure: it was given to it, or stands in its text where nothing was given."""
        if part.measures is not None:
            return name in part.measures
        return name in self.measures and shows_measure(part.text, self.measures[name])


def _mark(step: Step, verdict: str, ruling: str) -> Step:
    was = step.ruling.was if step.ruling else None
    return step.model_copy(update={"ruling": Ruled.model_validate({"verdict": verdict, "ruling": ruling, "was": was})})


def _amended(step: Step, one: Amend) -> Step:
    earlier = step.ruling.was if step.ruling and step.ruling.was else Former()
    former = {"text": earlier.text, "mode": earlier.mode}
    update: dict[str, object] = {}
    for name in ("text", "mode"):
        value: str | Mode | None = getattr(one.to, name)
        if value and value != getattr(step, name):
            former[name] = former[name] or getattr(step, name)
            update[name] = value
    was = Former.model_validate(former)
    ruled = Ruled(verdict="amend", ruling=one.id, because=one.because, later=one.later, was=was)
    return step.model_copy(update={**update, "ruling": ruled})


def _merged(parts: list[Step], one: Merge) -> Step:
    first = parts[0]
    joined = ", then ".join([first.text, *(part.text[:1].lower() + part.text[1:] for part in parts[1:])])
    return first.model_copy(
        update={
            "cue_from": min(part.cue_from for part in parts),
            "cue_to": max(part.cue_to for part in parts),
            "start": min(part.start for part in parts),
            "end": max(part.end for part in parts),
            "quote": " … ".join(part.quote for part in sorted(parts, key=lambda part: part.start)),
            "text": one.text or joined,
            "verb": " and ".join(dict.fromkeys(part.verb for part in parts if part.verb)),
            "object": " and ".join(dict.fromkeys(part.object for part in parts if part.object)),
            "measures": _union(part.measures for part in parts),
            "tools": _union(part.tools for part in parts),
            "materials": _union(part.materials for part in parts),
            "ruling": Ruled(verdict="merge", ruling=one.id, was=_text_of(first)),
        }
    )


def _added(add: Add) -> Step:
    text = add.to.text or add.on.words
    return Step(
        id=add.on.id, number=0, cue_from=add.on.cue, cue_to=add.on.cue, start=add.on.start, end=add.on.start,
        quote=add.on.words, text=text, verb=_verb(text), object="", mode=add.to.mode or "done",
        ruling=Ruled(verdict="add", ruling=add.id),
    )  # fmt: skip


def _text_of(step: Step) -> Former:
    return step.ruling.was if step.ruling and step.ruling.was else Former(text=step.text)


def _verb(text: str) -> str:
    """An instruction begins with its verb in the base form."""
    return text.split(maxsplit=1)[0].lower().strip(",.;:") if text.split() else ""


def _union(listed: Iterable[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one for some in listed for one in some))
