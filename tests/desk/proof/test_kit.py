"""Tools and materials: renamed, struck and had back."""

from __future__ import annotations

from starlette.testclient import TestClient

from capture.shop import Shop
from publish.kit.rulings.log import KitLog
from publish.kit.rulings.model import Rename, Said
from tests.desk.proof.conftest import SLUG, Asking


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


def test_what_the_whole_shop_calls_a_tool_is_told_and_stands_on_the_page_to_be(
    shop: Shop, asking: Asking, person: TestClient
) -> None:
    page = f"/proof/galley/sessions/{SLUG}/index.html"
    assert "palette spatula" not in person.get(page).text
    before = next(one for one in asking.state()["kit"] if one["title"] == "palette knife")
    KitLog.of(shop).append(Rename(of=(Said(sort="tool", name="palette knife"),), name="palette spatula"))
    knife = next(one for one in asking.state()["kit"] if one["title"] == "palette knife")
    assert knife == {**before, "wording": "Called “palette spatula” in the whole shop"}
    assert "palette spatula" in person.get(page).text
    # A ruling on the session's own name still goes first.
    asking.rule("amend", knife["id"], to={"text": "putty knife"})
    assert asking.item(knife["id"], "kit")["wording"] == ""
    assert "palette spatula" not in person.get(page).text
