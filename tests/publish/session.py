"""The record of the invented session, as rich as a record gets; figures are worked out by hand."""

from __future__ import annotations

from capture.shop import ShopSettings
from extract.record import Caution, Mention, Record, Remark, SessionFacts
from publish.source import SessionSource
from tests.publish.session_figures import HEARD, measures, span
from tests.publish.session_items import corrections, findings, steps

SHOP = ShopSettings(
    title="Coppice Lane shop notes",
    author="Wilhelmina Trask",
    site_address="https://notes.example/coppice",
    licence="CC BY 4.0",
)
SLUG = "2031-05-14-the-heron-bridge"


def source() -> SessionSource:
    """The session as it is handed to the page maker."""
    return SessionSource(SLUG, record(), HEARD, recording="heron bridge #1.webm")


def record() -> Record:
    """The record."""
    return Record(
        session=SessionFacts(
            title="The Heron: a lifting bridge, and a new saddle",
            date="2031-05-14",
            subject="octave mandola, bridge reglued and saddle replaced",
            trade="plucked strings",
            source="heron-bridge.mp4",
            duration=HEARD.duration,
        ),
        measures=measures(),
        corrections=corrections(),
        findings=findings(),
        steps=steps(),
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
