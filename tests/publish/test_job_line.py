"""The job drawn to scale: everything lies at its second, nothing over anything else."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from capture.step_stills import tenths_of
from extract.record import Record
from publish.context import JobLine, Stage
from publish.galley import Galley
from publish.job_line import draw_job
from publish.page import make_page
from publish.procedure import stages
from publish.render import Renderer
from publish.rows import Rows
from publish.source import SessionSource
from publish.timeline import INSET, WIDTH
from tests.publish.session import SHOP, source


def with_steps(seconds: list[float], duration: float, *, stills: bool = True) -> SessionSource:
    """The invented session with steps at these seconds alone, a still for each."""
    record: Record = source().record
    step = record.steps[0]
    steps = tuple(
        step.model_copy(update={"id": f"s-{at}", "number": at + 1, "start": second, "end": second, "measures": ()})
        for at, second in enumerate(seconds)
    )
    facts = record.session.model_copy(update={"duration": duration})
    bare = record.model_copy(update={"session": facts, "steps": steps, "measures": (), "corrections": ()})
    kept = {tenths_of(second): Path(f"{second}.jpg") for second in seconds} if stills else {}
    return replace(source(), record=bare, recording="film.webm", stills=kept)


def drawn(of: SessionSource) -> JobLine | None:
    galley = Galley(of, SHOP)
    shown: tuple[Stage, ...] = stages(galley, Rows(galley))
    return draw_job(of.record, shown)


SECONDS = st.lists(st.floats(0, 7200, allow_subnormal=False), min_size=2, max_size=60).map(sorted)


@given(SECONDS)
def test_stills_stand_in_order_side_by_side_within_the_drawing(seconds: list[float]) -> None:
    job = drawn(with_steps(seconds, 7200))
    assert job is not None
    assert 1 <= len(job.frames) <= 5
    lefts = [one.x for one in job.frames]
    assert lefts[0] >= 0
    assert lefts[-1] + job.frame_width <= WIDTH
    assert all(right - left > job.frame_width for left, right in pairwise(lefts))
    assert [one.number for one in job.frames] == sorted({one.number for one in job.frames})
    assert (job.frames[0].number, job.frames[-1].number) == (1, len(seconds))


@given(SECONDS)
def test_numbers_keep_clear_of_one_another(seconds: list[float]) -> None:
    job = drawn(with_steps(seconds, 7200))
    assert job is not None
    assert job.numbers[0].number == 1
    for row in {one.y for one in job.numbers}:
        of = [one for one in job.numbers if one.y == row]
        assert row < job.height
        for one, other in pairwise(of):
            assert other.x - one.x >= 6 * (len(str(one.number)) + len(str(other.number))) / 2


def test_each_step_lies_at_its_second() -> None:
    job = drawn(with_steps([0, 25, 50, 100], 100))
    assert job is not None
    room = WIDTH - 2 * INSET
    at = [INSET, INSET + room / 4, INSET + room / 2, INSET + room]
    assert [one.x for one in job.marks] == pytest.approx(at)
    assert [one.x for one in job.numbers] == pytest.approx(at)
    assert [float(one.lead.split("L")[1].split()[0]) for one in job.frames] == pytest.approx(at)


def test_without_stills_there_is_the_rule_alone_and_one_step_is_no_course() -> None:
    bare, with_film = drawn(with_steps([1, 9], 20, stills=False)), drawn(with_steps([1, 9], 20))
    assert bare is not None
    assert with_film is not None
    assert bare.frames == ()
    assert bare.height < with_film.height - 60
    assert drawn(with_steps([1], 20)) is None


def test_the_page_has_it_with_a_link_to_each_stills_second() -> None:
    of = with_steps([3, 60, 90], 100)
    page = make_page(of, SHOP)
    html = Renderer().session(page)
    assert page == make_page(of, SHOP)
    drawing = html.split('<svg class="job"')[1].split("</svg>")[0]
    assert "The job to scale, 1:40 long: 3 steps, 0 figures, 0 errata; stills at 0:03, 1:00, 1:30" in drawing
    for second in ("3", "60", "90"):
        assert f'<a href="film.webm#t={second}" data-seconds="{second}"' in drawing
    for image in (f"stills/{tenths_of(second)}.jpg" for second in (3, 60, 90)):
        assert f'<image href="{image}"' in drawing
