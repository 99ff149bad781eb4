"""What the machine missed, put in from the page."""

from __future__ import annotations

from typing import Any

import pytest

from capture.shop import Session
from extract.rulings import RulingLog
from extract.rulings.model import Add
from tests.desk.proof.conftest import Asking


def added(session: Session) -> Add:
    last = RulingLog(session.rulings_file).read().rulings[-1]
    assert isinstance(last, Add)
    return last


def test_a_figure_is_added_at_its_second_with_the_words_said_there(asking: Asking, session: Session) -> None:
    to = {"figure": "7/64 in", "attribute": "action", "item": "E string", "phase": "as_left"}
    there = asking.item("m-slot-1", "figures")
    assert asking.rule("add", kind="measure", second=there["start"], to=to)["kept"]
    line = added(session)
    assert line.on.start == there["start"]
    assert there["quote"].split()[0] in line.on.words
    made = asking.item(line.on.id, "figures")
    assert (made["group"], made["ruled"]["words"]) == ("as left", "added: 7/64\u00a0in")
    # 7/64 in x 25.4 mm/in = 2.778 mm (NIST SP 811, B.8)
    assert made["figures"][0]["other"].replace("\u00a0", " ").startswith("2.8")
    state = asking.state()
    assert state["undo"]["item"] == line.on.id
    asking.rule("undo", of=state["undo"]["id"])
    assert line.on.id not in [one["id"] for one in asking.state()["figures"]]


def test_a_step_takes_its_place_by_its_second(asking: Asking, session: Session) -> None:
    steps = asking.state()["steps"]
    second = steps[3]["start"] + 0.1
    assert asking.rule("add", kind="step", second=second, to={"text": "Wipe the glue off"})["kept"]
    assert asking.state()["steps"][4]["text"] == "Wipe the glue off"


def test_what_was_said_wrong_is_put_right_in_the_errata(asking: Asking) -> None:
    wrong = asking.item("m-slot-1", "figures")
    asked = {"kind": "correction", "second": wrong["start"], "of": "m-slot-1", "said": "a tenth of an inch"}
    assert asking.rule("add", **asked, to={"figure": "0.11 in"})["kept"]
    page = asking.person.get(asking.home.replace("/sessions/", "/galley/sessions/") + "index.html").text
    assert "a tenth of an inch" in page.split('id="errata"')[1]


@pytest.mark.parametrize("kind", ["tool", "material"])
def test_a_tool_or_material_is_added(asking: Asking, session: Session, kind: str) -> None:
    assert asking.rule("add", kind=kind, second=12.0, to={"text": "beeswax"})["kept"]
    line = added(session)
    assert (line.on.words, line.on.start) == ("beeswax", 0.0)
    made = asking.item(line.on.id, "kit")
    assert (made["group"], made["title"], made["ruled"]["words"]) == (kind, "beeswax", "added: beeswax")
    assert made["start"] <= 12.0 <= made["end"]


@pytest.mark.parametrize(
    ("asked", "problem"),
    [
        ({"kind": "measure", "second": 3.0, "to": {"figure": "7 parsecs"}}, "parsecs"),
        ({"kind": "measure", "second": 3.0, "to": {"attribute": "action"}}, "a measure needs its figure"),
        ({"kind": "finding", "second": 3.0, "to": {"text": "odd"}}, "a finding has no text"),
        ({"kind": "step", "second": 9e4, "to": {"text": "Glue it"}}, "is behind the end of the recording"),
        ({"kind": "correction", "second": 3.0, "of": "m-none", "to": {"text": "cedar"}}, "there is no item 'm-none'"),
    ],
)
def test_what_can_not_be_added_is_refused_in_one_line(
    asking: Asking, session: Session, asked: dict[str, Any], problem: str
) -> None:
    result = asking.rule("add", **asked)
    assert not result["kept"]
    assert problem in result["problem"]
    assert "\n" not in result["problem"]
    assert not session.rulings_file.exists()


def test_a_unit_that_does_not_fit_is_added_only_where_it_is_meant(asking: Asking) -> None:
    asked: dict[str, Any] = {"kind": "measure", "second": 3.0, "to": {"figure": "20 °C", "attribute": "width"}}
    told = asking.person.get(f"{asking.home}reads", params={"text": "20 °C", "attribute": "width"}).json()
    result = asking.rule("add", **asked)
    assert (result["kept"], result["overrule"], told["overrule"]) == (False, True, True)
    assert asking.rule("add", **asked, overrule=True)["kept"]


def test_the_words_of_a_second_are_told(asking: Asking) -> None:
    there = asking.item("m-slot-1", "figures")
    told = asking.person.get(f"{asking.home}said", params={"second": there["start"]}).json()
    assert there["quote"].split()[0] in told["quote"]
    assert asking.person.get(f"{asking.home}said", params={"second": "noon"}).status_code == 404
    assert asking.person.get(f"{asking.home}said", params={"second": "nan"}).json()["quote"] == ""
