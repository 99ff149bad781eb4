"""A small record to rule on: invented talk about an invented ukulele, its figures marked as for the checks."""

from __future__ import annotations

from functools import cache

from extract.checks import run_checks
from extract.record import Correction, Mention, Record, Remark, SessionFacts, Step, Withdrawn
from extract.rulings import Hand, Proofed, Ruling, apply
from extract.trade import load_trade
from tests.extract.checks.records import record_of

LINES = (
    "the action at the twelfth is [7/64 | 7/64 in | attribute=string height, item=G string, phase=as_found] of an inch",
    "and the saddle slot is [3/32 | 3/32 in | attribute=width, item=saddle slot]",
    "which is [three millimetres | 3 mm | attribute=width, item=saddle slot] wide",
    "heat the plate to [140 | 140 °F | attribute=temperature, item=plate, phase=target]",
    "the nut is [one and three eighths | ^1 3/8 in | attribute=width, item=nut, corrected_by=c-nut]",
    "no sorry [one and seven sixteenths | 1 7/16 in | attribute=width, item=nut]",
)
ADA = "Ada Penhaligon (invented)"


@cache
def record() -> Record:
    """Six measures, a conversion that is off, one correction, three steps, a follow-up and a doubt."""
    bare = record_of(LINES)
    whole = bare.model_copy(
        update={
            "session": SessionFacts(title="A ukulele", trade="strings", source="made up.vtt", duration=60),
            "corrections": (
                Correction(
                    id="c-nut", cue=5, start=5.0, end=5.5, quote="no sorry one and seven sixteenths",
                    scope="this_session", replacement="one and seven sixteenths", value=1.4375, unit="inch",
                    withdraws=Withdrawn(measure="m-4", text="one and three eighths", cue=4),
                    replacement_measure="m-5",
                ),
            ),
            "steps": (
                _step(1, "Measure the action", "action", ("m-0",), 0.0),
                _step(2, "Heat the plate to 140 °F", "plate", ("m-3",), 3.0),
                _step(3, "Clean it", "it", (), 9.0),
            ),
            "follow_ups": (Remark(id="l-1", cue=6, start=12.0, text="Plane the fingerboard"),),
            "tools": (Mention(name="heating plate", cues=(3,)), Mention(name="c cup", cues=(4,))),
            "materials": (Mention(name="hide glue", cues=(3, 5)),),
            "doubts": (Remark(id="d-1", cue=7, start=14.0, text="Whether the top is spruce"),),
        }
    )  # fmt: skip
    return whole.model_copy(update={"findings": run_checks(whole, load_trade("strings"))})


def _step(number: int, text: str, thing: str, measures: tuple[str, ...], start: float) -> Step:
    return Step(
        id=f"s-{number}", number=number, cue_from=int(start), cue_to=int(start), start=start, end=start + 1,
        quote=text.lower(), text=text, verb=text.split()[0].lower(), object=thing, mode="done", measures=measures,
        tools=("heating plate",) if thing == "plate" else (), materials=("hide glue",) if thing == "plate" else (),
    )  # fmt: skip


def proof(*rulings: Ruling) -> Proofed:
    """The record with these rulings."""
    return apply(record(), rulings)


def hand(number: int = 0) -> Hand:
    """A hand whose ruling has a known id."""
    return Hand(ADA, ruling_id=f"ruling-{number:04d}")
