"""Sessions of our own invention for the procedure library: bridges reglued, saddle slots cut, frets levelled."""

from __future__ import annotations

from collections.abc import Sequence

from capture.shop import ShopSettings
from extract.record import Caution, Measure, Mention, Record, SessionFacts, Step
from publish.procedures import SessionWork, work_of
from publish.source import SessionSource

SHOP = ShopSettings(title="Hollin Bank shop notes", author="Perpetua Sallow")
BRIDGE = (
    ("Take the strings off", "Warm the bridge with the heat blanket", "Lift the bridge off with a palette knife",
     "Scrape the old glue off the bridge", "Spread hide glue on the bridge", "Clamp the bridge"),
    ("Slacken the strings, then remove them", "Heat the bridge with a lamp", "Pry the bridge off",
     "Clean the old glue off the bridge", "Glue the bridge with hide glue", "Clamp the bridge with three cam clamps"),
    ("Heat the bridge", "Remove the bridge", "Brush hot hide glue on the bridge", "Clamp the bridge overnight"),
)  # fmt: skip
SADDLE = (
    ("Mark the saddle slot with a knife", "Rout the saddle slot with the router", "Fit the saddle in the saddle slot"),
    (
        "Scribe the saddle slot",
        "Cut the saddle slot with the router",
        "File the saddle",
        "Press the saddle in the slot",
    ),
)
FRETS = (
    ("Mask the fingerboard with tape", "Mark the frets with a marker", "Level the frets with the levelling beam",
     "Crown the frets", "Polish the frets with steel wool"),
    ("Tape up the fingerboard", "Ink the frets", "Level the frets", "Recrown the frets", "Polish the frets"),
)  # fmt: skip
WHEEL = (
    ("Put the wheel in the truing stand", "Tighten the spokes with the spoke key", "Check the dish", "True the wheel"),
    ("Spin the wheel in the truing stand", "Loosen the spokes with the spoke key", "True the wheel"),
)
JOBS = (*BRIDGE, *SADDLE, *FRETS, *WHEEL)
_SECONDS = 10.0


def step(number: int, text: str, slug: str, measures: Sequence[str] = ()) -> Step:
    """A step that is said in ten seconds."""
    start = number * _SECONDS
    return Step(
        id=f"s-{slug}-{number}", number=number, cue_from=number, cue_to=number, start=start, end=start + 8.0,
        quote=text, text=text, verb=(text.split() or [""])[0].lower(), object="", mode="done",
        measures=tuple(measures),
    )  # fmt: skip


def temperature(slug: str, value: float, **changes: object) -> Measure:
    """How hot the bridge was made, said in the second step."""
    measure = Measure(
        id=f"m-{slug}", cue=2, start=21.0, end=22.0, quote=f"{value:g} °F", value=value, unit="degF", unit_said=True,
        attribute="temperature", item="bridge", phase="target", hedged=False, kind="temperature",
        display=f"{value:g}\u00a0°F",
    )  # fmt: skip
    return measure.model_copy(update=changes)


def source(slug: str, *jobs: Sequence[str], trade: str = "strings", measures: Sequence[Measure] = ()) -> SessionSource:
    """A session that did these jobs one after the other."""
    texts = [text for job in jobs for text in job]
    record = Record(
        session=SessionFacts(
            title=slug[11:].capitalize(), date=slug[:10], subject=f"guitar {slug[11:]}", trade=trade,
            source=f"{slug}.webm", duration=400.0,
        ),
        steps=tuple(
            step(number, text, slug, [one.id for one in measures] if number == 2 else ())
            for number, text in enumerate(texts, 1)
        ),
        measures=tuple(measures),
        cautions=(
            Caution(cue=2, start=22.0, text="Keep the heat off the lacquer", source="said at the bench", said=True),
        ),
        tools=(Mention(name="palette knife", cues=(2,)),),
    )  # fmt: skip
    return SessionSource(slug, record, recording="film.webm")


def work(slug: str, *jobs: Sequence[str], measures: Sequence[Measure] = ()) -> SessionWork:
    """The same, as the procedure library takes it."""
    return work_of(source(slug, *jobs, measures=measures), SHOP)


def three_bridges() -> tuple[SessionWork, ...]:
    """Three bridges; the second session cut a saddle slot too, and the third figure was struck from the count."""
    return (
        work("2031-01-01-ash", BRIDGE[0], measures=[temperature("ash", 150.0)]),
        work("2031-02-01-birch", BRIDGE[1], SADDLE[0], measures=[temperature("birch", 160.0)]),
        work("2031-03-01-cedar", BRIDGE[2], measures=[temperature("cedar", 170.0)]),
        work("2031-04-01-damson", SADDLE[1]),
    )
