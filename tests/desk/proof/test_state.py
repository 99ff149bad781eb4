"""What the page is told of a session."""

from __future__ import annotations

from typing import Any

import pytest
from starlette.testclient import TestClient

from capture.shop import Session
from tests.desk.proof.conftest import CLAMP, NUT, SCALE, SLOT, SLUG, Asking


def test_the_worst_stands_first(asking: Asking) -> None:
    groups = [one["group"] for one in asking.state()["queries"]]
    assert groups[:4] == ["settle", "settle", "settle", "tie"]
    assert list(dict.fromkeys(groups)) == ["settle", "tie", "retraction", "correction", "doubt"]
    assert asking.item(CLAMP)["wanted"] == "settle it"


def test_an_item_shows_its_words_in_context_and_its_worked_figure(asking: Asking) -> None:
    nut = asking.item(NUT)
    assert nut["title"].replace("\u00a0", " ") == "16 in is 406 mm, not 250 mm"
    assert "16 in" in nut["quote"]
    assert nut["before"]
    assert nut["source"].startswith("NIST SP 811")
    assert [figure["display"] for figure in nut["figures"]] == ["16\u00a0in", "250\u00a0mm"]
    # 16 in x 25.4 mm/in = 406.4 mm (NIST SP 811, B.8); 250 mm / 25.4 = 9.84 in, given back as the check words it.
    offered = {(one["figure"], one["text"].replace("\u00a0", " ")) for one in nut["readings"]}
    assert ("m-nut-1", "406 mm") in offered
    assert any(figure == "m-nut-0" and text.startswith("9.84") for figure, text in offered)
    assert all(one["because"] == "said_wrong" for one in nut["readings"])


def test_a_near_tie_shows_what_else_it_may_have_been(asking: Asking) -> None:
    slot = asking.item(SLOT)
    assert (slot["group"], slot["wanted"]) == ("tie", "listen again")
    assert [(one["text"], one["said"], one["because"]) for one in slot["readings"]] == [
        ("0.11 in", "a hundred and ten thousandths", "heard_wrong")
    ]


def test_times_lead_to_the_clip(asking: Asking) -> None:
    nut = asking.item(NUT)
    assert nut["start"] < nut["end"] < nut["start"] + 20
    minutes, seconds = divmod(int(nut["start"]), 60)
    assert nut["clock"] == f"{minutes}:{seconds:02}"


def test_all_figures_stand_by_phase_and_all_steps_in_order(asking: Asking) -> None:
    state = asking.state()
    groups = [one["group"] for one in state["figures"]]
    assert list(dict.fromkeys(groups)) == ["as found", "aim", "as left", "rule of thumb"]
    assert [one["title"].split(".")[0] for one in state["steps"]] == [str(n) for n in range(1, 10)]
    taken_back = next(one for one in state["figures"] if one["id"] == "m-action-0")
    assert taken_back["ruled"]["words"] == "taken back on film"


def test_a_state_that_has_not_changed_is_not_sent_again(asking: Asking) -> None:
    first = asking.person.get(f"{asking.home}state")
    again = asking.person.get(f"{asking.home}state", headers={"if-none-match": first.headers["etag"]})
    assert (again.status_code, again.content) == (304, b"")
    asking.rule("stet", NUT)
    changed = asking.person.get(f"{asking.home}state", headers={"if-none-match": first.headers["etag"]})
    assert changed.status_code == 200


def test_the_list_of_sessions_tells_what_is_open(person: TestClient, asking: Asking) -> None:
    assert f'data-open-at="{asking.home}open"' in person.get("/proof/").text
    assert person.get(f"{asking.home}open").json() == {"open": "3 to settle, 7 to look at"}
    assert "3 to settle, 7 to look at" in person.get("/proof/").text  # remembered
    asking.rule("stet", NUT)
    asking.rule("stet", CLAMP)
    asking.rule("stet", SCALE)
    assert "to settle" not in person.get("/proof/").text
    assert person.get(f"{asking.home}open").json() == {"open": "7 to look at"}
    assert "7 to look at" in person.get("/proof/").text


def test_a_session_that_can_not_be_read_is_told_in_the_list(person: TestClient, session: Session) -> None:
    session.record_file.write_text("{}")
    assert SLUG in person.get("/proof/").text
    told = person.get(f"/proof/sessions/{SLUG}/open")
    assert (told.status_code, "is no record" in told.json()["problem"]) == (409, True)
    answer = person.get(f"/proof/sessions/{SLUG}/state")
    assert (answer.status_code, "is no record" in answer.json()["problem"]) == (409, True)


def test_no_other_name_and_no_path_opens_anything(person: TestClient) -> None:
    for slug in ("heron", "%2e%2e", "..%2f..%2fetc", f"{SLUG}%2f..", f"{SLUG}%00", "nowhere"):
        for rest in ("", "state", "film", "stills/3.jpg"):
            assert person.get(f"/proof/sessions/{slug}/{rest}").status_code == 404


def test_the_page_carries_no_script_or_style_of_its_own(person: TestClient) -> None:
    page = person.get(f"/proof/sessions/{SLUG}/").text
    assert "<style" not in page
    assert " style=" not in page
    assert "onclick" not in page
    scripts: list[Any] = [part.split(">")[0] for part in page.split("<script")[1:]]
    assert scripts
    assert all('src="/' in one for one in scripts)


def test_a_long_session_can_be_told_from_its_beginning(asking: Asking, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("desk.proof.answers._FIRST_SCREENS", 2)
    asking.rule("stet", asking.state()["queries"][0]["id"])
    whole = asking.state()
    beginning = asking.person.get(f"{asking.home}state?part=beginning").json()
    assert (whole["whole"], beginning["whole"]) == (True, False)
    # Two that are open, and what was settled before them.
    assert beginning["queries"] == whole["queries"][:3]
    assert beginning["counts"] == whole["counts"]
    assert whole["counts"]["queries"] == len(whole["queries"])
    assert whole["counts"]["settled"] == 1
    assert (beginning["figures"], beginning["steps"]) == ([], [])


def test_a_short_session_is_told_whole_at_once(asking: Asking) -> None:
    assert asking.person.get(f"{asking.home}state?part=beginning").json() == asking.state()
