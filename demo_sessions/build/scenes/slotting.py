"""The saddle slot: the old one, the fill, the new one."""

from __future__ import annotations

import math

from demo_sessions.build.drawing import bridge, marks, tools
from demo_sessions.build.drawing.canvas import WIDTH, Canvas, Paint, box, turned
from demo_sessions.build.scenes.scene import Scene

MIDDLE = (427.0, 214.0)
PX = 4.9


def _bench(canvas: Canvas) -> None:
    canvas.grained(box(-4, -4, WIDTH + 4, marks.LABEL_TOP + 4), Paint.CARD, Paint.CEDAR, 12)


def _old(canvas: Canvas) -> None:
    _bench(canvas)
    bridge.from_above(canvas, MIDDLE, PX, "old", pins=False)
    marks.named(canvas, (480, MIDDLE[1] - 5 * PX - 6), (560, 60), "old slot, 3/32 in wide", 28)


def _rattling(canvas: Canvas, seconds: float, _: float) -> None:
    y = MIDDLE[1] - 5 * PX + 2 * math.sin(seconds * 17)
    canvas.poly(turned(box(427 - 170, y - 3.4, 427 + 170, y + 3.4), (427, y), -bridge.SLOT_LEAN), Paint.BONE)


def _filled(canvas: Canvas) -> None:
    _bench(canvas)
    bridge.from_above(canvas, MIDDLE, PX, "old", pins=False)


def _filling(canvas: Canvas, seconds: float, _: float) -> None:
    drop = min(1.0, seconds / 2)
    y = 60 + (MIDDLE[1] - 5 * PX - 60) * drop
    strip = turned(box(427 - 181, y - 6, 427 + 181, y + 6), (427, y), -bridge.SLOT_LEAN)
    canvas.poly(strip, (78, 68, 70), Paint.PAPER, 1.2)
    if seconds > 2:
        marks.named(canvas, (330, y + 5), (150, 352), "ebony strip", 24)


def _placed(canvas: Canvas) -> None:
    _bench(canvas)
    bridge.from_above(canvas, MIDDLE, PX, "pencilled", pins=False)
    end = bridge.slot_end(MIDDLE, PX, treble=True)
    canvas.line([(end[0], 44), (end[0], end[1] - 6)], Paint.TEAL, 2)
    marks.arrow(canvas, (end[0], end[1] - 5), (0, 1), Paint.TEAL, 14)
    marks.chip(canvas, (end[0], 44), "25 5/8 in from the nut", 28, Paint.TEAL)
    canvas.text(40, 372, "bass side", 22, Paint.ROSEWOOD)
    canvas.text(WIDTH - 40, 372, "treble side", 22, Paint.ROSEWOOD, "rm")


def _jig(canvas: Canvas) -> None:
    _bench(canvas)
    bridge.from_above(canvas, MIDDLE, PX, "new", pins=False)
    for y in (66, 296):
        canvas.rect(90, y, 764, y + 26, Paint.SPRUCE)
    for x in (90, 738):
        canvas.rect(x, 66, x + 26, 322, Paint.SPRUCE)
    for x, y in ((60, 300), (794, 300), (60, 66), (794, 66)):
        canvas.rect(x - 18, y - 12, x + 18, y + 46, Paint.CLOTH, radius=5)
        canvas.disc(x, y + 17, 9, Paint.BRASS)
    marks.named(canvas, (200, 310), (150, 372), "jig")
    marks.named(canvas, (60, 340), (300, 372), "clamped to the bench")


def _routing(canvas: Canvas, seconds: float, _: float) -> None:
    swing = math.sin(seconds * 1.1)
    x = 427 + 150 * swing
    y = MIDDLE[1] - 5 * PX - 150 * swing * math.tan(math.radians(bridge.SLOT_LEAN))
    tools.router(canvas, (x, y))


def _new(canvas: Canvas) -> None:
    front, px = (250.0, 300.0), 12.0
    canvas.grained(box(0, 300, WIDTH, 330), Paint.CARD, Paint.CEDAR, 10)
    bridge.cut_through(canvas, front, px, saddle=None, strung=False, plate=False)
    roof = front[1] - bridge.THICK * px
    left, right = front[0] + 7 * px, front[0] + 10.2 * px
    marks.dimension(canvas, (left, roof), (right, roof), "1/8 in", 70, 32)
    marks.dimension(canvas, (left, roof + 4.8 * px), (left, roof), "3/16 in", 170, 32)


SCENES = {
    "slot-old": Scene("Old saddle slot", "bridge from above", _old, _rattling),
    "slot-filled": Scene("Fill the slot", "bridge from above", _filled, _filling),
    "slot-place": Scene("Mark the new slot", "bridge from above", _placed),
    "router": Scene("Rout the new slot", "from above: goggles, mask", _jig, _routing),
    "slot-new": Scene("New slot", "cut through the bridge", _new),
}
