"""Tools and materials: renamed, struck and had back."""

from __future__ import annotations

from tests.desk.proof.conftest import Asking


def test_tools_and_materials_lead_to_the_cue_that_names_them(asking: Asking) -> None:
    state = asking.state()
    assert {one["group"] for one in state["kit"]} == {"tool", "material"}
    assert state["counts"]["kit"] == len(state["kit"])
    knife = next(one for one in state["kit"] if one["title"] == "palette knife")
    assert (knife["quote"], knife["before"].split()[-1], knife["after"].split()[0]) == ("palette knife", "the", "in")
    assert all(one["quote"] and one["end"] > one["start"] for one in state["kit"])


def test_a_tool_is_renamed(asking: Asking) -> None:
    first = asking.state()["kit"][0]
    assert asking.rule("amend", first["id"], to={"text": "bench shears"})["kept"]
    renamed = asking.item(first["id"], "kit")
    assert (renamed["title"], renamed["ruled"]["words"]) == ("bench shears", "read “bench shears”")


def test_a_struck_tool_stands_last_and_can_be_had_back(asking: Asking) -> None:
    before = asking.state()["kit"]
    asking.rule("strike", before[0]["id"])
    struck = asking.state()["kit"][-1]
    assert (struck["id"], struck["title"]) == (before[0]["id"], before[0]["title"])
    assert struck["ruled"]["act"] == "strike"
    assert asking.state()["counts"]["kit"] == len(before) - 1
    asking.rule("stet", before[0]["id"])
    assert asking.state()["kit"][0]["title"] == before[0]["title"]
