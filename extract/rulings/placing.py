"""Rulings put on the items that a record has now."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from extract.rulings.made import is_made, new_id
from extract.rulings.matching import Places, find_places, found_since
from extract.rulings.model import Add, Amend, Item, Merge, OnItem, Reorder, Split
from extract.rulings.proofed import Unplaced

_NOTHING = "nothing like it is in the record now"
_TAKEN_BACK = "what it is on was put in by a ruling that was taken back"


@dataclass(frozen=True, slots=True)
class Placement:
    """Rulings with their places."""

    placed: tuple[OnItem, ...]
    """Each on its item as the record has it now, in order."""
    unplaced: tuple[Unplaced, ...]
    moved: frozenset[str]
    """Ids of rulings that were placed by words and time."""


def place(rulings: Iterable[OnItem], present: dict[str, Item]) -> Placement:
    """Each ruling on its item among the present ones and those that rulings themselves make."""
    rulings = tuple(rulings)
    made = {item.id: item for one in rulings for item in _made(one)}
    since = {one.on.id: found for one in rulings if (found := _found_since(one, present)) is not None}
    wanted = [item for one in rulings for item in _named(one) if not is_made(item.id)]
    places = find_places(wanted, present)
    now = Places({**places.now, **made, **since}, places.moved | set(since))
    placed: list[OnItem] = []
    unplaced: list[Unplaced] = []
    moved: set[str] = set()
    for one in rulings:
        gone = next((item for item in _named(one) if now.of(item) is None), None)
        if gone is not None:
            unplaced.append(Unplaced(one, _TAKEN_BACK if is_made(gone.id) else _NOTHING))
            continue
        placed.append(_as_amended(_repointed(one, now)) if one.on.id in since else _repointed(one, now))
        if any(item.id in now.moved for item in _named(one)):
            moved.add(one.id)
    return Placement(tuple(placed), tuple(unplaced), frozenset(moved))


def _made(one: OnItem) -> Iterator[Item]:
    """The items that a ruling makes."""
    if isinstance(one, Add):
        yield one.on
    elif isinstance(one, Split):
        for number, part in enumerate(one.into[1:], start=1):
            yield one.on.model_copy(update={"id": new_id("step", one.id, number), "words": part.text})


def _found_since(one: OnItem, present: dict[str, Item]) -> Item | None:
    return found_since(one.on, present.values(), one.beside) if isinstance(one, Add) else None


def _as_amended(one: OnItem) -> OnItem:
    """What a person had put in and the machine finds by now: what the person said of it is amended there."""
    if not isinstance(one, Add):
        return one
    return Amend(id=one.id, at=one.at, by=one.by, on=one.on, to=one.to, because="own_words", overrule=one.overrule)


def _named(one: OnItem) -> Iterator[Item]:
    """The items that must be found for a ruling to be carried out."""
    yield one.on
    if isinstance(one, Reorder) and one.after is not None:
        yield one.after
    elif isinstance(one, Merge):
        yield from one.others
    elif isinstance(one, Add) and one.withdraws is not None:
        yield one.withdraws


def _repointed(one: OnItem, places: Places) -> OnItem:
    def now(item: Item) -> Item:
        """As the ruling tells it, under the present id and at the present place."""
        found = places.now[item.id]
        return item.model_copy(update={"id": found.id, "start": found.start, "cue": found.cue})

    update: dict[str, object] = {"on": now(one.on)}
    if isinstance(one, Reorder) and one.after is not None:
        update["after"] = now(one.after)
    elif isinstance(one, Merge):
        update["others"] = tuple(now(item) for item in one.others)
    elif isinstance(one, Add) and one.withdraws is not None:
        update["withdraws"] = now(one.withdraws)
    return one.model_copy(update=update)
