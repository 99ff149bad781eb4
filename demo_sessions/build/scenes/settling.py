"""The second film: how the guitar has settled, and the saddle, fret and nut put right."""

from __future__ import annotations

import math

from demo_sessions.build.drawing import bridge, guitar, marks, tools
from demo_sessions.build.drawing.canvas import WIDTH, Canvas, Paint, box, spline
from demo_sessions.build.scenes.measuring import FRONT, PX
from demo_sessions.build.scenes.scene import Scene


def _belly(canvas: Canvas) -> None:
    upper = [(110 + 560 * i / 20, 236 + 26 * (2 * i / 20 - 1) ** 2) for i in range(21)]
    canvas.grained([*upper, *[(x, y + 26) for x, y in reversed(upper)]], Paint.SPRUCE, Paint.SPRUCE_GRAIN, 6)
    tools.straightedge(canvas, 110, 670, 236)
    marks.dimension(canvas, (662, 236), (662, 260), "1 1/2 mm", 34, 28)
    marks.dimension(canvas, (118, 236), (118, 260), "", -34)
    marks.named(canvas, (390, 214), (330, 110), "straightedge, behind the bridge", 22)


def _confession(canvas: Canvas, _: float, part: float) -> None:
    canvas.rect(108, 50, 746, 356, Paint.BONE)
    canvas.rect(108, 50, 746, 100, Paint.HOT)
    canvas.text(132, 76, "Correction to the first film: heat blanket", 26, Paint.PAPER, weight=0.4)
    canvas.text(260, 200, "180 °F", 64, Paint.PENCIL, "mm", 1.0)
    if part > 0.42:
        canvas.line([(160, 206), (360, 194)], Paint.HOT, 6)
        canvas.line([(392, 200), (458, 200)], Paint.INK, 4)
        marks.arrow(canvas, (466, 200), (1, 0), Paint.INK, 16)
        canvas.text(590, 200, "150 °F", 74, Paint.TEAL, "mm", 1.6)
    if part > 0.72:
        canvas.text(427, 306, "25 minutes on a scrap top", 26, Paint.INK, "mm")


def _half_way(canvas: Canvas) -> None:
    nut, saddle, base = 90.0, 680.0, 300.0
    middle = (nut + saddle) / 2
    canvas.line([(40, base), (740, base)], Paint.EBONY, 8)
    canvas.rect(nut - 8, base - 30, nut + 8, base, Paint.BONE)
    canvas.rect(saddle - 11, base - 190, saddle + 11, base, Paint.BONE)
    canvas.line([(nut, base - 30), (saddle, base - 190)], Paint.BRASS, 5)
    canvas.dashed((nut, base - 30), (saddle, base - 122), Paint.TEAL, 3, 9)
    guitar.fret(canvas, middle, base - 2, 26, 16)
    marks.dimension(canvas, (saddle, base - 122), (saddle, base - 190), "1/32 in", -44, 28)
    marks.dimension(canvas, (middle, base - 76), (middle, base - 110), "1/64 in", -58, 28)
    canvas.text(nut, 344, "nut", 22, Paint.INK, "mm")
    canvas.text(middle, 344, "12th fret: half way", 22, Paint.INK, "mm")
    canvas.text(saddle, 344, "saddle", 22, Paint.INK, "mm")


def _bare(canvas: Canvas) -> None:
    bridge.soundboard(canvas, 0, WIDTH, FRONT[1])
    bridge.cut_through(canvas, FRONT, PX, saddle=None, strung=False)


def _saddle_piece(canvas: Canvas, x: float, y: float, px: float = PX) -> None:
    canvas.poly(
        [
            (x, y),
            (x, y - 7.8 * px),
            (x + px, y - 8.8 * px),
            (x + 2.4 * px, y - 8.8 * px),
            (x + 3.2 * px, y - 7.8 * px),
            (x + 3.2 * px, y),
        ],
        Paint.BONE,
    )


def _sliding(way: int, canvas: Canvas, seconds: float) -> None:
    part = min(1.0, seconds / 3.5)
    rise = (part if way > 0 else 1 - part) * 96
    x, y = FRONT[0] + 7 * PX, FRONT[1] - (bridge.THICK - 4.8) * PX - rise
    _saddle_piece(canvas, x, y)
    canvas.line([(x + 76, 72), (x + 76, 148)], Paint.TEAL, 4)
    marks.arrow(canvas, (x + 76, 66 if way > 0 else 154), (0, -way), Paint.TEAL, 20)


def _sliding_out(canvas: Canvas, seconds: float, _: float) -> None:
    _sliding(1, canvas, seconds)


def _sliding_in(canvas: Canvas, seconds: float, _: float) -> None:
    _sliding(-1, canvas, seconds)


