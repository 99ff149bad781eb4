"""The record of the invented session, as rich as a record gets; figures are worked out by hand."""

from __future__ import annotations

from typing import Any

from capture.shop import ShopSettings
from capture.transcript import Transcript
from extract.record import (
    Caution,
    Correction,
    Finding,
    Heard,
    Measure,
    Mention,
    Mode,
    Reading,
    Record,
    Remark,
    SessionFacts,
    Step,
    Withdrawn,
)
from publish.source import SessionSource
from tests.publish.narration import transcript

Names = tuple[str, ...]
SHOP = ShopSettings(
    title="Coppice Lane shop notes",
    author="Wilhelmina Trask",
    site_address="https://notes.example/coppice",
    licence="CC BY 4.0",
)
SLUG = "2031-05-14-the-heron-bridge"
_HEARD = transcript()


def source() -> SessionSource:
    """The session as it is handed to the page maker."""
    return SessionSource(SLUG, record(), _HEARD, recording="heron bridge #1.webm")


def span(cue: int, quote: str, heard: Transcript = _HEARD) -> dict[str, Any]:
    """Cue, seconds and quote of words that a cue says."""
    words = heard.cues[cue].words
    wanted = quote.split()
    for at in range(len(words) - len(wanted) + 1):
        if [word.text.strip(".,:") for word in words[at : at + len(wanted)]] == wanted:
            return {"cue": cue, "start": words[at].start, "end": words[at + len(wanted) - 1].end, "quote": quote}
    raise ValueError(f"cue {cue} does not say {quote!r}")


def measure(key: str, cue: int, quote: str, value: float, unit: str | None, display: str, **more: Any) -> Measure:
    """A measure of the record; `more` overrides what most of them share."""
    kind = {"degF": "temperature", "degC": "temperature", "percent": "ratio"}.get(unit or "", "length")
    shared: dict[str, Any] = {"unit_said": True, "phase": "as_found", "hedged": False, "kind": kind}
    return Measure(
        id=f"m-{key}",
        value=value,
        unit=unit,
        display=display.replace("_", "\u00a0"),
        **span(cue, quote),
        **shared | more,
    )


def record() -> Record:
    """The record."""
    return Record(
        session=SessionFacts(
            title="The Heron: a lifting bridge, and a new saddle",
            date="2031-05-14",
            subject="octave mandola, bridge reglued and saddle replaced",
            trade="plucked strings",
            source="heron-bridge.mp4",
            duration=_HEARD.duration,
        ),
        measures=_measures(),
        corrections=_corrections(),
        findings=_findings(),
        steps=_steps(),
        cautions=(
            Caution(
                cue=11,
                start=span(11, "lacquer")["start"],
                text="Keep the heat at 140 °F or the lacquer blisters",
                source="said at the bench",
                said=True,
            ),
            Caution(
                cue=30,
                start=span(30, "bone")["start"],
                text="Bone dust harms the lungs: wear a mask and take the dust away where it is made",
                source="common practice",
                said=True,
            ),
        ),
        materials=(
            Mention(name="low-tack tape", cues=(9,)),
            Mention(name="hide glue, 192 g", cues=(12, 19)),
            Mention(name="bone blank", cues=(22, 30)),
        ),
        tools=(
            Mention(name="palette knife", cues=(13,)),
            Mention(name="heating plate", cues=(10,)),
            Mention(name="cam clamps", cues=(18,)),
        ),
        follow_ups=(Remark(cue=31, start=span(31, "tailpiece")["start"], text="Plug the stripped tailpiece screw"),),
        doubts=(Remark(cue=32, start=span(32, "Engelmann")["start"], text="Whether the top is Engelmann spruce"),),
    )


