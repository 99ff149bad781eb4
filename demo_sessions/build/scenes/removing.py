"""Taking the bridge off: mirror, masking, heat, knife, scraper."""

from __future__ import annotations

import math

from demo_sessions.build.drawing import bridge, marks, tools
from demo_sessions.build.drawing.canvas import WIDTH, Canvas, Paint, Point, box, spline
from demo_sessions.build.scenes.scene import Scene

MIDDLE = (427.0, 206.0)
PX = 3.5
FRONT = (200.0, 262.0)
CUT = 9.5


def top(canvas: Canvas) -> None:
    """The spruce top filling the sheet, grain from front to back of the guitar."""
    canvas.grained(box(-4, -4, WIDTH + 4, marks.LABEL_TOP + 4), Paint.SPRUCE, Paint.SPRUCE_GRAIN, 8, upright=True)


def _mirror(canvas: Canvas) -> None:
    top(canvas)
    canvas.disc(380, 204, 182, None, Paint.ROSEWOOD, 6)
    canvas.disc(380, 204, 172, None, Paint.TEAL, 3)
    canvas.disc(380, 204, 160, Paint.EBONY)
    canvas.line([(470, 236), (760, 350)], Paint.INK, 13)
    canvas.line([(470, 236), (760, 350)], Paint.STEEL, 9)
    canvas.disc(404, 204, 96, Paint.STEEL_DARK)
    canvas.disc(404, 204, 88, (196, 160, 112))
    for i in range(6):
        canvas.disc(339 + 26 * i, 174, 6, Paint.EBONY, None)
    marks.named(canvas, (600, 287), (640, 216), "mirror")


def _dark_line(canvas: Canvas, seconds: float, _: float) -> None:
    line: list[Point] = [(352, 232), (380, 226), (412, 230), (452, 222)]
    canvas.line(spline(line, False), Paint.INK, 2.4)
    if seconds > 2.5:
        marks.named(canvas, (440, 225), (560, 96), "crack, or pencil?", 24)


def _mask(canvas: Canvas) -> None:
    top(canvas)
    bridge.from_above(canvas, MIDDLE, PX, "old", pins=False)


def _masking(canvas: Canvas, seconds: float, _: float) -> None:
    gap = 14
    left, right = MIDDLE[0] - 76 * PX - gap, MIDDLE[0] + 76 * PX + gap
    high, low = MIDDLE[1] - 15 * PX - gap, MIDDLE[1] + 22 * PX + gap
    sheets = (
        box(0, 0, WIDTH, high),
        box(0, low, WIDTH, marks.LABEL_TOP),
        box(0, high, left, low),
        box(right, high, WIDTH, low),
    )
    laid = min(len(sheets), int(seconds / 0.5) + 1)
    for sheet in sheets[:laid]:
        canvas.poly(sheet, Paint.CARD)
    if laid == len(sheets):
        for i, sheet in enumerate(sheets[: max(0, int((seconds - 2.6) / 0.4))]):
            (x0, y0), (x1, y1) = sheet[0], sheet[2]
            canvas.poly(box(x0 + 9, y0 + 9, x1 - 9, y1 - 9), Paint.FOIL, Paint.STEEL)
            for k in range(6):
                x = x0 + 20 + (x1 - x0 - 40) * ((k * 37 + i * 11) % 100) / 100
                canvas.line([(x, y0 + 14), (x - 14, y1 - 14)], Paint.BONE, 1.6)
    if seconds > 4.6:
        marks.chip(canvas, (427, 46), "foil over card", 26, Paint.TEAL)


def _blanket(canvas: Canvas) -> None:
    bridge.soundboard(canvas, 0, 560, FRONT[1] + 20)
    bridge.cut_through(canvas, (96, FRONT[1] + 20), CUT, 0, saddle=None, strung=False)
    canvas.line(spline([(470, 190), (560, 200), (600, 320), (720, 372), (860, 360)], False), Paint.INK, 6)
    pad = spline(
        [(70, 178), (90, 160), (280, 158), (440, 172), (486, 196), (484, 214), (430, 196), (280, 182), (90, 186)], True
    )
    canvas.poly(pad, Paint.HOT)
    marks.named(canvas, (260, 170), (90, 74), "heat blanket", 22)
    marks.chip(canvas, (696, 330), "82 °C", 30, Paint.TEAL)


