"""Tools and materials over all sessions."""

from __future__ import annotations

import pytest

from publish.context.reference import KitPage, Thing, Use
from publish.kit import same_thing
from tests.publish.in_memory import make_kit, make_library, shelf_of
from tests.publish.library.sessions import pages, sessions
from tests.publish.session import SHOP


def kit() -> KitPage:
    made = make_kit(sessions(), pages(sessions()), SHOP)
    assert made is not None
    return made


def uses(thing: Thing) -> list[Use]:
    return [one for one in thing.uses if isinstance(one, Use)]


def test_each_thing_is_told_once_with_every_session_that_names_it_oldest_first() -> None:
    assert [(one.name, [use.date for use in uses(one)]) for one in kit().tools] == [
        ("cam clamps", ["2031-05-14"]),
        ("heating plate", ["2031-05-14"]),
        ("palette knife", ["2031-05-14", "2032-03-02", "2032-11-20", "2033-06-30"]),
    ]


def test_a_name_in_other_letters_is_the_same_thing() -> None:
    first, *rest = sessions()
    tools = tuple(one.model_copy(update={"name": one.name.upper()}) for one in first.record.tools)
    of = (type(first)(first.slug, first.record.model_copy(update={"tools": tools}), first.transcript), *rest)
    made = make_kit(of, pages(of), SHOP)
    assert made is not None
    assert [one.name for one in made.tools] == ["CAM CLAMPS", "HEATING PLATE", "PALETTE KNIFE"]
    assert len(made.tools[2].uses) == 4


def test_a_second_plays_the_recording_of_its_session() -> None:
    use = uses(kit().tools[2])[1]
    assert use.session.href == "../sessions/2032-03-02-the-heron-again/index.html#kit"
    assert use.moments[0].href == "../sessions/2032-03-02-the-heron-again/film.webm#t=81.6"


def test_no_page_where_nothing_is_named() -> None:
    bare = tuple(
        type(one)(one.slug, one.record.model_copy(update={"tools": (), "materials": ()}), one.transcript)
        for one in sessions()
    )
    assert make_kit(bare, pages(bare), SHOP) is None
    assert shelf_of(make_library(bare, pages(bare), SHOP)).kit is None


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("string", "strings", True),
        ("Cam clamps", "cam  clamp", True),
        ("glass", "glas", False),
        ("hide glue", "fish glue", False),
    ],
)
def test_the_same_thing_in_the_plural_is_one(one: str, other: str, same: bool) -> None:
    assert (same_thing(one) == same_thing(other)) is same
