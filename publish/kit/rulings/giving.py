"""Giving rulings on tools and materials: one function a ruling, each checked against what the person sees.

Each returns a line for `KitLog.append`, and raises `RulingError` with one clear line where it can't be given.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from extract.rulings import Hand, RulingError
from publish.kit.rulings.log import in_force
from publish.kit.rulings.model import Merge, OnKit, Rename, Ruling, Said, Split, Undo, said_in
from publish.kit.rulings.replay import Key, key_of, keyed, replay
from publish.kit.same import same_thing
from publish.kit.things import Kit, Thing
from publish.rulings.naming import name_given, only_one, same_letters
from publish.rulings.taking_back import to_take_back

_WHAT = "tool or material"


def called(kit: Kit, wanted: str) -> Thing:
    """The thing with that name, or that is called so in any session, or the only one whose name holds it.

    A tool and a material of one name are told apart by "tool" or "material" before it. Raises `RulingError`.
    """
    asked, alike = same_letters(wanted), same_thing(wanted)
    return only_one(
        wanted,
        (
            lambda one: same_letters(one.name) == asked,
            lambda one: same_letters(one.label) == asked,
            lambda one: any(same_letters(said.name) == asked for said in one.said),
            lambda one: same_thing(one.name) == alike,
            lambda one: bool(asked) and asked in same_letters(one.name),
        ),
        kit,
        label=lambda one: one.label,
        names=_all_names,
        what=_WHAT,
        where="`spokeshave kit list`",
    )


def rename(kit: Kit, thing: Thing, name: str, hand: Hand) -> Rename:
    """Call it by a name."""
    told = _free(kit, name, thing)
    return Rename(id=hand.ruling_id, at=hand.at, by=hand.by, of=thing.said, name=told)


def merge(kit: Kit, things: Sequence[Thing], name: str, hand: Hand) -> Merge:
    """Make one of several; the first one's name holds where none is given."""
    if len({one.label for one in things}) < len(things) or len(things) < 2:
        raise RulingError("merging takes two different things", "name another one")
    told = _free(kit, name, *things) if name else _not_empty(things[0].name)
    return Merge(id=hand.ruling_id, at=hand.at, by=hand.by, of=tuple(one.said for one in things), name=told)


def split(kit: Kit, thing: Thing, said: Sequence[str], name: str, hand: Hand) -> Split:
    """Set names as said apart; what they are, is called by the first of them where no name is given."""
    apart = keyed(_said_so(thing, one) for one in said)
    stay = [one for one in thing.said if key_of(one) not in apart]
    if not stay or not apart:
        raise RulingError("that would leave one of the two empty", "name some of what is said for it, not all")
    first = next(iter(apart.values())).name
    told = _free(kit, name, thing) if name else _not_empty(first)
    kept = _not_empty(thing.name if same_letters(thing.name) != same_letters(told) else stay[0].name)
    if same_letters(kept) == same_letters(told):
        raise RulingError(f"both would be called {told!r}", "name what is set apart with --as")
    if any(same_letters(one.name) == same_letters(told) for one in stay):
        raise RulingError(f"{told!r} is said for what stays", "set that apart, or choose another name")
    return Split(
        id=hand.ruling_id, at=hand.at, by=hand.by, stay=tuple(stay), apart=tuple(apart.values()), kept=kept, name=told
    )


def undo(rulings: Iterable[Ruling], wanted: str | None, hand: Hand) -> Undo:
    """Take back a ruling, the last one where none is named."""
    holding = in_force(rulings)
    if not holding:
        raise RulingError("there is no ruling on tools and materials to take back", "see `spokeshave kit list`")
    meant = to_take_back(holding, wanted, lambda one: set(keyed(said_in(one))))
    _told_apart(one for one in holding if one is not meant)
    return Undo(id=hand.ruling_id, at=hand.at, by=hand.by, ruling=meant.id)


def _told_apart(rulings: Iterable[OnKit]) -> None:
    """No two groups are called alike: a name that a group gave up may be another one's by now."""
    seen = set[Key]()
    for group in replay(rulings):
        key = key_of(Said(sort=next(iter(group.members))[0], name=group.name))
        if key in seen:
            raise RulingError(f"two {key[0]}s would be called {group.name!r} then", "rename one of the two first")
        seen.add(key)


def _free(kit: Kit, name: str, *own: Thing) -> str:
    """A name that no other thing answers to."""
    told = name_given(name, _WHAT)
    alike = same_thing(told)
    other = next((one for one in kit if one not in own and alike in map(same_thing, _all_names(one))), None)
    if other is not None:
        raise RulingError(f"“{other.name}” is called {told!r} already", "choose another name, or merge the two")
    return told


def _not_empty(name: str) -> str:
    if not name:
        raise RulingError("that would leave a thing without a name", "give one with --as")
    return name


def _said_so(thing: Thing, wanted: str) -> Said:
    asked = same_letters(wanted)
    return only_one(
        wanted,
        (
            lambda one: same_letters(one.name) == asked,
            lambda one: same_letters(f"{one.sort} {one.name}") == asked,
        ),
        thing.said,
        label=lambda one: f"{one.sort} {one.name}",
        names=lambda one: (one.name,),
        what=f"name said for “{thing.name}”",
        where="`spokeshave kit show` of it",
    )


def _all_names(one: Thing) -> tuple[str, ...]:
    return one.name, *(said.name for said in one.said)
