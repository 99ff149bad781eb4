"""Tools of the bench, drawn simply and to be told at a glance."""

from __future__ import annotations

import math

from demo_sessions.build.drawing.canvas import Canvas, Colour, Paint, Point, box, spline, turned


def feeler(canvas: Canvas, tip: Point, degrees: float = 0.0, thick: float = 5) -> None:
    """A leaf of a feeler gauge, coming in from the right."""
    x, y = tip
    leaf = [(x, y), (x + 6, y - thick / 2), (x + 260, y - thick / 2), (x + 260, y + thick / 2), (x + 6, y + thick / 2)]
    canvas.poly(turned(leaf, tip, degrees), Paint.STEEL, width=1.2)
    canvas.poly(turned(box(x + 235, y - 15, x + 380, y + 15), tip, degrees), Paint.STEEL_DARK)
    canvas.disc(*turned([(x + 258, y)], tip, degrees)[0], 6, Paint.BRASS)


def palette_knife(canvas: Canvas, tip: Point, degrees: float) -> None:
    """A thin knife with a round wooden handle, coming in from the right."""
    x, y = tip
    blade = [(x, y), (x + 20, y - 3), (x + 240, y - 5), (x + 240, y + 3), (x + 20, y + 1)]
    canvas.poly(turned(blade, tip, degrees), Paint.STEEL)
    handle = spline(
        [(x + 240, y - 6), (x + 300, y - 14), (x + 380, y - 10), (x + 380, y + 9), (x + 300, y + 12), (x + 240, y + 5)],
        True,
    )
    canvas.poly(turned(handle, tip, degrees), Paint.CEDAR)


def scraper(canvas: Canvas, middle: Point, lean: float) -> None:
    """A cabinet scraper: a plate of steel, held upright and leaning."""
    x, y = middle
    canvas.poly(turned(box(x - 74, y - 78, x + 74, y), middle, lean), Paint.STEEL)
    canvas.line(turned([(x - 74, y - 3), (x + 74, y - 3)], middle, lean), Paint.PAPER, 2)
    canvas.line(turned([(x - 60, y - 66), (x + 60, y - 66)], middle, lean), Paint.STEEL_DARK, 1.4)


def clamp(canvas: Canvas, x: float, top: float, bottom: float, turn: float, colour: Colour = Paint.CLOTH) -> None:
    """A deep clamp seen from the front, from its screw above `top` to its jaw under `bottom`."""
    canvas.rect(x - 9, top - 150, x + 9, top - 34, colour)
    canvas.rect(x - 5, top - 60, x + 5, top - 12, Paint.STEEL)
    for i in range(5):
        y = top - 56 + i * 9
        canvas.line([(x - 5, y + 3), (x + 5, y)], Paint.STEEL_DARK, 1.2)
    canvas.rect(x - 20, top - 12, x + 20, top, Paint.STEEL_DARK, radius=3)
    half = 26 * math.cos(math.radians(turn))
    canvas.line([(x - half, top - 96), (x + half, top - 96)], Paint.INK, 9)
    canvas.line([(x - half, top - 96), (x + half, top - 96)], Paint.CEDAR, 6)
    canvas.rect(x - 22, bottom, x + 22, bottom + 16, colour, radius=4)
    canvas.rect(x - 9, bottom + 16, x + 9, bottom + 40, colour)


def dial(
    canvas: Canvas,
    middle: Point,
    radius: float,
    low: float,
    high: float,
    value: float,
    step: float,
    unit: str,
    hot: float | None = None,
) -> None:
    """A round gauge with a needle; what lies above `hot` is marked."""

    def angle(reading: float) -> float:
        return math.radians(225 - 270 * (reading - low) / (high - low))

    def rim(reading: float, at: float) -> Point:
        return middle[0] + radius * at * math.cos(angle(reading)), middle[1] - radius * at * math.sin(angle(reading))

    canvas.disc(middle[0] + 4, middle[1] + 6, radius, Paint.SHADE, None)
    canvas.disc(*middle, radius, Paint.BRASS)
    canvas.disc(*middle, radius * 0.9, Paint.BONE)
    if hot is not None:
        canvas.line([rim(hot + (high - hot) * i / 20, 0.82) for i in range(21)], Paint.HOT, 5)
    reading = low
    while reading <= high + 1e-9:
        canvas.line([rim(reading, 0.76), rim(reading, 0.88)], Paint.INK, 2)
        canvas.text(*rim(reading, 0.6), f"{reading:g}", radius * 0.17, Paint.INK, "mm")
        reading += step
    canvas.text(middle[0], middle[1] + radius * 0.72, unit, radius * 0.2, Paint.PENCIL, "mm")
    canvas.line([rim(value, -0.14), rim(value, 0.78)], Paint.HOT, 4)
    canvas.disc(*middle, radius * 0.08, Paint.INK)