def _measures() -> tuple[Measure, ...]:
    action = {"attribute": "action", "item": "strings"}
    treble = action | {"where": "treble side, 12th fret"}
    bass = action | {"where": "bass side, 12th fret"}
    relief = {"attribute": "relief", "item": "neck"}
    left = {"phase": "as_left"}
    aim = {"phase": "target"}
    return (
        measure(
            "action-0",
            2,
            "7/64",
            0.109375,
            "inch",
            "7/64_in",
            unit_said=False,
            stands=False,
            corrected_by="c-rule",
            **treble,
        ),
        measure("action-1", 3, "5/64 in", 0.078125, "inch", "5/64_in", **treble),
        measure("action-2", 4, "7/64 in", 0.109375, "inch", "7/64_in", **bass),
        measure("action-3", 4, "2.8 mm", 2.8, "millimeter", "2.8_mm", hedged=True, same_as="m-action-2", **bass),
        measure("relief-0", 5, "0.012 in", 0.012, "inch", "0.012_in", where="7th fret", **relief),
        measure("relief-aim", 5, "8 thou", 8, "thou", "8_thou", where="7th fret", **relief, **aim),
        measure("scale-0", 6, "20 7/8 inches", 20.875, "inch", "20 7/8_in", attribute="scale length", item="mandola"),
        measure(
            "scale-1",
            6,
            "550 mm",
            550,
            "millimeter",
            "550_mm",
            attribute="scale length",
            item="mandola",
            same_as="m-scale-0",
        ),
        measure("gap-0", 7, "0.010 in", 0.010, "inch", "0.010_in", attribute="gap", item="bridge", where="back edge"),
        measure(
            "heat-0",
            10,
            "160 °F",
            160,
            "degF",
            "160_°F",
            attribute="temperature",
            item="plate",
            stands=False,
            corrected_by="c-heat",
            **aim,
        ),
        measure(
            "heat-1", 10, "140 °F", 140, "degF", "140_°F", attribute="temperature", item="plate", limit="at_most", **aim
        ),
        measure(
            "heat-2",
            12,
            "60 °C",
            60,
            "degC",
            "60_°C",
            attribute="temperature",
            item="hide glue",
            hedged=True,
            phase="general",
        ),
        measure("margin", 15, "1/16 in", 0.0625, "inch", "1/16_in", attribute="margin", item="footprint", **aim),
        measure(
            "plate", 16, "3/32", 0.09375, "inch", "3/32_in", unit_said=False, attribute="thickness", item="bridge plate"
        ),
        measure("dome", 17, "25 feet", 25, "foot", "25_ft", attribute="radius", item="top"),
        measure("open-time", 19, "30 seconds", 30, "second", "30_s", attribute="open time", item="hide glue", **aim),
        measure("clamp", 20, "12", 12, None, "12", unit_said=False, attribute="clamping time", item="bridge", **aim),
        measure(
            "slot-0", 21, "3/32", 0.09375, "inch", "3/32_in", unit_said=False, attribute="width", item="saddle slot"
        ),
        measure(
            "slot-1",
            21,
            "0.100 in",
            0.1,
            "inch",
            "0.100_in",
            attribute="width",
            item="saddle slot",
            **left,
            heard=Heard(confidence=0.61, readings=(Reading(text="0.100", value=0.1, unit="inch", score=-0.4),)),
        ),
        measure("saddle", 22, "1/8 in", 0.125, "inch", "1/8_in", attribute="thickness", item="saddle blank", **aim),
        measure(
            "nut-0",
            23,
            "16 in",
            16,
            "inch",
            "16_in",
            attribute="distance",
            item="12th fret",
            where="from the nut",
            **left,
        ),
        measure(
            "nut-1",
            23,
            "250 mm",
            250,
            "millimeter",
            "250_mm",
            attribute="distance",
            item="12th fret",
            where="from the nut",
            same_as="m-nut-0",
            **left,
        ),
        measure("action-4", 25, "4/64", 0.0625, "inch", "4/64_in", unit_said=False, **treble, **left),
        measure("action-5", 25, "6/64 in", 0.09375, "inch", "6/64_in", **bass, **left),
        measure("relief-1", 26, "8 thou", 8, "thou", "8_thou", **relief, **left),
        measure("relief-2", 26, "6", 6, "thou", "6_thou", unit_said=False, limit="at_least", phase="general", **relief),
        measure(
            "bass-old",
            27,
            "20 thou",
            20,
            "thou",
            "20_thou",
            attribute="clearance",
            item="bass side",
            stands=False,
            corrected_by="c-old",
            **aim,
        ),
        measure(
            "bass-new",
            27,
            "10 to 12 thou",
            11,
            "thou",
            "10 to 12_thou",
            low=10,
            high=12,
            attribute="clearance",
            item="bass side",
            **aim,
        ),
        measure("damp", 29, "48 percent", 48, "percent", "48_%", attribute="humidity", item="shop", phase="general"),
    )