def _warming(canvas: Canvas, seconds: float, _: float) -> None:
    reading = 70 + 110 * (1 - math.exp(-seconds / 2.2))
    tools.dial(canvas, (696, 160), 128, 40, 240, reading, 40, "°F", hot=190)
    for i in range(4):
        x = 130 + i * 80
        sway = [(x + 8 * math.sin(seconds * 2 + i + k), 140 - k * 9) for k in range(5)]
        canvas.line(sway, Paint.HOT, 2.4)


def _knife(canvas: Canvas) -> None:
    bridge.soundboard(canvas, 0, WIDTH, FRONT[1])


def _sweeping(canvas: Canvas, seconds: float, part: float) -> None:
    reach = 60 + 240 * part + 16 * math.sin(seconds * 4)
    bridge.cut_through(canvas, FRONT, CUT, 1.0 + 1.8 * part, saddle=None, strung=False)
    tools.palette_knife(canvas, (FRONT[0] + bridge.BREADTH * CUT - reach, FRONT[1] - 3), -1.6)
    if seconds > 3:
        marks.chip(canvas, (270, 92), "don't lever", 30, Paint.HOT)


def _off(canvas: Canvas) -> None:
    top(canvas)
    canvas.poly(bridge.footprint((MIDDLE[0], 118), 3.0), (242, 219, 176), Paint.SPRUCE_GRAIN)
    for i in range(9):
        x = 230 + i * 45
        canvas.line([(x, 100 + (i * 7) % 22), (x + 30, 104 + (i * 5) % 26)], Paint.GLUE, 3)


def _lifting(canvas: Canvas, seconds: float, _: float) -> None:
    rise = min(1.0, seconds / 1.2)
    bridge.from_above(canvas, (MIDDLE[0], 128 + 164 * rise), 3.0, "old", pins=False)
    tools.clock(canvas, (744, 312), 66, 14 * min(1.0, seconds / 3))


def _footprint(canvas: Canvas) -> None:
    top(canvas)
    canvas.poly(bridge.footprint(MIDDLE, PX), (242, 219, 176), Paint.ROSEWOOD)
    for i in range(6):
        canvas.disc(MIDDLE[0] + (-27.5 + 11 * i) * PX, MIDDLE[1] + 9 * PX, 8, Paint.EBONY)


def _footprint_length(canvas: Canvas) -> None:
    _footprint(canvas)
    marks.dimension(
        canvas,
        (MIDDLE[0] - 76 * PX, MIDDLE[1] - 30),
        (MIDDLE[0] + 76 * PX, MIDDLE[1] - 30),
        "6 in",
        86,
        34,
        Paint.ROSEWOOD,
    )


def _scraping(canvas: Canvas, seconds: float, part: float) -> None:
    x = MIDDLE[0] - 190 + 380 * part
    for i in range(10):
        at = MIDDLE[0] - 210 + i * 46
        if at > x:
            canvas.line([(at, 190 + (i * 7) % 30), (at + 34, 196 + (i * 5) % 30)], Paint.GLUE, 4)
    tools.scraper(canvas, (x + 22 * math.sin(seconds * 5.6), MIDDLE[1] + 34), 6)
    for i in range(5):
        curl = x - 60 + i * 26
        canvas.line(
            spline([(curl, 262 + i % 3 * 9), (curl + 8, 254), (curl + 15, 263), (curl + 8, 270)], False), Paint.GLUE, 2
        )


SCENES = {
    "mirror": Scene("A look inside", "through the soundhole", _mirror, _dark_line),
    "mask": Scene("Mask the top", "from above", _mask, _masking),
    "blanket": Scene("Heat blanket on", "cut through the bridge", _blanket, _warming),
    "knife": Scene("Knife under the back edge", "cut through the bridge", _knife, _sweeping),
    "bridge-off": Scene("Bridge off", "from above", _off, _lifting),
    "footprint": Scene("Footprint of the bridge", "from above", _footprint_length),
    "scrape": Scene("Scrape off the old glue", "from above", _footprint, _scraping),
}
