"""Rulings that the page asks for: kept once, in order, on disk before they are called kept."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from capture.shop import Session, Shop
from extract.rulings import RulingLog
from tests.desk.app.conftest import OWN
from tests.desk.proof.conftest import CLAMP, NUT, SCALE, Asking


def test_a_ruling_is_called_kept_when_it_is_synced(
    asking: Asking, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    synced: list[bytes] = []
    sync = os.fsync

    def note(descriptor: int) -> None:
        synced.append(session.rulings_file.read_bytes())
        sync(descriptor)

    monkeypatch.setattr(os, "fsync", note)
    assert asking.rule("stet", NUT)["kept"]
    assert synced
    assert b'"stet"' in synced[0]


def test_stet_settles_a_finding(asking: Asking) -> None:
    assert not asking.item(NUT)["settled"]
    asking.rule("stet", NUT)
    settled = asking.item(NUT)
    assert (settled["settled"], settled["ruled"]["words"], settled["wanted"]) == (True, "stet", "")


def test_an_amended_figure_settles_the_finding_about_it(asking: Asking) -> None:
    asking.rule("amend", "m-nut-1", to={"figure": "406 mm"}, because="said_wrong")
    settled = asking.item(NUT)
    assert settled["settled"]
    assert settled["ruled"]["words"] == "read 406\u00a0mm, said wrong"
    assert asking.item("m-nut-1", "figures")["figures"][0]["display"] == "406\u00a0mm"


def test_a_figure_that_is_none_is_refused_in_one_line(asking: Asking, session: Session) -> None:
    result = asking.rule("amend", "m-nut-1", to={"figure": "5 parsecs"}, because="said_wrong")
    assert not result["kept"]
    assert "parsecs" in result["problem"]
    assert "\n" not in result["problem"]
    assert not session.rulings_file.exists()


def test_a_unit_of_another_kind_is_taken_only_where_it_is_meant(asking: Asking) -> None:
    result = asking.rule("amend", "m-scale-0", to={"figure": "20 °C"}, because="heard_wrong")
    assert (result["kept"], result["overrule"]) == (False, True)
    assert asking.rule("amend", "m-scale-0", to={"figure": "20 °C"}, because="heard_wrong", overrule=True)["kept"]


def test_the_same_ruling_asked_for_twice_is_kept_once(asking: Asking, session: Session) -> None:
    ruling = {"id": "ab" * 16, "act": "stet", "item": NUT}
    for _ in range(2):
        answer = asking.person.post(f"{asking.home}rulings", json={"rulings": [ruling, ruling]}, headers=OWN)
        assert [one["kept"] for one in answer.json()["results"]] == [True, True]
    assert len(RulingLog(session.rulings_file).read().rulings) == 1


def test_an_undo_whose_answer_was_lost_can_be_asked_for_again(asking: Asking) -> None:
    asking.rule("stet", NUT)
    undo = {"id": "cd" * 16, "act": "undo", "of": asking.state()["undo"]["id"]}
    for _ in range(2):
        answer = asking.person.post(f"{asking.home}rulings", json={"rulings": [undo]}, headers=OWN)
        assert answer.json()["results"][0]["kept"]
    assert not asking.item(NUT)["settled"]


def test_undo_and_redo(asking: Asking) -> None:
    asking.rule("strike", NUT)
    last = asking.state()["undo"]
    assert (last["item"], last["words"]) == (NUT, "struck")
    asking.rule("undo", of=last["id"])
    assert not asking.item(NUT)["settled"]
    asking.rule("redo", of=asking.state()["redo"]["id"])
    assert asking.item(NUT)["settled"]
    assert asking.state()["redo"] is None


def test_steps_are_reordered_merged_split_and_reworded(asking: Asking) -> None:
    ids = [one["id"] for one in asking.state()["steps"]]
    asking.rule("reorder", ids[2], after=None)
    assert [one["id"] for one in asking.state()["steps"]][:3] == [ids[2], ids[0], ids[1]]
    asking.rule("merge", ids[0], others=[ids[1]])
    merged = asking.item(ids[0], "steps")
    assert merged["text"].startswith("Slacken the strings in pairs, then mask the top")
    asking.rule("split", ids[0], into=["Slacken the strings in pairs", "Mask the top"])
    texts = [one["text"] for one in asking.state()["steps"]]
    assert texts[1:3] == ["Slacken the strings in pairs", "Mask the top"]
    asking.rule("amend", ids[3], to={"text": "Work the knife in from the back"})
    assert asking.item(ids[3], "steps")["text"] == "Work the knife in from the back"
    asking.rule("strike", ids[4])
    assert ids[4] in [one["id"] for one in asking.state()["struck"]]


def test_a_step_that_was_split_off_and_struck_can_be_had_back(asking: Asking) -> None:
    first = asking.state()["steps"][0]["id"]
    asking.rule("split", first, into=["Slacken the strings", "Heat it"])
    made = asking.state()["steps"][1]["id"]
    asking.rule("strike", made)
    assert [(one["id"], one["title"]) for one in asking.state()["struck"]] == [(made, "Heat it")]
    asking.rule("stet", made)
    assert asking.state()["steps"][1]["text"] == "Heat it"


def test_what_is_settled_keeps_its_place_in_the_list(asking: Asking) -> None:
    before = [(one["id"], one["title"]) for one in asking.state()["queries"]]
    for item, act in zip(before, ["stet", "strike"] * 9, strict=False):
        assert asking.rule(act, item[0])["kept"]
    after = asking.state()["queries"]
    assert [(one["id"], one["title"]) for one in after] == before
    assert all(one["settled"] and one["ruled"] for one in after)


def test_a_note_is_shown_and_settles_nothing(asking: Asking) -> None:
    asking.rule("note", NUT, text="Measure it again")
    noted = asking.item(NUT)
    assert (noted["notes"], noted["settled"], noted["ruled"]) == (["Measure it again"], False, None)


def test_the_whole_is_passed_once_nothing_must_be_settled(asking: Asking) -> None:
    assert not asking.rule("pass")["kept"]
    for item in (NUT, CLAMP, SCALE):
        asking.rule("stet", item)
    assert asking.rule("pass")["kept"]
    assert asking.state()["passed"]


def test_a_ruling_whose_item_is_gone_is_shown_with_its_words(asking: Asking, session: Session) -> None:
    asking.rule("stet", "d-70792c84")
    told = session.record_file.read_text().replace("Whether the top is Engelmann spruce", "Which glue was used before")
    session.record_file.write_text(told)
    lost = asking.state()["unplaced"]
    assert [(one["act"], one["words"]) for one in lost] == [("stet", "Whether the top is Engelmann spruce")]


def test_a_torn_line_of_the_log_is_shown(asking: Asking, session: Session) -> None:
    asking.rule("stet", NUT)
    with session.rulings_file.open("a") as log:
        log.write('{"format": "spokeshave-rul')
    assert asking.state()["unplaced"][0]["act"] == "line 2 of rulings.json"
    assert asking.item(NUT)["settled"]


def test_a_full_disk_keeps_nothing_and_says_so(
    asking: Asking, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(descriptor: int, data: bytes) -> int:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "write", full)
    ruling = {"act": "stet", "item": NUT}
    asked = [{**ruling, "id": "1" * 32}, {**ruling, "id": "2" * 32}]
    results = asking.person.post(f"{asking.home}rulings", json={"rulings": asked}, headers=OWN).json()["results"]
    assert [(one["id"], one["kept"], one["again"]) for one in results] == [("1" * 32, False, True)], "none overtakes"
    assert "No space left on device" in results[0]["problem"]


@pytest.mark.parametrize(
    "body",
    [
        b"", b"[]", b"{", b'{"rulings": [{}]}', b'{"rulings": [{"id": "x", "act": "stet", "item": "f-1"}]}',
        b'{"rulings": [{"id": "11111111111111111111111111111111", "act": "burn", "item": "f-1"}]}', b"\xff\xfe",
    ],
)  # fmt: skip
def test_what_is_no_ruling_is_refused(asking: Asking, session: Session, body: bytes) -> None:
    headers = {**OWN, "content-type": "application/json"}
    answer = asking.person.post(f"{asking.home}rulings", content=body, headers=headers)
    assert answer.status_code == 422
    assert answer.json()["problem"].startswith("that is no ruling")
    assert not session.rulings_file.exists()


def test_rulings_are_taken_as_json_alone(asking: Asking) -> None:
    # A form of another site can send text/plain without asking (CORS's simple requests), never application/json.
    headers = {**OWN, "content-type": "text/plain"}
    assert asking.person.post(f"{asking.home}rulings", content=b"{}", headers=headers).status_code == 415


def test_a_ruling_on_nothing_is_refused(asking: Asking) -> None:
    result = asking.rule("stet", "m-nowhere")
    assert not result["kept"]
    assert not result["again"]


def test_only_the_log_is_written(asking: Asking, session: Session, shop: Shop) -> None:
    before = _contents(shop.root)
    asking.rule("stet", NUT)
    changed = {path.name for path, content in _contents(shop.root).items() if before.get(path) != content}
    assert changed == {"rulings.json", ".rulings.lock"}


def _contents(root: Path) -> dict[Path, bytes]:
    return {path: path.read_bytes() for path in root.rglob("*") if path.is_file()}
