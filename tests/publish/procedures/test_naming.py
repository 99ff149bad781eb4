"""A procedure is called as a repairer would call the job. Which words name a job is common practice, no source."""

from __future__ import annotations

import pytest

from publish.procedures.deeds import deeds_of
from publish.procedures.naming import name_of
from publish.procedures.things import terms_of
from tests.publish.procedures.invented import step


def named(*texts: str, trade: str = "strings") -> str:
    steps = [step(number, text, "x") for number, text in enumerate(texts, 1)]
    return name_of([[deed for deeds in deeds_of(steps, terms_of(trade)) for deed in deeds]])


@pytest.mark.parametrize(
    ("texts", "name"),
    [
        # Put in new, or in the place of what was spent: replaced.
        (("Remove the old saddle", "File the slot", "Fit the new saddle"), "Replace the saddle"),
        (("Remove the worn saddle", "Fit the saddle"), "Replace the saddle"),
        # Taken out and put back is no replacing.
        (("Remove the saddle", "Level the frets", "Put the saddle back in"), "Level the frets"),
        # Taken off and glued on again.
        (("Heat the bridge", "Remove the bridge", "Glue the bridge"), "Reglue the bridge"),
        (("Steam the dovetail", "Remove the neck", "Glue the neck"), "Reset the neck"),
        # What is said of anything names no job.
        (("Use the straightedge on the frets", "Put the capo on the frets", "Level the frets"), "Level the frets"),
        (("Let the bridge dry", "Keep the bridge warm", "Let the bridge rest"), "Work on the bridge"),
        (("Mask the fingerboard", "Crown the frets", "Polish the frets"), "Crown the frets"),
        (("Sand the bottom of the bridge",), "Sand the bridge"),
        (("Remove the bridge", "Cover the soundboard with card", "Heat the bridge"), "Remove the bridge"),
        # What is measured on the way does not name it either; measuring alone does.
        (("Measure the nut", "File the nut"), "File the nut"),
        (("Measure the nut",), "Measure the nut"),
    ],
)
def test_a_job_is_called_by_what_tells_it(texts: tuple[str, ...], name: str) -> None:
    assert named(*texts) == name


def test_a_material_is_worked_with_and_not_on() -> None:
    assert named("Sand the bridge with paper", "Put glue on", "Rub the glue in") == "Sand the bridge"


@pytest.mark.parametrize("texts", [("It",), ("",), ("then it",), ("Measure it", "Use it")])
def test_a_name_is_never_empty(texts: tuple[str, ...]) -> None:
    assert named(*texts)
