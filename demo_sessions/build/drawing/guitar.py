"""The invented guitar: seen from the front, and its neck seen from the side.

Sizes are millimetres; frets stand where equal temperament puts them, L(1 - 2^(-n/12)) from the nut.
"""

from __future__ import annotations

from collections.abc import Callable

from demo_sessions.build.drawing.canvas import Canvas, Paint, Point, box, spline

SCALE = 648.0
BODY_STARTS, BODY_ENDS = 359.0, 864.0
HALF_BODY = ((359, 44), (374, 104), (430, 138), (500, 130), (570, 118), (650, 152), (742, 188), (825, 146), (860, 60))
"""From the nut, and from the middle line, of one side of the body."""


def fret_from_nut(number: int, scale: float = SCALE) -> float:
    """How far a fret lies from the nut, in the unit of `scale`."""
    return float(scale * (1 - 2 ** (-number / 12)))


def front(canvas: Canvas, nut: Point, px: float, strings: bool = True, bridge: bool = True) -> None:
    """The whole guitar, head to the left; `px` pixels a millimetre, the middle of the nut at `nut`."""

    def at(x: float, y: float) -> Point:
        return nut[0] + x * px, nut[1] + y * px

    def outline(grow: float) -> list[Point]:
        half = [(x + grow * (1 if x > 600 else -1), y + grow) for x, y in HALF_BODY]
        ring = [at(x, y) for x, y in half] + [at(x, -y) for x, y in reversed(half)]
        return spline(ring, closed=True)

    shadow = [(x + 5, y + 7) for x, y in outline(0)]
    canvas.poly(shadow, Paint.SHADE, None)
    canvas.poly(outline(2), Paint.ROSEWOOD)
    canvas.grained(outline(-5), Paint.SPRUCE, Paint.SPRUCE_GRAIN, gap=4)
    _head(canvas, at)
    canvas.disc(*at(503, 0), 61 * px, None, Paint.ROSEWOOD, 2.2)
    canvas.disc(*at(503, 0), 57 * px, None, Paint.TEAL, 1.2)
    canvas.disc(*at(503, 0), 50 * px, Paint.EBONY)
    board = [at(0, -22), at(452, -28), at(452, 28), at(0, 22)]
    canvas.poly(board, Paint.EBONY)
    for number in range(1, 21):
        x = fret_from_nut(number)
        half = 22 + 6 * x / 452
        canvas.line([at(x, -half), at(x, half)], Paint.STEEL, 1.2)
        if number in (3, 5, 7, 9, 12, 15):
            canvas.disc(*at((x + fret_from_nut(number - 1)) / 2, 0), 2.6, Paint.BONE, None)
    canvas.poly([at(-5, -22), at(0, -22), at(0, 22), at(-5, 22)], Paint.BONE, width=1)
    if bridge:
        wings = [(640, -76), (637, -40), (634, 0), (637, 40), (640, 76), (662, 76), (668, 40), (674, 0), (668, -40)]
        canvas.poly([at(x, y) for x, y in [*wings, (662, -76)]], Paint.EBONY)
        canvas.line([at(648, 37), at(651, -37)], Paint.BONE, 2.6)
        for i in range(6):
            canvas.disc(*at(662, -27.5 + 11 * i), 1.8, Paint.BONE, None)
    if strings:
        for i in range(6):
            ends = [at(-4, -18 + 7.2 * i), at(662, -27.5 + 11 * i)]
            canvas.line(ends, Paint.BRASS if i < 4 else Paint.STEEL_DARK, 1.5 - 0.16 * i)


def _head(canvas: Canvas, at: Callable[[float, float], Point]) -> None:
    shape = [(-2, -23), (-24, -30), (-60, -38), (-176, -44), (-186, -20), (-186, 20), (-176, 44), (-60, 38), (-24, 30)]
    canvas.poly([at(x, y) for x, y in [*shape, (-2, 23)]], Paint.ROSEWOOD)
    for i in range(3):
        for side in (-1, 1):
            x, y = -58 - 46 * i, side * (41 + 2 * i)
            canvas.disc(*at(x, side * 22), 4.2, Paint.BRASS, width=1)
            canvas.rect(
                *at(x - 9, y - 1 if side > 0 else y - 15),
                *at(x + 9, y + 15 if side > 0 else y + 1),
                Paint.BRASS,
                radius=3,
            )


def neck_side(canvas: Canvas, left: float, right: float, top: float, bow: float = 0.0) -> list[Point]:
    """The fingerboard and neck from the side, its upper face hollow by `bow` pixels; gives the points of that face."""
    steps = 24
    face = []
    for i in range(steps + 1):
        t = i / steps
        face.append((left + (right - left) * t, top + bow * 4 * t * (1 - t)))
    under = [(x, y + 22) for x, y in reversed(face)]
    back = [(right, top + 22), (right, top + 74), (left + 30, top + 62), (left, top + 22)]
    canvas.grained([*reversed(under), *back[1:]], Paint.CEDAR, Paint.ROSEWOOD, gap=8)
    canvas.poly([*face, *under], Paint.EBONY)
    return face


def fret(canvas: Canvas, x: float, top: float, wide: float = 30, high: float = 16) -> None:
    """A fret seen along its length, standing on the board at `top`."""
    crown = [
        (x - wide / 2, top),
        (x - wide * 0.36, top - high * 0.7),
        (x, top - high),
        (x + wide * 0.36, top - high * 0.7),
    ]
    canvas.poly(spline([*crown, (x + wide / 2, top)], closed=False), Paint.STEEL)
    canvas.poly(box(x - 4, top, x + 4, top + 24), Paint.STEEL_DARK, None)
