"""What a person ruled reaches the page; what the machine made stays as it was."""

from __future__ import annotations

from pathlib import Path

import pytest

from capture.files import write_atomic
from capture.shop import Session, Shop
from extract.record import Record
from extract.rulings import (
    Hand,
    Proofed,
    RulingLog,
    add,
    amend,
    apply,
    pass_for_press,
    reorder,
    stet,
    strike,
)
from publish import UnsettledError, publish_shop

WHO = Hand("Wilhelmina Trask")


@pytest.fixture
def session(shop: Shop) -> Session:
    return shop.sessions()[0]


def proofed(session: Session) -> Proofed:
    record = Record.model_validate_json(session.record_file.read_bytes())
    return apply(record, RulingLog(session.rulings_file).read().rulings)


def published(shop: Shop) -> tuple[str, Record]:
    """The page and the published record of the shop's only session."""
    page = publish_shop(shop).pages[0]
    return page.read_text("utf-8"), Record.model_validate_json((page.parent / "record.json").read_bytes())


def rule(session: Session, *, settle: bool = False) -> RulingLog:
    """A log of a session; with `settle`, every finding is let stand."""
    log = RulingLog(session.rulings_file)
    if settle:
        for one in proofed(session).record.findings:
            log.append(stet(proofed(session), one.id, Hand("Wilhelmina Trask")))
    return log


def test_the_amended_figure_is_published_and_the_machines_record_stays(shop: Shop, session: Session) -> None:
    made = session.record_file.read_bytes()
    ruling = amend(proofed(session), "m-dome", {"figure": "28 ft"}, WHO, because="said_wrong")
    rule(session).append(ruling)
    page, record = published(shop)
    (dome,) = [one for one in record.measures if one.id == "m-dome"]
    assert dome.display == "28\N{NO-BREAK SPACE}ft"
    assert "said on film: <span" in page
    assert "Put right in proof." in page
    assert session.record_file.read_bytes() == made


def test_a_struck_figure_is_on_no_page_and_in_the_record_as_struck(shop: Shop, session: Session) -> None:
    rule(session).append(strike(proofed(session), "m-margin", WHO))
    page, record = published(shop)
    (margin,) = [one for one in record.measures if one.id == "m-margin"]
    assert not margin.stands
    assert margin.ruling is not None
    assert margin.ruling.verdict == "strike"
    assert "m-margin" not in page


def test_who_ruled_and_when_is_not_published(shop: Shop, session: Session) -> None:
    ruling = strike(proofed(session), "m-margin", Hand("Somebody Else", at=WHO.at.replace(year=2029)))
    rule(session).append(ruling)
    publish_shop(shop)
    for path in shop.public.rglob("*"):
        if path.is_file():
            assert b"Somebody Else" not in path.read_bytes()
            assert b"2029-" not in path.read_bytes()


def test_strict_publishing_waits_for_the_last_stop(shop: Shop, session: Session) -> None:
    with pytest.raises(UnsettledError):
        publish_shop(shop, strict=True)
    rule(session, settle=True)
    publish_shop(shop, strict=True)


def test_a_page_is_called_proofed_once_a_person_has_passed_it(shop: Shop, session: Session) -> None:
    log = rule(session, settle=True)
    assert "Machine-made, not yet proofed." in published(shop)[0]
    log.append(pass_for_press(proofed(session), WHO))
    assert "A person has passed these notes against the recording." in published(shop)[0]


def test_what_is_passed_is_that_record_and_no_other(shop: Shop, session: Session) -> None:
    log = rule(session, settle=True)
    log.append(pass_for_press(proofed(session), WHO))
    record = Record.model_validate_json(session.record_file.read_bytes())
    fewer = record.model_copy(update={"steps": record.steps[:-1]})
    write_atomic(session.record_file, fewer.to_json())
    assert "Machine-made, not yet proofed." in published(shop)[0]


def test_steps_stand_in_the_persons_order(shop: Shop, session: Session) -> None:
    first, second = proofed(session).record.steps[:2]
    rule(session).append(reorder(proofed(session), second.id, None, WHO))
    page, record = published(shop)
    assert [one.id for one in record.steps[:2]] == [second.id, first.id]
    assert [one.number for one in record.steps] == list(range(1, len(record.steps) + 1))
    assert page.index(f'id="{second.id}"') < page.index(f'id="{first.id}"')


def test_an_erratum_that_a_person_adds_stands_with_the_others(shop: Shop, session: Session) -> None:
    given = add(
        proofed(session), "correction", 60.0, 9, "two layers of tape all round", {"text": "three layers"}, WHO
    )  # fmt: skip
    rule(session).append(given)
    page, record = published(shop)
    assert [one.source for one in record.corrections if one.id == given.on.id] == ["proof"]
    assert "two layers of tape all round" in page
    assert f'id="{given.on.id}"' in page


def test_a_ruling_without_a_place_is_told_with_its_words(shop: Shop, session: Session) -> None:
    rule(session).append(strike(proofed(session), "m-margin", WHO))
    record = Record.model_validate_json(session.record_file.read_bytes())
    gone = tuple(one for one in record.measures if one.id != "m-margin")
    write_atomic(session.record_file, record.model_copy(update={"measures": gone}).to_json())
    (line,) = [one for one in publish_shop(shop).warnings if "no place" in one]
    assert "strike of “1/16 in” at 1:" in line


def test_a_torn_line_is_told_and_harms_nothing(shop: Shop, session: Session, tmp_path: Path) -> None:
    rule(session).append(strike(proofed(session), "m-margin", WHO))
    with session.rulings_file.open("ab") as file:
        file.write(b'{"format":"spokeshave-ru')
    published_ = publish_shop(shop)
    assert [one for one in published_.warnings if "line 2 of rulings.json is torn or damaged" in one]
    assert "m-margin" not in published_.pages[0].read_text("utf-8")
