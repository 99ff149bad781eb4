"""Puts the shop's names into a session's record; what was said for each stays with its cues."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from extract.record import Mention, Record, SaidAs, Step
from publish.kit.names import Called, Names
from publish.kit.rulings.model import Said, Sort
from publish.kit.same import same_thing
from publish.rulings.naming import same_letters

_SORTS: tuple[Sort, ...] = ("tool", "material")


def said_in_record(record: Record) -> tuple[Said, ...]:
    """Every tool and material of a session, as the session has it."""
    return tuple(Said(sort=sort, name=one.name) for sort, one in mentions(record))


def as_called(record: Record, names: Names) -> Record:
    """The record with every tool and material as a person calls it; the same where nobody said anything of them."""
    if not any(names.of(one) for one in said_in_record(record)):
        return record
    things: dict[tuple[str, ...], tuple[Called | None, list[tuple[Sort, Mention]]]] = {}
    for sort, one in mentions(record):
        called = names.of(Said(sort=sort, name=one.name))
        key = (sort, one.name) if called is None else (called.sort, same_letters(called.name), "by hand")
        things.setdefault(key, (called, []))[1].append((sort, one))
    kept: dict[Sort, list[Mention]] = {sort: [] for sort in _SORTS}
    for called, of in things.values():
        kept[of[0][0] if called is None else called.sort].append(_mention(called, of))
    return record.model_copy(
        update={
            "tools": tuple(kept["tool"]),
            "materials": tuple(kept["material"]),
            "steps": tuple(_step(one, names) for one in record.steps),
        }
    )


def said_otherwise(one: Mention) -> tuple[SaidAs, ...]:
    """What a session has for a thing that is called otherwise in the shop, by more than case or plural."""
    return tuple(said for said in one.said if same_thing(said.name) != same_thing(one.name))


def mentions(record: Record) -> Iterator[tuple[Sort, Mention]]:
    """Its tools, then its materials."""
    yield from (("tool", one) for one in record.tools)
    yield from (("material", one) for one in record.materials)


def _mention(called: Called | None, of: Sequence[tuple[Sort, Mention]]) -> Mention:
    """One mention of several; the first one's id holds, and the first ruling on any."""
    first = of[0][1]
    if called is None:
        return first
    return first.model_copy(
        update={
            "name": called.name,
            "cues": tuple(sorted({cue for _, one in of for cue in one.cues})),
            "ruling": next((one.ruling for _, one in of if one.ruling is not None), None),
            "said": tuple(SaidAs(sort=sort, name=one.name, cues=one.cues) for sort, one in of),
        }
    )


def _step(step: Step, names: Names) -> Step:
    """A step with the same names, each once."""
    kept: dict[Sort, dict[str, None]] = {sort: {} for sort in _SORTS}
    for sort, said in (*_each("tool", step.tools), *_each("material", step.materials)):
        called = names.of(Said(sort=sort, name=said)) or Called(sort, said)
        kept[called.sort].setdefault(called.name)
    named = tuple(kept["tool"]), tuple(kept["material"])
    if named == (step.tools, step.materials):
        return step
    return step.model_copy(update={"tools": named[0], "materials": named[1]})


def _each(sort: Sort, names: Iterable[str]) -> Iterator[tuple[Sort, str]]:
    yield from ((sort, name) for name in names)
