"""The figures of the invented session, and how an item finds its seconds."""

from __future__ import annotations

from typing import Any

from capture.transcript import Transcript
from extract.record import Because, Former, Heard, Measure, Reading, Ruled
from tests.publish.narration import transcript

HEARD = transcript()


def span(cue: int, quote: str, heard: Transcript = HEARD) -> dict[str, Any]:
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


def ruled(because: Because, was: str) -> Ruled:
    """That a person amended a figure."""
    return Ruled(verdict="amend", ruling=f"ruling-{because}", because=because, was=Former(display=was))


def measures() -> tuple[Measure, ...]:
    """Every figure, in the order of speaking."""
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
            "plate",
            16,
            "3/32",
            0.0625,
            "inch",
            "1/16_in",
            attribute="thickness",
            item="bridge plate",
            ruling=ruled("said_wrong", "3/32\u00a0in"),
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
        measure(
            "dust", 24, "two", 2, "hour", "2_h", stands=False, ruling=Ruled(verdict="strike", ruling="ruling-strike")
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
        measure(
            "damp",
            29,
            "48 percent",
            43,
            "percent",
            "43_%",
            attribute="humidity",
            item="shop",
            phase="general",
            ruling=ruled("heard_wrong", "48\u00a0%"),
        ),
    )
