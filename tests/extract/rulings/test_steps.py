"""Steps as a person puts them: in another order, joined, parted, reworded, struck, added."""

from __future__ import annotations

from typing import cast

import pytest

from extract.rulings import (
    Portion,
    Proofed,
    RulingError,
    Wanted,
    add,
    amend,
    apply,
    merge,
    reorder,
    split,
    stet,
    strike,
    undo,
)
from tests.extract.rulings.bench import hand, proof, record


def texts(proofed: Proofed) -> list[str]:
    return [one.text for one in proofed.record.steps]


ACTION, HEAT, CLEAN = "Measure the action", "Heat the plate to 140 °F", "Clean it"


def test_a_step_is_put_behind_another() -> None:
    assert texts(proof(reorder(proof(), "s-1", "s-2", hand(1)))) == [HEAT, ACTION, CLEAN]


def test_a_step_is_put_first() -> None:
    ruled = proof(reorder(proof(), "s-3", None, hand(1)))
    assert texts(ruled) == [CLEAN, ACTION, HEAT]
    assert [one.number for one in ruled.record.steps] == [1, 2, 3]


def test_orders_given_one_after_the_other() -> None:
    first = reorder(proof(), "s-3", None, hand(1))
    second = reorder(proof(first), "s-1", "s-2", hand(2))
    assert texts(proof(first, second)) == [CLEAN, HEAT, ACTION]


def test_merged_steps_are_one_with_all_that_was_in_them() -> None:
    ruled = proof(merge(proof(), ["s-1", "s-2"], hand(1)))
    assert texts(ruled) == ["Measure the action, then heat the plate to 140 °F", CLEAN]
    step = ruled.record.steps[0]
    assert (step.id, step.measures, step.verb, step.object) == (
        "s-1",
        ("m-0", "m-3"),
        "measure and heat",
        "action and plate",
    )
    assert (step.start, step.end, step.cue_from, step.cue_to) == (0.0, 4.0, 0, 3)


def test_a_merged_step_may_be_worded_anew() -> None:
    assert texts(proof(merge(proof(), ["s-2", "s-1"], hand(1), text="Warm up")))[0] == "Warm up"


def test_a_step_is_split_and_its_figures_go_where_they_are_shown() -> None:
    joined = merge(proof(), ["s-1", "s-2"], hand(1))
    parted = split(proof(joined), "s-1", ["Measure the action", "Heat the plate to 140 °F slowly"], hand(2))
    ruled = proof(joined, parted)
    assert [(one.text, one.measures) for one in ruled.record.steps[:2]] == [
        ("Measure the action", ("m-0",)),
        ("Heat the plate to 140 °F slowly", ("m-3",)),
    ]


def test_the_person_may_say_which_figures_a_part_has() -> None:
    parted = split(proof(), "s-2", [Portion(text="Warm it"), Portion(text="Heat it", measures=("m-3",))], hand(1))
    assert [one.measures for one in proof(parted).record.steps[1:3]] == [(), ("m-3",)]


def test_a_part_of_a_split_step_takes_rulings_and_goes_with_the_split() -> None:
    parted = split(proof(), "s-2", ["Warm the plate", "Wait"], hand(1))
    behind = proof(parted).record.steps[2].id
    reworded = amend(proof(parted), behind, {"text": "Wait a minute"}, hand(2))
    assert texts(proof(parted, reworded)) == [ACTION, "Warm the plate", "Wait a minute", CLEAN]
    undone = proof(parted, reworded, undo(proof(parted), parted.id, hand(3)))
    assert undone.record == record()
    assert [one.why for one in undone.unplaced] == ["what it is on was put in by a ruling that was taken back"]


def test_a_reworded_step_keeps_its_words_before_and_stet_brings_them_back() -> None:
    reworded = amend(proof(), "s-1", {"text": "Check the action"}, hand(1))
    ruled = proof(reworded)
    step = ruled.record.steps[0]
    assert step.ruling is not None
    assert step.ruling.was is not None
    assert (step.text, step.ruling.was.text) == ("Check the action", "Measure the action")
    assert texts(proof(reworded, stet(ruled, "s-1", hand(2))))[0] == "Measure the action"


