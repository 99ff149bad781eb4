"""Of what a moment reads when it is heard alone, only another figure is worth weighing."""

from __future__ import annotations

import pytest

from extract.rivals import find_rivals
from extract.rivals.breaths import breath_at
from extract.rivals.reread import worth_weighing
from extract.rivals.sense import flaws

HEARD = "string is sixteen hours thick"


def texts(heard: str, *others: str) -> list[str]:
    return [one.text for one in worth_weighing(heard, others, (), lambda text: 0.0)]


def test_another_unit_is_weighed() -> None:
    assert texts(HEARD, "string is sixteen thou thick") == ["string is sixteen thou thick"]


@pytest.mark.parametrize(
    "other",
    ["ring is sixteen hours thick", "is sixteen", "string is thick and even", HEARD],
    ids=["the same figure", "too short", "no figure", "what was heard"],
)
def test_what_adds_no_figure_is_left_out(other: str) -> None:
    assert texts(HEARD, other) == []


def test_each_figure_is_weighed_once() -> None:
    assert len(texts(HEARD, "string is sixteen thou thick", "string is 16 thou thick")) == 1


def test_a_word_that_takes_back_is_never_lost() -> None:
    assert texts("two, no wait, five eighths", "two, know weight, five eighths") == []


def test_hyphens_that_join_too_much_are_parted() -> None:
    assert texts("six and a half out thick", "six-and-a-half thou thick") == ["six and a half thou thick"]


def test_a_doubt_can_weigh_what_is_heard_later() -> None:
    words = ["That", "string", "is", "sixteen", "hours", "thick."]
    (doubt,) = find_rivals(words)
    (rival,) = doubt.reread([" ".join(words[doubt.start : doubt.end]).replace("sixteen", "eleven")])
    assert "eleven hours" in rival.text
    assert rival.why


@pytest.mark.parametrize(
    ("said", "parted"),
    [
        ("sixteen, and five eighths", True),
        ("eighty-eight. And a half", True),
        ("sixteen, and then five", False),
        ("wood, and five eighths", False),
        ("sixteen and five eighths", False),
    ],
)
def test_a_breath_inside_a_number(said: str, parted: bool) -> None:
    assert breath_at(said.split(), 0) == parted


def test_a_correction_in_vain_makes_less_sense() -> None:
    vain = "twenty-five sixty-fourths, no, twenty-five sixty-fourths"
    assert flaws(vain) > flaws("twenty-five sixty-fourths, no, thirty-five sixty-fourths")


@pytest.mark.parametrize("heard", ["point 4,000 of it", "point, and", "point oh"])
def test_odd_points_are_no_error(heard: str) -> None:
    find_rivals(heard.split())