def clock(canvas: Canvas, middle: Point, radius: float, minutes: float) -> None:
    """A wall clock that shows so many minutes past twelve."""
    canvas.disc(middle[0] + 4, middle[1] + 6, radius, Paint.SHADE, None)
    canvas.disc(*middle, radius, Paint.ROSEWOOD)
    canvas.disc(*middle, radius * 0.88, Paint.BONE)

    def hand(turns: float, at: float) -> Point:
        return (
            middle[0] + radius * at * math.sin(2 * math.pi * turns),
            middle[1] - radius * at * math.cos(2 * math.pi * turns),
        )

    for hour in range(12):
        canvas.line([hand(hour / 12, 0.74), hand(hour / 12, 0.84)], Paint.INK, 3 if hour % 3 == 0 else 1.4)
    canvas.line([middle, hand(minutes / 720, 0.46)], Paint.INK, 5)
    canvas.line([middle, hand(minutes / 60, 0.7)], Paint.INK, 3)
    canvas.disc(*middle, radius * 0.06, Paint.BRASS)


def router(canvas: Canvas, middle: Point) -> None:
    """A small router from above, with its two handles."""
    x, y = middle
    for side in (-1, 1):
        canvas.line([(x, y), (x + side * 92, y)], Paint.INK, 15)
        canvas.line([(x, y), (x + side * 92, y)], Paint.STEEL_DARK, 11)
        canvas.disc(x + side * 98, y, 19, Paint.CEDAR)
    canvas.disc(x, y, 62, (206, 214, 220))
    canvas.disc(x, y, 40, Paint.CLOTH)
    canvas.disc(x, y, 22, Paint.STEEL)
    canvas.disc(x, y, 9, Paint.INK)


def glue_pot(canvas: Canvas, foot: Point) -> None:
    """A jar of glue in a pot of hot water."""
    x, y = foot
    canvas.rect(x - 92, y - 104, x + 92, y, Paint.STEEL, radius=14)
    canvas.rect(x - 104, y - 116, x + 104, y - 98, Paint.STEEL_DARK, radius=6)
    canvas.rect(x - 46, y - 168, x + 46, y - 116, Paint.BONE, radius=6)
    canvas.rect(x - 42, y - 150, x + 42, y - 117, Paint.GLUE, None)
    for side in (-1, 1):
        canvas.rect(x + side * 104 - 8, y - 78, x + side * 104 + 8, y - 50, Paint.STEEL_DARK, radius=5)


def brush(canvas: Canvas, tip: Point, degrees: float) -> None:
    """A glue brush."""
    x, y = tip
    canvas.poly(turned(box(x - 8, y - 200, x + 8, y - 56), tip, degrees), Paint.CEDAR)
    canvas.poly(turned(box(x - 12, y - 62, x + 12, y - 36), tip, degrees), Paint.BRASS)
    canvas.poly(turned([(x - 12, y - 36), (x + 12, y - 36), (x + 7, y), (x - 7, y)], tip, degrees), Paint.GLUE)


def straightedge(canvas: Canvas, left: float, right: float, y: float) -> None:
    """A steel straightedge from the side, its working edge at `y`."""
    canvas.rect(left, y - 34, right, y, Paint.STEEL)
    canvas.line([(left + 10, y - 26), (right - 10, y - 26)], Paint.PAPER, 1.6)
    canvas.disc(right - 26, y - 17, 6, Paint.PAPER)


def file(canvas: Canvas, left: float, y: float) -> None:
    """A flat file from the side, its teeth at `y`."""
    canvas.rect(left, y - 14, left + 250, y, Paint.STEEL_DARK)
    for i in range(30):
        canvas.line([(left + 6 + i * 8, y), (left + 11 + i * 8, y - 5)], Paint.STEEL, 1)
    canvas.poly(
        spline(
            [
                (left + 250, y - 14),
                (left + 300, y - 22),
                (left + 372, y - 16),
                (left + 372, y + 2),
                (left + 300, y + 8),
                (left + 250, y),
            ],
            True,
        ),
        Paint.CEDAR,
    )
