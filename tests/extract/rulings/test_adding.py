"""What the machine missed, put in by a person at its second."""

from __future__ import annotations

import pytest

from extract.record import Measure
from extract.rulings import Proofed, RulingError, add, amend, apply, strike, undo
from tests.extract.rulings.bench import hand, proof, record


def test_a_measure_is_put_in_at_its_second() -> None:
    given = add(
        proof(), "measure", 2.5, 2, "two thou or so", {"figure": "about 2 thou", "attribute": "relief", "item": "neck"},
        hand(1),
    )  # fmt: skip
    measures = proof(given).record.measures
    assert [one.id for one in measures].index(given.on.id) == 3
    (one,) = [one for one in measures if one.id == given.on.id]
    assert (one.value, one.unit, one.hedged, one.quote) == (2.0, "thou", True, "two thou or so")
    assert (one.attribute, one.item, one.kind, one.ucum) == ("relief", "neck", "length", "[mil_i]")
    assert one.ruling is not None
    assert one.ruling.verdict == "add"


def test_what_was_put_in_may_be_amended_and_struck() -> None:
    given = add(proof(), "measure", 2.5, 2, "two thou", {"figure": "2 thou"}, hand(1))
    amended = amend(proof(given), given.on.id, {"figure": "3 thou"}, hand(2), because="own_words")
    struck = strike(proof(given, amended), given.on.id, hand(3))
    assert _added(proof(given, amended), given.on.id).value == 3.0
    assert not _added(proof(given, amended, struck), given.on.id).stands


def _added(proofed: Proofed, item_id: str) -> Measure:
    return next(one for one in proofed.record.measures if one.id == item_id)


def test_undone_it_is_gone_and_what_was_ruled_on_it_is_shown() -> None:
    given = add(proof(), "measure", 2.5, 2, "two thou", {"figure": "2 thou"}, hand(1))
    amended = amend(proof(given), given.on.id, {"figure": "3 thou"}, hand(2), because="own_words")
    proofed = proof(given, amended, undo(proof(given), given.id, hand(3)))
    assert proofed.record == record()
    assert [one.ruling.id for one in proofed.unplaced] == [amended.id]


def test_an_erratum_takes_back_the_measure_that_it_names() -> None:
    given = add(
        proof(), "correction", 0.0, 0, "the action is 7/64", {"figure": "5/64 in"}, hand(1), withdraws="m-0"
    )  # fmt: skip
    proofed = proof(given)
    (erratum,) = [one for one in proofed.record.corrections if one.id == given.on.id]
    assert (erratum.source, erratum.withdraws.measure, erratum.value, erratum.unit) == ("proof", "m-0", 5 / 64, "inch")
    assert (proofed.record.measures[0].stands, proofed.record.measures[0].corrected_by) == (False, given.on.id)
    assert "correction" not in {one.rank for one in proofed.open if one.item.id == given.on.id}


def test_an_erratum_that_is_struck_lets_the_measure_stand_again() -> None:
    given = add(proof(), "correction", 0.0, 0, "7/64", {"figure": "5/64 in"}, hand(1), withdraws="m-0")
    proofed = proof(given, strike(proof(given), given.on.id, hand(2)))
    assert proofed.record.measures[0].stands


def test_doubts_and_jobs_left_for_later_are_put_in() -> None:
    doubt = add(proof(), "doubt", 1.0, 1, "I think", {"text": "Whether the plate is maple"}, hand(1))
    later = add(proof(), "follow_up", 2.0, 2, "next week", {"text": "Plug the screw"}, hand(2))
    ruled = proof(doubt, later).record
    assert [one.text for one in ruled.doubts] == ["Whether the plate is maple", "Whether the top is spruce"]
    assert [one.text for one in ruled.follow_ups] == ["Plug the screw", "Plane the fingerboard"]


def test_what_the_machine_has_come_to_find_itself_stands_once() -> None:
    given = add(proof(), "measure", 7.0, 7, "two thou", {"figure": "2 thou", "attribute": "relief"}, hand(1))
    found = record().measures[0].model_copy(
        update={"id": "m-new", "start": 7.4, "display": "2\N{NO-BREAK SPACE}thou", "value": 2.0, "unit": "thou"}
    )  # fmt: skip
    better = record().model_copy(update={"measures": (*record().measures, found)})
    proofed = apply(better, [given])
    assert [(one.id, one.attribute) for one in proofed.record.measures if one.start > 6] == [("m-new", "relief")]
    assert (proofed.kept, proofed.moved) == (0, 1)


def test_the_same_figure_said_twice_may_be_put_in_beside_the_one_that_was_found() -> None:
    given = add(proof(), "measure", 0.5, 0, "and the bass as well", {"figure": "7/64 in"}, hand(1))
    assert len(proof(given).record.measures) == len(record().measures) + 1


def test_a_unit_that_does_not_fit_is_refused() -> None:
    with pytest.raises(RulingError, match="is a temperature, but string height is a length"):
        add(proof(), "measure", 1.0, 1, "five", {"figure": "5 °C", "attribute": "string height"}, hand(1))
