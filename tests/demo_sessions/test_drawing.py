"""The drawings: frets where they belong, every scene of the right size and changing where it should."""

from __future__ import annotations

import numpy as np
import pytest
from PIL import ImageChops

from demo_sessions.build.drawing import marks
from demo_sessions.build.drawing.canvas import Canvas, Paint, box, spline, turned
from demo_sessions.build.drawing.guitar import fret_from_nut
from demo_sessions.build.film import moved, still
from demo_sessions.build.scenes import SCENES

PRINTED = (23.597, 22.272, 21.022, 19.843, 18.729, 17.678, 16.685, 15.749, 14.865, 14.031)
"""A maker's printed table for a 25 inch scale: inches from frets 1 to 10 to the bridge (common practice, no source)."""


@pytest.mark.parametrize(("fret", "to_bridge"), list(enumerate(PRINTED, start=1)))
def test_frets_stand_where_the_printed_table_puts_them(fret: int, to_bridge: float) -> None:
    assert 25 - fret_from_nut(fret, 25) == pytest.approx(to_bridge, abs=0.0006)


def test_the_twelfth_fret_is_half_way() -> None:
    assert fret_from_nut(12, 648) == pytest.approx(324)


@pytest.mark.parametrize("name", SCENES)
def test_every_scene_can_be_drawn(name: str) -> None:
    scene = SCENES[name]
    ground = still(scene)
    early, late = (moved(scene, ground, seconds, part) for seconds, part in ((0.4, 0.05), (7.3, 0.95)))
    assert early.size == late.size == (854, 480)
    assert (ImageChops.difference(early, late).getbbox() is not None) == (scene.moving is not None)


@pytest.mark.parametrize("name", [name for name, scene in SCENES.items() if scene.lettered])
def test_labels_fit_their_band(name: str) -> None:
    scene = SCENES[name]
    canvas = Canvas()
    assert canvas.text_width(scene.label, 30) + canvas.text_width(scene.view, 16) < 854 - 26 - 24 - 20


def test_a_dimension_names_its_figure_and_stays_in_its_colour() -> None:
    canvas = marks.sheet()
    blank = canvas.finished()
    marks.dimension(canvas, (200, 200), (600, 200), "16 in", 60)
    changed = ImageChops.difference(blank, canvas.finished()).getbbox()
    assert changed is not None
    left, upper, right, lower = changed
    assert left >= 198
    assert right <= 602
    assert upper < 140 < lower


def test_wood_stays_within_its_outline() -> None:
    canvas = Canvas()
    canvas.grained(box(100, 100, 200, 150), Paint.SPRUCE, Paint.SPRUCE_GRAIN)
    outside = np.asarray(canvas.finished())
    assert (outside[:98] == Paint.PAPER).all()
    assert (outside[:, 203:] == Paint.PAPER).all()


def test_a_spline_goes_through_its_points() -> None:
    points = [(0.0, 0.0), (10.0, 5.0), (20.0, 0.0)]
    assert [point for point in spline(points, closed=False) if point in points] == points


def test_turning_a_quarter_takes_right_to_down() -> None:
    assert turned([(1, 0)], (0, 0), 90)[0] == pytest.approx((0, 1))
