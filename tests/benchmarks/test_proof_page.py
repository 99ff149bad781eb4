"""How long the proof page of three hours with 1,500 items takes to open in Chromium, and how it scrolls.

Run with `pytest tests/benchmarks/test_proof_page.py`; it prints the frames of scrolling through the whole list besides.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import psutil
import pytest
from playwright.sync_api import Browser, Page, expect
from pytest_benchmark.fixture import BenchmarkFixture

from capture.files import write_atomic
from capture.shop import SessionSettings, Shop
from capture.transcript import Cue, Transcript, Word
from extract.record import Correction, Finding, Heard, Measure, Reading, Record, Remark, SessionFacts, Step, Withdrawn
from tests.desk.serving import proofing

_HOURS = 3 * 3600.0
_EACH = 300
"""Items of each of five kinds."""
_CUES = 3600

_SCROLL = """
() => new Promise(done => {
  const gaps = [];
  let last = performance.now();
  const step = now => {
    gaps.push(now - last);
    last = now;
    window.scrollBy(0, 400);
    const end = window.scrollY + window.innerHeight >= document.documentElement.scrollHeight - 2;
    if (end || gaps.length > 400) done(gaps.slice(1));
    else requestAnimationFrame(step);
  };
  requestAnimationFrame(step);
})
"""


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[psutil.Process, str]]:
    shop = Shop.open_or_create(tmp_path_factory.mktemp("long") / "shop")
    session = shop.add_session(SessionSettings.model_validate({"title": "Three hours", "date": "2031-05-14"}))
    write_atomic(session.record_file, _record().to_json())
    write_atomic(session.transcript_file, _transcript().to_json())
    with proofing(Path(shop.root), "three-hours") as (process, address):
        yield psutil.Process(process.pid), address


@pytest.fixture(scope="module")
def address(served: tuple[psutil.Process, str]) -> str:
    return served[1]


@pytest.fixture(scope="module")
def page(browser: Browser) -> Page:
    return browser.new_page(viewport={"width": 1280, "height": 900})


def test_first_opening(page: Page, served: tuple[psutil.Process, str]) -> None:
    """In a browser that has just started, of a session that the server has not read yet.

    Until the first screen is shown, until the list is whole, and what the processors did for it, which other work on
    the machine lengthens less.
    """
    server, address = served
    before = _busy(server), _browser_busy()
    page.goto(address)
    page.wait_for_selector(".current .said")
    first, rest = _busy(server), _browser_busy()
    expect(page.locator("#queries .query")).to_have_count(5 * _EACH)
    shown = [page.evaluate(f"performance.getEntriesByName('shown')[{n}].startTime") for n in (0, 1)]
    print(f"\nfirst screen {shown[0]:.0f} ms, whole {shown[1]:.0f} ms; processors to the first screen:")
    print(
        f"server {before[0]:.2f} s to start and {first - before[0]:.2f} s, browser {rest - before[1]:.2f} s", end="; "
    )
    print(f"in all: server {_busy(server):.2f} s, browser {_browser_busy() - before[1]:.2f} s")


def test_opening(benchmark: BenchmarkFixture, address: str, page: Page) -> None:
    """From the address to the first item open."""
    page.goto(address)
    page.wait_for_selector(".current .said")

    def opened() -> None:
        page.reload(wait_until="commit")
        page.wait_for_selector(".current .said")

    benchmark.pedantic(opened, rounds=7)  # type: ignore[no-untyped-call]
    expect(page.locator("#queries .query")).to_have_count(5 * _EACH)
    assert page.locator("#queries .query").count() == 5 * _EACH


def test_scrolling(address: str, page: Page) -> None:
    """Frames of a scroll through the list, 400 pixels a frame; the first that a person sees count like any other."""
    page.goto(address)
    expect(page.locator("#queries .query")).to_have_count(5 * _EACH)
    gaps = sorted(page.evaluate(_SCROLL))
    middle, late = gaps[len(gaps) // 2], gaps[int(len(gaps) * 0.95)]
    print(f"\n{len(gaps)} frames: median {middle:.1f} ms, 95 in 100 below {late:.1f} ms, worst {gaps[-1]:.1f} ms")


def _busy(process: psutil.Process) -> float:
    """Seconds of processor time that a process has used."""
    used = process.cpu_times()
    return float(used.user + used.system)


def _browser_busy() -> float:
    """The same for all processes of the browser."""
    return sum(_busy(one) for one in psutil.Process().children(recursive=True) if "chrom" in one.name())


def _at(number: int) -> float:
    return round(number * _HOURS / _EACH, 2)


def _record() -> Record:
    numbers = range(_EACH)
    tie = Heard(
        confidence=0.5, near_tie=True,
        readings=(
            Reading(text="five", value=5, unit="millimeter", score=0),
            Reading(text="nine", value=9, unit="millimeter", score=-1),
        ),
    )  # fmt: skip
    measures = tuple(
        Measure(
            id=f"m-{n}", cue=n * 12, start=_at(n), end=_at(n) + 1, quote=f"{n} millimetres", value=n + 0.5,
            unit="millimeter", unit_said=True, phase="as_found", hedged=False, display=f"{n}.5\u00a0mm", heard=tie,
            attribute="width", item="slot", kind="length",
        )
        for n in numbers
    )  # fmt: skip
    return Record(
        session=SessionFacts(title="Three hours", trade="strings", source="long.mp4", duration=_HOURS),
        measures=measures,
        findings=tuple(
            Finding(
                id=f"f-{n}", kind="implausible", severity="stop", cue=n * 12, cues=(n * 12,), start=_at(n),
                quote="words", measures=(), message=f"{n} mm lies outside 3 to 9 mm, where the width usually lies",
                source="common practice",
            )
            for n in numbers
        ),
        corrections=tuple(
            Correction(
                id=f"c-{n}", cue=n * 12, start=_at(n), end=_at(n) + 2, quote="no, nine", scope="this_session",
                withdraws=Withdrawn(text="five"), replacement="nine",
            )
            for n in numbers
        ),
        doubts=tuple(Remark(id=f"d-{n}", cue=n * 12, start=_at(n), text=f"Whether it is cedar {n}") for n in numbers),
        steps=tuple(
            Step(
                id=f"s-{n}", number=n + 1, cue_from=n * 12, cue_to=n * 12, start=_at(n), end=_at(n) + 3,
                quote="I move it", text=f"Move it {n}", verb="move", object="it", mode="done",
            )
            for n in numbers
        ),
    )  # fmt: skip


def _transcript() -> Transcript:
    length = _HOURS / _CUES
    cues = []
    for n in range(_CUES):
        start = n * length
        words = tuple(
            Word(text=f"word{w}", start=start + w * length / 9, end=start + (w + 1) * length / 9) for w in range(9)
        )
        cues.append(Cue(start=start, end=start + length, text=" ".join(w.text for w in words), words=words))
    return Transcript(source="long.mp4", duration=_HOURS, cues=tuple(cues))
