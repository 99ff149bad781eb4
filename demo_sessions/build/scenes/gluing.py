"""Glue, clamps, waiting, and the new saddle."""

from __future__ import annotations

import math

from demo_sessions.build.drawing import bridge, marks, tools
from demo_sessions.build.drawing.canvas import WIDTH, Canvas, Paint, box
from demo_sessions.build.scenes.measuring import FRONT, PX
from demo_sessions.build.scenes.scene import Scene

TOP = 232.0
CLAMPS = (300.0, 427.0, 554.0)


def _pot(canvas: Canvas) -> None:
    canvas.rect(0, 352, WIDTH, marks.LABEL_TOP, Paint.CEDAR)
    tools.glue_pot(canvas, (230, 352))
    tools.dial(canvas, (610, 180), 132, 80, 200, 140, 20, "°F", hot=150)
    marks.chip(canvas, (610, 340), "60 °C", 32, Paint.TEAL)


def _stirring(canvas: Canvas, seconds: float, _: float) -> None:
    sway = 20 * math.sin(seconds * 2.4)
    tools.brush(canvas, (230 + sway, 226), 16 + sway / 3)
    canvas.rect(188, 202, 272, 236, Paint.GLUE, None)
    canvas.rect(184, 184, 276, 236, None, Paint.INK)
    for i in range(3):
        line = [(200 + i * 34 + 6 * math.sin(seconds * 2 + i + k), 172 - k * 10) for k in range(4)]
        canvas.line(line, Paint.PENCIL, 1.6)


def _joint(canvas: Canvas) -> None:
    canvas.grained(box(40, TOP, 814, TOP + 22), Paint.SPRUCE, Paint.SPRUCE_GRAIN, 6)
    bridge.along(canvas, (427, TOP), 3.6)
    canvas.line([(154, TOP), (700, TOP)], Paint.GLUE, 4)
    canvas.grained(box(210, TOP + 22, 644, TOP + 44), Paint.CARD, Paint.CEDAR, 6)


def _clamped(canvas: Canvas, turned: tuple[float, float, float]) -> None:
    roof = TOP - bridge.THICK * 3.6
    for x, turn in zip(CLAMPS, turned, strict=True):
        tools.clamp(canvas, x, roof, TOP + 44, turn)


def _clamping(canvas: Canvas, seconds: float, _: float) -> None:
    waits = (3.0, 0.0, 5.0)
    turns = [max(0.0, min(3.0, seconds - wait)) * 140 for wait in waits]
    _clamped(canvas, (turns[0], turns[1], turns[2]))
    marks.named(canvas, (230, TOP + 34), (70, 340), "caul inside", 22)
    marks.named(canvas, (150, TOP + 10), (60, 170), "spruce top", 22)
    if seconds > 1:
        marks.chip(canvas, (427, 366), "middle one first", 24, Paint.TEAL)


def _waiting(canvas: Canvas, _: float, part: float) -> None:
    _clamped(canvas, (40, 0, 70))
    tools.clock(canvas, (718, 130), 92, 720 + 1440 * part)


def _tight(canvas: Canvas) -> None:
    bridge.soundboard(canvas, 0, WIDTH, FRONT[1])
    bridge.cut_through(canvas, FRONT, PX, 0, saddle=None, strung=False)


def _trying(canvas: Canvas, seconds: float, _: float) -> None:
    away = 4 + 36 * abs(math.cos(seconds * 1.6))
    tools.feeler(canvas, (FRONT[0] + bridge.BREADTH * PX + away, FRONT[1] - 3), -0.6, 4)
    marks.chip(canvas, (668, 112), "0.002 in won't go in", 26, Paint.TEAL)


def _saddle(canvas: Canvas) -> None:
    bridge.soundboard(canvas, 0, WIDTH, FRONT[1])
    bridge.cut_through(canvas, FRONT, PX)
    roof = FRONT[1] - bridge.THICK * PX
    x = FRONT[0] + 7 * PX
    marks.dimension(canvas, (x, roof), (x, roof - 4 * PX), "5/32 in", 96, 32)
    marks.named(canvas, (x + 16, roof - 18), (486, 74), "new bone saddle", 24)


SCENES = {
    "glue": Scene("Hot hide glue", "", _pot, _stirring),
    "clamps": Scene("Clamps on", "along the bridge", _joint, _clamping),
    "clamp-clock": Scene("Leave it in the clamps", "along the bridge", _joint, _waiting),
    "tight": Scene("No gap left", "cut through the bridge", _tight, _trying),
    "saddle": Scene("New saddle", "cut through the bridge", _saddle),
}
