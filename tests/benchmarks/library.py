"""How the time to publish grows with the number of sessions: the whole site, and the library alone.

    python -m tests.benchmarks.library

The sessions are made after the invented one of tests/publish (34 lines, 30 figures), four to a work, dated a week
apart, without recordings: forty kinds of job, each with figures of its own things, sizes different from session to
session, and one session in twenty-five that takes something back of an earlier one. Times are of the processor, in one
run.
"""

from __future__ import annotations

import tempfile
import time
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop
from extract.record import Measure, Record
from extract.units import unit_rows
from publish import publish_shop
from publish.front import keep_company
from publish.library import make_library
from publish.page import make_page
from publish.render import Renderer
from publish.source import SessionSource
from tests.publish.session import SHOP, source

SESSIONS = (25, 50, 100, 200)
_TO_A_WORK = 4
_THINGS = (
    "saddle", "nut", "tailpiece", "rib", "scroll", "peg", "lining", "purfling", "bracing", "heel", "tuner", "pickguard",
    "binding", "rosette", "fretboard", "neck", "pickup", "jack", "mainspring", "barrel", "pallet", "pinion", "arbor",
    "balance", "hairspring", "crutch", "hub", "spoke", "crank", "headset", "freewheel", "fork", "cone", "transformer",
    "choke", "capacitor", "socket", "leg", "stretcher", "drawer",
)  # fmt: skip
_KINDS = len(_THINGS)
_TAKES_BACK = 25


def main() -> None:
    """Print a Markdown table."""
    _seconds(1)
    print("| sessions | whole site, s | a session, s | of it library, s | a session, s |\n|---|---|---|---|---|")
    for number in SESSIONS:
        whole, library = _seconds(number), _library(number)
        print(f"| {number} | {whole:.2f} | {whole / number:.3f} | {library:.2f} | {library / number:.4f} |", flush=True)


def generated(number: int) -> SessionSource:
    """The session of this number."""
    honest = source()
    day = date(2031, 1, 6) + timedelta(weeks=number)
    facts = honest.record.session.model_copy(
        update={
            "title": f"Job {number}", "date": day.isoformat(), "subject": f"mandola no. {number // _TO_A_WORK}",
            "trade": "strings",
        }
    )  # fmt: skip
    kind, factor = number % _KINDS, 1 + number * 7 % 61 / 64
    corrections = tuple(
        one for one in honest.record.corrections if one.scope == "this_session" or number % _TAKES_BACK == 0
    )
    left = {one.id for one in corrections}
    kept = (one for one in honest.record.measures if one.corrected_by is None or one.corrected_by in left)
    measures = tuple(_varied(one, kind, factor) for one in kept)
    record: Record = honest.record.model_copy(
        update={"session": facts, "measures": measures, "corrections": corrections}
    )
    return replace(honest, slug=f"{day.isoformat()}-job-{number}", record=record, recording=None)


def _varied(one: Measure, kind: int, factor: float) -> Measure:
    """The figure of another thing, and of another size."""
    value = round(one.value * factor, 3)
    unit = unit_rows()[one.unit].unit.symbol if one.unit in unit_rows() else ""
    item = _THINGS[(kind + len(one.item)) % _KINDS] if one.item else None
    low, high = (None if end is None else round(end * factor, 3) for end in (one.low, one.high))
    change = {
        "value": value, "low": low, "high": high, "display": f"{value:g} {unit}".strip(), "item": item, "where": None
    }  # fmt: skip
    return one.model_copy(update=change)


def _seconds(number: int) -> float:
    with tempfile.TemporaryDirectory() as folder:
        shop = Shop.open_or_create(Path(folder) / "shop", SHOP)
        for one in map(generated, range(number)):
            facts = one.record.session
            settings = {"title": facts.title, "date": facts.date, "subject": facts.subject, "trade": facts.trade}
            session = shop.add_session(SessionSettings.model_validate(settings))
            write_atomic(session.record_file, one.record.to_json())
            if one.transcript is not None:
                write_atomic(session.transcript_file, one.transcript.to_json())
        begun = time.process_time()
        publish_shop(shop)
        return time.process_time() - begun


def _library(number: int) -> float:
    sources = tuple(map(generated, range(number)))
    company = keep_company(sources, SHOP)
    pages = tuple(make_page(one, SHOP, company[one.slug]) for one in sources)
    renderer = Renderer()
    begun = time.process_time()
    for page in make_library(sources, pages, SHOP).values():
        renderer.library(page)
    return time.process_time() - begun


if __name__ == "__main__":
    main()
