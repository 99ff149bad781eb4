"""What was doubted: judged anew on the figures as amended, settled, and open in the order of how bad it is."""

from __future__ import annotations

from functools import cache

from extract.checks import run_checks
from extract.record import Correction, Heard, Reading, Record, Remark, SessionFacts, Withdrawn
from extract.rulings import Proofed, Ruling, amend, apply, note, pass_for_press, stet, strike, undo
from extract.trade import load_trade
from tests.extract.checks.records import record_of
from tests.extract.rulings.bench import hand

LINES = (
    "the twelfth fret is back [sixteen inches | 16 in] that is [250 millimetres | 250 mm] from the nut",
    "and now to something else altogether, the slot in the saddle, which I have cut and filed and cleaned out twice",
    "it is [fourteen thou | 14 thou | attribute=depth, item=slot] deep",
    "heat it to [nine hundred | 900 °F | attribute=temperature, item=glue]",
    "and the string height is [three | 3 mm | attribute=string height]",
)


@cache
def record() -> Record:
    """A conversion that is off, a figure that may have been another one, a temperature that is too much."""
    bare = record_of(LINES)
    sure = Reading(text="fourteen thou", value=14, unit="thou", score=-1.0, first_heard=True)
    rival = Reading(text="forty thou", value=40, unit="thou", score=-1.1)
    heard = Heard(confidence=0.5, readings=(sure, rival), near_tie=True)
    measures = tuple(one.model_copy(update={"heard": heard}) if one.id == "m-2" else one for one in bare.measures)
    whole = bare.model_copy(
        update={
            "measures": measures,
            "session": SessionFacts(title="A slot", trade="strings", source="made up.vtt", duration=60),
            "corrections": (
                Correction(
                    id="c-1", cue=2, start=2.5, end=3.0, quote="no, spruce", scope="this_session",
                    withdraws=Withdrawn(text="maple", cue=1), replacement="spruce",
                ),
            ),
            "doubts": (Remark(id="d-1", cue=1, start=1.0, text="Whether the top is spruce"),),
        }
    )  # fmt: skip
    return whole.model_copy(update={"findings": run_checks(whole, load_trade("strings"))})


def ruled(*rulings: Ruling) -> Proofed:
    return apply(record(), rulings)


def messages(proofed: Proofed) -> list[str]:
    return [one.message.replace("\N{NO-BREAK SPACE}", " ") for one in proofed.record.findings]


def finding(kind: str) -> str:
    return next(one.id for one in record().findings if one.kind == kind)


def test_the_worst_comes_first() -> None:
    ranks = [one.rank for one in ruled().open]
    assert ranks[0] == "stop"
    assert ranks == sorted(ranks, key=["stop", "near_tie", "correction", "look", "doubt", "step"].index)
    assert {"stop", "near_tie", "correction", "doubt"} <= set(ranks)


def test_an_amended_figure_is_judged_anew() -> None:
    assert "16 in is 406 mm, not 250 mm" in messages(ruled())
    better = ruled(amend(ruled(), "m-0", {"figure": "9 27/32 in"}, hand(1), because="heard_wrong"))
    assert "conversion" not in {one.kind for one in better.record.findings}
    worse = ruled(amend(ruled(), "m-0", {"figure": "18 in"}, hand(1), because="heard_wrong"))
    assert "18 in is 457 mm, not 250 mm" in messages(worse)


def test_a_finding_let_stand_is_settled() -> None:
    given = stet(ruled(), finding("conversion"), hand(1))
    proofed = ruled(given)
    assert "conversion" not in {one.kind for one in proofed.record.findings}
    assert [(one.item.id, one.ruling) for one in proofed.settled] == [(finding("conversion"), given.id)]
    assert messages(ruled(given, undo(proofed, given.id, hand(2)))) == messages(ruled())


