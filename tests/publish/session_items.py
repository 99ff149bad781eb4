"""The corrections, findings and steps of the invented session."""

from __future__ import annotations

from extract.record import Correction, Finding, Mode, Step, Withdrawn
from tests.publish.session_figures import HEARD, span

Names = tuple[str, ...]


def corrections() -> tuple[Correction, ...]:
    """Every statement taken back."""
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
            id="c-plate",
            **span(16, "3/32"),
            scope="this_session",
            withdraws=Withdrawn(measure="m-plate", text="3/32", cue=16),
            replacement="1/16 in",
            value=0.0625,
            unit="inch",
            replacement_measure="m-plate",
            source="proof",
        ),
        Correction(
            id="c-tape",
            **span(28, "it was three by the end"),
            scope="this_session",
            withdraws=Withdrawn(text="two layers", cue=9),
            replacement="three layers",
        ),
    )


def findings() -> tuple[Finding, ...]:
    """What a person has to settle or to check."""
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


def steps() -> tuple[Step, ...]:
    """The steps."""
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
        Step(id=f"s-{number}", number=number, cue_from=first, cue_to=last, start=HEARD.cues[first].start,
             end=HEARD.cues[last].end, quote=HEARD.cues[first].text, text=text, verb=verb, object=thing, mode=mode,
             measures=measures, tools=tools, materials=materials)
        for number, (first, last, text, verb, thing, mode, measures, tools, materials) in enumerate(rows, start=1)
    )  # fmt: skip
