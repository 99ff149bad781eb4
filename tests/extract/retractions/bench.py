"""Sessions of our own invention: a cello's bass bar, filmed twice, and a viola."""

from __future__ import annotations

from typing import Any

from extract.record import Correction, Measure, Record, SessionFacts, Step, Withdrawn
from extract.retractions import Sitting
from extract.rulings.model import Ruling

CELLO, VIOLA = "cello of the Thistledown quartet", "viola with a red case"
FIRST, SECOND, THIRD = "2031-02-03-bass-bar", "2031-03-09-bass-bar-again", "2031-04-20-bass-bar-third"


def figure(name: str, inches: float, display: str, start: float = 10.0, **other: Any) -> Measure:
    """The height of the bass bar, unless told otherwise."""
    facts: dict[str, Any] = {
        "id": name, "cue": int(start // 5), "start": start, "end": start + 1, "quote": display, "value": inches,
        "unit": "inch", "unit_said": True, "attribute": "height", "item": "bass bar", "phase": "target",
        "hedged": False, "kind": "length", "display": display,
    }  # fmt: skip
    return Measure.model_validate(facts | other)


def session(
    slug: str, *measures: Measure, subject: str = CELLO, rulings: tuple[Ruling, ...] = (), **parts: Any
) -> Sitting:
    """A session of the day that its folder names."""
    facts = SessionFacts(
        title=f"Session {slug[11:]}", date=slug[:10], subject=subject, trade="strings", source="film.mp4", duration=600
    )
    return Sitting(slug, Record(session=facts, measures=measures, **parts), rulings)


def taking_back(
    slug: str = SECOND,
    said: str = "3/32 in",
    right: str = "7/64 in",
    words: str = "in the first film I said the bass bar was 3/32 high",
    rulings: tuple[Ruling, ...] = (),
    subject: str = CELLO,
    **of: Any,
) -> Sitting:
    """A session that takes 3/32 in back, which is 7/64 in."""
    values = {"3/32 in": 3 / 32, "7/64 in": 7 / 64, "1/8 in": 1 / 8, "5/32 in": 5 / 32}
    wrong = figure("m-said", values[said], said, 50.0, stands=False, corrected_by="c-back", phase="general", **of)
    holds = figure("m-right", values[right], right, 55.0, phase="general", **of)
    correction = Correction(
        id="c-back",
        cue=11,
        start=54.0,
        end=56.0,
        quote=f"it's {right}",
        scope="earlier_session",
        withdraws=Withdrawn(measure="m-said", text=words),
        replacement=right,
        value=values[right],
        unit="inch",
        replacement_measure="m-right",
    )
    return session(slug, wrong, holds, subject=subject, rulings=rulings, corrections=(correction,))


def step(text: str, *measures: str, start: float = 8.0) -> Step:
    """A step of the first session."""
    return Step(
        id=f"s-{int(start)}", number=1, cue_from=1, cue_to=2, start=start, end=start + 4, quote=text, text=text,
        verb=text.split()[0].lower(), object="bar", mode="done", measures=measures,
    )  # fmt: skip