def test_it_is_settled_for_the_figures_that_it_was_about_and_no_others() -> None:
    settled = stet(ruled(), finding("conversion"), hand(1))
    changed = amend(ruled(settled), "m-0", {"figure": "18 in"}, hand(2), because="heard_wrong")
    proofed = ruled(settled, changed)
    assert "18 in is 457 mm, not 250 mm" in messages(proofed)
    assert [one.why for one in proofed.unplaced] == ["the figures that it was about have changed since"]


def test_a_near_tie_is_settled_by_letting_the_figure_stand_or_by_another() -> None:
    for given in (
        stet(ruled(), "m-2", hand(1)),
        amend(ruled(), "m-2", {"figure": "40 thou"}, hand(1), because="heard_wrong"),
    ):
        proofed = ruled(given)
        assert "misheard" not in {one.kind for one in proofed.record.findings}
        assert not [one for one in proofed.open if one.rank == "near_tie"]


def test_naming_the_place_leaves_a_near_tie_open() -> None:
    proofed = ruled(amend(ruled(), "m-2", {"where": "treble side"}, hand(1)))
    assert [one.rank for one in proofed.open if one.rank == "near_tie"] == ["near_tie"]


def test_both_figures_let_stand_settle_what_names_both() -> None:
    first = stet(ruled(), "m-0", hand(1))
    assert "conversion" in {one.kind for one in ruled(first).record.findings}
    both = ruled(first, stet(ruled(first), "m-1", hand(2)))
    assert "conversion" not in {one.kind for one in both.record.findings}


def test_striking_one_figure_ends_the_quarrel() -> None:
    proofed = ruled(strike(ruled(), "m-1", hand(1)))
    assert "conversion" not in {one.kind for one in proofed.record.findings}


def test_a_unit_that_the_person_meant_is_not_stopped() -> None:
    meant = amend(ruled(), "m-4", {"figure": "5 °C"}, hand(1), because="own_words", overrule=True)
    proofed = ruled(meant)
    assert "dimension" not in {one.kind for one in proofed.record.findings}
    assert [one.ruling for one in proofed.settled] == [meant.id]


def test_a_doubt_that_was_looked_up_is_none() -> None:
    proofed = ruled(stet(ruled(), "d-1", hand(1)))
    assert proofed.record.doubts == ()
    assert "doubt" not in {one.rank for one in proofed.open}
    assert "d-1" in {one.item.id for one in proofed.settled}


def test_a_correction_is_open_until_somebody_accepts_or_denies_it() -> None:
    for given in (stet(ruled(), "c-1", hand(1)), strike(ruled(), "c-1", hand(1))):
        assert "correction" not in {one.rank for one in ruled(given).open}
    assert len(ruled(stet(ruled(), "c-1", hand(1))).record.corrections) == 1


def test_a_note_settles_nothing() -> None:
    proofed = ruled(note(ruled(), finding("conversion"), "ask the owner", hand(1)))
    assert proofed.open == ruled().open
    assert [one.text for one in proofed.notes] == ["ask the owner"]


def test_a_record_is_passed_only_with_nothing_left_to_settle() -> None:
    stops = [one.id for one in record().findings if one.severity == "stop"]
    log: list[Ruling] = [stet(ruled(), one, hand(number)) for number, one in enumerate(stops)]
    log.append(pass_for_press(ruled(*log), hand(90)))
    assert ruled(*log).passed
    log.append(undo(ruled(*log), log[0].id, hand(91)))
    assert not ruled(*log).passed


def test_a_figure_that_is_read_otherwise_since_is_not_let_stand_silently() -> None:
    given = stet(ruled(), "m-2", hand(1))
    now = record().measures[2].model_copy(update={"value": 40.0, "display": "40\N{NO-BREAK SPACE}thou"})
    again = record().model_copy(update={"measures": (*record().measures[:2], now, *record().measures[3:])})
    proofed = apply(again, [given])
    assert [one.why.replace("\N{NO-BREAK SPACE}", " ") for one in proofed.unplaced] == [
        "it was let stand as 14 thou, and is read as 40 thou now"
    ]
    assert [one.rank for one in proofed.open if one.rank == "near_tie"] == ["near_tie"]
