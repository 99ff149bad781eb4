"""A step reads the figure that holds where the one in its words was taken back on the same film."""

from __future__ import annotations

from extract.record import Measure, Step
from extract.rulings.slips import put_right_in
from tests.extract.rulings.bench import record


def step_of(text: str, measures: tuple[str, ...]) -> Step:
    return record().steps[0].model_copy(update={"text": text, "measures": measures})


def put_right(text: str, measures: tuple[str, ...], *, held: bool = True) -> Step:
    by_id: dict[str, Measure] = {one.id: one for one in record().measures}
    by_id["m-4"] = by_id["m-4"].model_copy(update={"stands": not held})
    return put_right_in(step_of(text, measures), by_id, record().corrections if held else ())


def test_the_words_give_what_holds_and_both_figures_stay_with_the_step() -> None:
    step = put_right("Cut the nut to one and three eighths", ("m-4",))
    assert (step.text, step.measures) == ("Cut the nut to one and seven sixteenths", ("m-4", "m-5"))


def test_a_step_whose_words_do_not_show_it_only_gains_the_figure() -> None:
    step = put_right("Measure the nut", ("m-4", "m-0"))
    assert (step.text, step.measures) == ("Measure the nut", ("m-4", "m-5", "m-0"))


def test_a_figure_that_stands_there_already_is_not_given_again() -> None:
    assert put_right("Measure the nut", ("m-4", "m-5")).measures == ("m-4", "m-5")


def test_a_correction_that_a_person_denied_changes_nothing() -> None:
    step = step_of("Cut the nut to one and three eighths", ("m-4",))
    assert put_right(step.text, step.measures, held=False) == step


def test_a_step_without_a_slip_stays_as_it_is() -> None:
    step = step_of("Heat the plate to 140 °F", ("m-3",))
    assert put_right(step.text, step.measures) == step