def _corrections() -> tuple[Correction, ...]:
    return (
        Correction(
            id="c-rule",
            **span(2, "no hang on"),
            scope="this_session",
            withdraws=Withdrawn(measure="m-action-0", text="7/64", cue=2),
            replacement="5/64 in",
            value=0.078125,
            unit="inch",
            replacement_measure="m-action-1",
        ),
        Correction(
            id="c-heat",
            **span(10, "sorry"),
            scope="this_session",
            withdraws=Withdrawn(measure="m-heat-0", text="160 °F", cue=10),
            replacement="140 °F",
            value=140,
            unit="degF",
            replacement_measure="m-heat-1",
        ),
        Correction(
            id="c-old",
            **span(27, "In the last film I said"),
            scope="earlier_session",
            withdraws=Withdrawn(measure="m-bass-old", text="use 20 thou under the bass side"),
            replacement="10 to 12 thou",
            value=11,
            unit="thou",
            replacement_measure="m-bass-new",
        ),
        Correction(
            id="c-tape",
            **span(28, "it was three by the end"),
            scope="this_session",
            withdraws=Withdrawn(text="two layers", cue=9),
            replacement="three layers",
        ),
    )


def _findings() -> tuple[Finding, ...]:
    return (
        Finding(
            id="f-nut",
            kind="conversion",
            severity="stop",
            cue=23,
            cues=(23,),
            start=span(23, "16 in")["start"],
            quote="16 in, that is 250 mm",
            measures=("m-nut-0", "m-nut-1"),
            message="16 in is 406 mm, not 250 mm",
            source="NIST SP 811, B.8: 1 in = 25.4 mm exactly",
        ),
        Finding(
            id="f-clamp",
            kind="unit_missing",
            severity="stop",
            cue=20,
            cues=(20,),
            start=span(20, "12")["start"],
            quote="clamped for 12",
            measures=("m-clamp",),
            message="Clamped for 12 what: minutes or hours",
            source="shop's own",
        ),
        Finding(
            id="f-slot",
            kind="misheard",
            severity="look",
            cue=21,
            cues=(21,),
            start=span(21, "0.100 in")["start"],
            quote="0.100 in",
            measures=("m-slot-1",),
            message="The ear was not sure of 0.100 in; listen again",
            source="shop's own",
        ),
    )


def _steps() -> tuple[Step, ...]:
    rows: tuple[tuple[int, int, str, str, str, Mode, Names, Names, Names], ...] = (
        (8, 8, "Slacken the strings in pairs", "slacken", "strings", "doing", (), (), ()),
        (
            9,
            9,
            "Mask the top all round the bridge with low-tack tape",
            "mask",
            "top",
            "doing",
            (),
            (),
            ("low-tack tape",),
        ),
        (
            10,
            11,
            "Heat the plate to 140 °F (60 °C)",
            "heat",
            "plate",
            "doing",
            ("m-heat-0", "m-heat-1"),
            ("heating plate",),
            (),
        ),
        (
            13,
            13,
            "Work the palette knife in from the back edge, with the grain",
            "work",
            "knife",
            "doing",
            (),
            ("palette knife",),
            (),
        ),
        (
            15,
            15,
            "Scrape the footprint back to clean spruce, 1/16 in short of the outline",
            "scrape",
            "footprint",
            "done",
            ("m-margin",),
            (),
            (),
        ),
        (
            17,
            17,
            "Sand the bottom of the bridge to the dome of the top, radius 25 ft",
            "sand",
            "bridge",
            "advice",
            ("m-dome",),
            (),
            (),
        ),
        (
            18,
            19,
            "Glue the bridge with hot hide glue and clamp within 30 s",
            "glue",
            "bridge",
            "done",
            ("m-open-time",),
            ("cam clamps",),
            ("hide glue, 192 g",),
        ),
        (22, 22, "Fit a new saddle of bone, 1/8 in thick", "fit", "saddle", "done", ("m-saddle",), (), ("bone blank",)),
        (31, 31, "Plug the stripped tailpiece screw", "plug", "screw", "planned", (), (), ()),
    )
    return tuple(
        Step(id=f"s-{number}", number=number, cue_from=first, cue_to=last, start=_HEARD.cues[first].start,
             end=_HEARD.cues[last].end, quote=_HEARD.cues[first].text, text=text, verb=verb, object=thing, mode=mode,
             measures=measures, tools=tools, materials=materials)
        for number, (first, last, text, verb, thing, mode, measures, tools, materials) in enumerate(rows, start=1)
    )  # fmt: skip