def test_a_step_that_was_said_wrong_is_an_erratum() -> None:
    ruling = amend(proof(), "s-2", {"text": "Heat the plate from below"}, hand(1), because="said_wrong")
    (erratum,) = [one for one in proof(ruling).record.corrections if one.source == "proof"]
    assert (erratum.withdraws.text, erratum.replacement) == ("heat the plate to 140 °f", "Heat the plate from below")


def test_a_struck_step_leaves_the_procedure_and_may_come_back() -> None:
    out = strike(proof(), "s-2", hand(1))
    ruled = proof(out)
    assert texts(ruled) == [ACTION, CLEAN]
    assert [one.item.id for one in ruled.struck] == ["s-2"]
    assert texts(proof(out, stet(ruled, "s-2", hand(2)))) == [ACTION, HEAT, CLEAN]


def test_an_added_step_stands_at_its_second() -> None:
    added = add(proof(), "step", 5.0, 5, "and mask the top", {"text": "Mask the top", "mode": "done"}, hand(1))
    step = proof(added).record.steps[2]
    assert (step.text, step.verb, step.number, step.start) == ("Mask the top", "mask", 3, 5.0)


def test_the_words_of_a_person_are_not_changed_by_a_later_amendment() -> None:
    reworded = amend(proof(), "s-2", {"text": "Bring the plate to 140 °F"}, hand(1))
    amended = amend(proof(reworded), "m-3", {"figure": "150"}, hand(2), because="heard_wrong")
    ruled = proof(reworded, amended)
    assert texts(ruled)[1] == "Bring the plate to 140 °F"
    shown = [one.message for one in ruled.open if one.item.id == "s-2"]
    assert shown == [
        "“Bring the plate to 140 °F” shows 140\N{NO-BREAK SPACE}°F, which is 150\N{NO-BREAK SPACE}°F by now"
    ]


def test_a_merge_without_one_of_its_steps_is_shown_and_changes_nothing() -> None:
    joined = merge(proof(), ["s-1", "s-2"], hand(1))
    shorter = record().model_copy(update={"steps": (record().steps[0], record().steps[2])})
    ruled = apply(shorter, [joined])
    assert texts(ruled) == [ACTION, CLEAN]
    assert [one.ruling.id for one in ruled.unplaced] == [joined.id]


_SOMEDAY = cast("Wanted", {"mode": "someday"})


@pytest.mark.parametrize(
    ("ask", "problem"),
    [
        (lambda: reorder(proof(), "s-1", "s-1", hand(1)), "a step can't stand behind itself"),
        (lambda: reorder(proof(), "m-0", "s-1", hand(1)), "'m-0' is a measure"),
        (lambda: merge(proof(), ["s-1"], hand(1)), "two different steps"),
        (lambda: merge(proof(), ["s-1", "s-1"], hand(1)), "two different steps"),
        (lambda: split(proof(), "s-1", ["only one", " "], hand(1)), "two texts at least"),
        (lambda: amend(proof(), "s-1", {"text": "  "}, hand(1)), "the text is empty"),
        (lambda: amend(proof(), "s-1", {"figure": "7 mm"}, hand(1)), "a step has no figure"),
        (lambda: amend(proof(), "s-1", {}, hand(1)), "nothing is changed"),
        (lambda: amend(proof(), "s-1", _SOMEDAY, hand(1)), "mode can't be 'someday'"),
        (lambda: stet(proof(), "s-99", hand(1)), "there is no item 's-99'"),
        (lambda: add(proof(), "step", 1.0, 1, "said", {"mode": "done"}, hand(1)), "a step needs its text"),
        (lambda: add(proof(), "finding", 1.0, 1, "said", {}, hand(1)), "nothing is changed"),
    ],
)  # fmt: skip
def test_what_makes_no_sense_is_refused_in_one_line(ask: object, problem: str) -> None:
    assert callable(ask)
    with pytest.raises(RulingError) as told:
        ask()
    assert problem in str(told.value)
    assert "\n" not in str(told.value)
