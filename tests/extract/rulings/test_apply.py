"""What comes of a record and rulings, case by case."""

from __future__ import annotations

import pytest

from extract.rulings import FigureError, RulingError, UnitKindError, amend, apply, redo, stet, strike, undo
from tests.extract.rulings.bench import hand, proof, record


def test_without_rulings_the_record_is_the_machines() -> None:
    assert proof().record == record()


def test_an_amended_figure_keeps_what_it_was() -> None:
    ruling = amend(proof(), "m-0", {"figure": "5/64 in"}, hand(1), because="heard_wrong")
    measure = proof(ruling).record.measures[0]
    assert (measure.value, measure.unit, measure.display) == (5 / 64, "inch", "5/64\N{NO-BREAK SPACE}in")
    assert measure.quote == "7/64"
    assert measure.ruling is not None
    assert measure.ruling.was is not None
    assert measure.ruling.was.display == "7/64\N{NO-BREAK SPACE}in"


@pytest.mark.parametrize(("because", "errata"), [("said_wrong", 1), ("heard_wrong", 0), ("own_words", 0)])
def test_only_what_was_said_wrong_is_an_erratum(because: str, errata: int) -> None:
    ruling = amend(proof(), "m-0", {"figure": "5/64 in"}, hand(1), because=because)  # type: ignore[arg-type]
    found = [one for one in proof(ruling).record.corrections if one.source == "proof"]
    assert len(found) == errata
    assert all(
        (one.withdraws.text, one.replacement, one.start) == ("7/64", "5/64\N{NO-BREAK SPACE}in", 0.0) for one in found
    )


def test_a_bare_number_keeps_the_unit() -> None:
    ruling = amend(proof(), "m-3", {"figure": "150"}, hand(1), because="heard_wrong")
    assert proof(ruling).record.measures[3].unit == "degF"


def test_a_step_that_shows_the_figure_follows() -> None:
    ruling = amend(proof(), "m-3", {"figure": "150"}, hand(1), because="heard_wrong")
    assert proof(ruling).record.steps[1].text == "Heat the plate to 150\N{NO-BREAK SPACE}°F"


def test_a_struck_measure_stays_as_struck() -> None:
    ruled = proof(strike(proof(), "m-0", hand(1)))
    assert not ruled.record.measures[0].stands
    assert [one.item.id for one in ruled.struck] == ["m-0"]


def test_stet_brings_back_what_the_machine_had() -> None:
    first = amend(proof(), "m-0", {"figure": "5/64 in"}, hand(1), because="heard_wrong")
    ruled = proof(first, stet(proof(first), "m-0", hand(2)))
    assert ruled.record.measures[0].display == record().measures[0].display


def test_a_struck_figure_that_is_amended_again_keeps_what_was_amended_before() -> None:
    first = amend(proof(), "m-0", {"figure": "5/64 in"}, hand(1), because="heard_wrong")
    struck = strike(proof(first), "m-0", hand(2))
    again = amend(proof(first, struck), "m-0", {"where": "treble side"}, hand(3))
    measure = proof(first, struck, again).record.measures[0]
    assert (measure.stands, measure.where, measure.value) == (True, "treble side", 5 / 64)


def test_a_figure_amended_to_what_it_was_is_no_erratum() -> None:
    ruling = amend(proof(), "m-0", {"figure": "7/64 in"}, hand(1), because="said_wrong")
    assert proof(ruling).record.corrections == record().corrections


def test_what_holds_instead_follows_when_it_is_amended() -> None:
    ruling = amend(proof(), "m-5", {"figure": "1 1/2 in"}, hand(1), because="heard_wrong")
    (correction,) = proof(ruling).record.corrections
    assert (correction.replacement, correction.value, correction.unit) == ("1 1/2\N{NO-BREAK SPACE}in", 1.5, "inch")


def test_a_place_that_was_said_wrong_is_told_in_the_errata() -> None:
    ruling = amend(proof(), "m-0", {"item": "A string"}, hand(1), because="said_wrong")
    (erratum,) = [one for one in proof(ruling).record.corrections if one.source == "proof"]
    assert (erratum.withdraws.text, erratum.replacement) == ("7/64, G string", "7/64\N{NO-BREAK SPACE}in, A string")


def test_a_denied_correction_lets_what_it_took_back_stand_again() -> None:
    ruled = proof(strike(proof(), "c-nut", hand(1)))
    assert ruled.record.corrections == ()
    assert ruled.record.measures[4].stands
    assert ruled.record.measures[4].corrected_by is None


def test_undo_and_redo() -> None:
    first = strike(proof(), "m-0", hand(1))
    undone = undo(proof(first), first.id, hand(2))
    assert proof(first, undone).record == record()
    assert proof(first, undone, redo(first.id, hand(3))).record == proof(first).record


def test_a_ruling_whose_item_is_gone_is_shown() -> None:
    ruling = strike(proof(), "m-0", hand(1))
    without = record().model_copy(update={"measures": record().measures[1:], "steps": record().steps[1:]})
    ruled = apply(without, [ruling])
    assert [one.ruling for one in ruled.unplaced] == [ruling]
    assert (ruled.kept, ruled.moved) == (0, 0)


def test_what_is_open_stands_worst_first() -> None:
    assert [one.rank for one in proof().open] == ["stop", "correction", "doubt", "step"]


def test_units_are_checked() -> None:
    with pytest.raises(FigureError, match="“parsecs” in “5 parsecs” is no unit on the list"):
        amend(proof(), "m-0", {"figure": "5 parsecs"}, hand(1), because="heard_wrong")
    with pytest.raises(UnitKindError, match="is a temperature, but string height is a length"):
        amend(proof(), "m-0", {"figure": "5 °C"}, hand(1), because="heard_wrong")
    meant = amend(proof(), "m-0", {"figure": "5 °C"}, hand(1), because="heard_wrong", overrule=True)
    assert proof(meant).record.measures[0].unit == "degC"


def test_a_new_figure_needs_its_reason() -> None:
    with pytest.raises(RulingError, match="say whether it was said wrong"):
        amend(proof(), "m-0", {"figure": "5/64 in"}, hand(1))
