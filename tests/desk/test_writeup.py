"""The whole job on a demo film: what the page says against what the film contains."""

from __future__ import annotations

from importlib.resources import files

import pytest

from demo_sessions.truth import Truth
from desk.demo import demo_titles, write_up_demo
from desk.work import Hearing, WrittenUp
from extract.pipeline import Extractor
from tests.desk.likeness import heard_rightly

pytestmark = pytest.mark.model

SLUGS = [slug for slug, _ in demo_titles()]


@pytest.fixture(scope="module")
def extractor() -> Extractor:
    return Extractor()


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory, extractor: Extractor) -> dict[str, WrittenUp]:
    shop = tmp_path_factory.mktemp("demo") / "shop"
    return {slug: write_up_demo(slug, shop, Hearing(), extractor=extractor) for slug in SLUGS}


def truth_of(slug: str) -> Truth:
    return Truth.model_validate_json((files("demo_sessions") / slug / "truth.json").read_text("utf-8"))


@pytest.mark.parametrize("slug", SLUGS)
def test_nine_of_ten_measures_reach_the_record_and_the_page(slug: str, demo: dict[str, WrittenUp]) -> None:
    truth, done = truth_of(slug), demo[slug]
    right = heard_rightly(truth.measures, done.record.measures)
    missed = [one.quote for one in truth.measures if one not in right]
    assert len(right) >= 0.9 * len(truth.measures), missed
    page = done.page.read_text("utf-8")
    assert [one.display for one in done.record.measures if f'id="{one.id}"' not in page] == []


@pytest.mark.parametrize("slug", SLUGS)
def test_misstatements_are_stopped(slug: str, demo: dict[str, WrittenUp]) -> None:
    stopped = [one.kind for one in demo[slug].record.findings if one.severity == "stop"]
    conversions = [one for one in truth_of(slug).faults if one.kind == "conversion"]
    assert stopped.count("conversion") >= len(conversions)
