"""truth.json: valid, made from the script as it stands, and true to its own words."""

from __future__ import annotations

import tomllib
from fractions import Fraction

import pytest
from pint import UnitRegistry
from pydantic import ValidationError

from demo_sessions.build.script import load_script
from demo_sessions.truth import TimedFigure, Truth, folder, load_truth, slugs
from tests.demo_sessions.spelled import number

pytestmark = pytest.mark.parametrize("slug", slugs())


@pytest.fixture(scope="module")
def units() -> UnitRegistry[float]:
    return UnitRegistry()


def test_is_what_the_script_says(slug: str) -> None:
    truth, script = load_truth(slug), load_script(folder(slug))
    untimed = {"start"}
    assert [one.text for one in truth.sentences] == [line.say for line in script.line]
    for kind in ("measures", "corrections", "faults", "steps", "cautions", "follow_ups", "doubts"):
        made = [one.model_dump(exclude=untimed) for one in getattr(truth, kind)]
        assert made == [one.model_dump() for line in script.line for one in getattr(line, kind)], kind
    assert (truth.materials, truth.tools) == (script.mentions.materials, script.mentions.tools)


def test_repeats_the_facts_of_the_session(slug: str) -> None:
    truth = load_truth(slug)
    facts = tomllib.loads((folder(slug) / "session.toml").read_text("utf-8"))
    assert {key: str(facts[key]) for key in facts} == {
        key: getattr(truth, key) for key in ("title", "subject", "date", "recording", "trade")
    }


def test_every_quote_is_said_where_truth_puts_it(slug: str) -> None:
    truth = load_truth(slug)
    said = [(one.quote, one.start) for part in (truth.measures, truth.corrections, truth.faults) for one in part]
    for quote, start in said:
        saying = [line.text for line in truth.sentences if line.start <= start < line.end]
        assert len(saying) == 1, quote
        assert quote in saying[0]


def test_figures_are_in_the_order_they_are_said(slug: str) -> None:
    starts = [one.start for one in load_truth(slug).measures]
    assert starts == sorted(starts)
    assert len(set(starts)) == len(starts)


def test_sentences_follow_each_other(slug: str) -> None:
    truth = load_truth(slug)
    for one, following in zip(truth.sentences, truth.sentences[1:], strict=False):
        assert one.start < one.end < following.start
    assert truth.sentences[-1].end < truth.duration


def test_values_are_the_words(slug: str) -> None:
    for one in load_truth(slug).measures:
        said = number(one.quote)
        if one.unit == "inch" and not one.unit_said:
            continue  # the bare number of a slip: its fraction is said in the next breath
        assert float(said) == (one.value if one.low is None else one.low), one.quote


def test_units_are_units(slug: str, units: UnitRegistry[float]) -> None:
    for one in load_truth(slug).measures:
        assert units.Unit(one.unit).dimensionality is not None


def test_withdrawn_figures_have_a_correction(slug: str) -> None:
    truth = load_truth(slug)
    taken_back = {one.withdraws for one in truth.corrections}
    assert {one.quote for one in truth.measures if not one.stands} == taken_back
    standing = {one.quote for one in truth.measures if one.stands}
    for one in truth.corrections:
        assert any(quote in one.replacement or one.replacement in quote for quote in standing), one


def test_tools_and_materials_are_named(slug: str) -> None:
    truth = load_truth(slug)
    spoken = " ".join(one.text.lower() for one in truth.sentences)
    assert [name for name in (*truth.materials, *truth.tools) if name not in spoken] == []


def test_refuses_what_it_does_not_know(slug: str) -> None:
    content = load_truth(slug).model_dump(by_alias=True)
    with pytest.raises(ValidationError, match="Extra inputs"):
        Truth.model_validate({**content, "mood": "good"})


def test_refuses_half_a_range(slug: str) -> None:
    figure = load_truth(slug).measures[0].model_dump()
    with pytest.raises(ValidationError, match="both low and high"):
        TimedFigure.model_validate({**figure, "low": float(Fraction(1, 2))})