def _tall(canvas: Canvas) -> None:
    arch = spline([(180, 150), (220, 118), (427, 92), (640, 124), (674, 154)], False)
    canvas.poly([*arch, (674, 300), (180, 300)], Paint.BONE)
    canvas.dashed((180, 278), (674, 278), Paint.HOT, 2.4, 10)
    marks.dimension(canvas, (427, 92), (427, 300), "11/32 in", 336, 32)
    marks.dimension(canvas, (180, 278), (180, 300), "1/32 in off", -36, 26, Paint.HOT)
    canvas.text(427, 344, "bottom edge", 20, Paint.PENCIL, "mm")


def _plate(canvas: Canvas) -> None:
    canvas.rect(120, 284, 734, 316, Paint.STEEL)
    canvas.rect(140, 276, 714, 285, Paint.CARD)
    canvas.grained(box(0, 316, WIDTH, marks.LABEL_TOP), Paint.CEDAR, Paint.ROSEWOOD, 10)
    marks.named(canvas, (690, 281), (560, 366), "coarse paper", 22)
    marks.named(canvas, (170, 304), (130, 366), "flat plate", 22)


def _rubbing(canvas: Canvas, seconds: float, _: float) -> None:
    x = 300 + 110 * math.sin(seconds * 4.2)
    canvas.poly(
        [
            *spline([(x, 206), (x + 20, 184), (x + 120, 168), (x + 220, 188), (x + 240, 208)], False),
            (x + 240, 276),
            (x, 276),
        ],
        Paint.BONE,
    )
    canvas.dashed((x, 262), (x + 240, 262), Paint.PENCIL, 2, 8)
    marks.chip(canvas, (427, 84), "dust mask on", 28, Paint.HOT)


def _board(canvas: Canvas) -> None:
    guitar.neck_side(canvas, -20, WIDTH + 20, 272)
    for x in (150, 427, 690):
        guitar.fret(canvas, x, 272, 54, 38 if x == 427 else 34)
    marks.named(canvas, (436, 282), (520, 372), "3rd fret", 24)
    marks.chip(canvas, (664, 96), "0.004 in high", 30, Paint.TEAL)


def _filing(canvas: Canvas, seconds: float, _: float) -> None:
    tools.file(canvas, 270 + 60 * math.sin(seconds * 4.4), 232)


def _nut(canvas: Canvas) -> None:
    guitar.neck_side(canvas, 150, WIDTH + 20, 286)
    canvas.poly([(96, 286), (96, 190), (128, 172), (150, 190), (150, 286)], Paint.BONE)
    canvas.grained([(20, 286), (150, 286), (150, 360), (20, 330)], Paint.CEDAR, Paint.ROSEWOOD, 8)
    guitar.fret(canvas, 520, 286, 60, 40)
    canvas.line([(20, 232), (112, 196), (WIDTH, 206)], Paint.BRASS, 9)
    marks.dimension(canvas, (520, 206), (520, 246), "0.022, then 0.018 in", 56, 28)
    marks.named(canvas, (124, 240), (196, 366), "nut", 24)
    marks.named(canvas, (536, 262), (620, 366), "1st fret", 24)


def _slot_file(canvas: Canvas, seconds: float, _: float) -> None:
    x = 60 + 46 * math.sin(seconds * 3)
    canvas.line([(x, 186), (x + 250, 158)], Paint.STEEL_DARK, 8)
    canvas.line([(x + 250, 158), (x + 330, 149)], Paint.CEDAR, 18)


def _signature(canvas: Canvas, seconds: float, _: float) -> None:
    canvas.grained(box(0, 0, WIDTH, marks.LABEL_TOP), Paint.CARD, Paint.CEDAR, 10)
    for i in range(6):
        canvas.disc(240 + 75 * i, 104, 14, Paint.EBONY)
    stroke = spline(
        [(250, 262), (286, 196), (300, 270), (330, 220), (352, 262), (384, 214), (400, 264), (436, 226), (458, 262)],
        False,
    )
    shown = max(2, int(len(stroke) * min(1.0, seconds / 3)))
    canvas.line(stroke[:shown], Paint.INK, 4)
    if seconds > 3:
        canvas.text(486, 244, "1961", 50, Paint.INK, weight=0.4)
        canvas.line([(244, 292), (604, 284)], Paint.INK, 2.4)


SCENES = {
    "belly": Scene("The top has pulled up", "across the guitar", _belly),
    "confession": Scene("I take that back", "", None, _confession),
    "half-way": Scene("Half at the fret, all at the saddle", "heights drawn large", _half_way),
    "saddle-out": Scene("Saddle out", "cut through the bridge", _bare, _sliding_out),
    "saddle-in": Scene("Saddle back in", "cut through the bridge", _bare, _sliding_in),
    "saddle-tall": Scene("Saddle height", "saddle from the front", _tall),
    "rubbing": Scene("Rub the bottom flat", "from the side", _plate, _rubbing),
    "fret": Scene("File the third fret", "from the side", _board, _filing),
    "nut": Scene("Lower the nut slot", "from the side", _nut, _slot_file),
    "signature": Scene("A pencil mark after all", "the bridge plate, from inside", None, _signature),
}
