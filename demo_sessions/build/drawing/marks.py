"""What stands beside a drawing: dimensions as draughtsmen give them, leaders with a name, the label below."""

from __future__ import annotations

import math

from demo_sessions.build.drawing.canvas import HEIGHT, WIDTH, Canvas, Colour, Paint, Point

LABEL_TOP = 404
"""Drawings end here; the label lies below."""


def sheet() -> Canvas:
    """Empty drawing paper with a faint ruling."""
    canvas = Canvas()
    for x in range(0, WIDTH, 28):
        canvas.line([(x, 0), (x, LABEL_TOP)], Paint.RULING, 0.7)
    for y in range(0, LABEL_TOP, 28):
        canvas.line([(0, y), (WIDTH, y)], Paint.RULING, 0.7)
    return canvas


def label(canvas: Canvas, words: str, view: str) -> None:
    """The big label under a drawing, and which view it is."""
    canvas.rect(0, LABEL_TOP, WIDTH, HEIGHT, Paint.INK, None)
    canvas.rect(0, LABEL_TOP, WIDTH, LABEL_TOP + 4, Paint.BRASS, None)
    canvas.text(26, 444, words, 30, Paint.PAPER, weight=0.5)
    if view:
        canvas.text(WIDTH - 24, 446, view, 16, Paint.SHADE, "rm")


def dimension(
    canvas: Canvas, start: Point, end: Point, words: str, away: float, size: float = 24, colour: Colour = Paint.TEAL
) -> None:
    """A dimension line between two points, `away` pixels to the left of the way from one to the other.

    Extension lines run out from the points, arrows point at them, the figure stands on the line.
    """
    length = math.dist(start, end)
    along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    aside = (along[1], -along[0])
    a = (start[0] + aside[0] * away, start[1] + aside[1] * away)
    b = (end[0] + aside[0] * away, end[1] + aside[1] * away)
    over = math.copysign(6, away)
    for near, far in ((start, a), (end, b)):
        canvas.line([near, (far[0] + aside[0] * over, far[1] + aside[1] * over)], colour, 1)
    if length > 46:
        canvas.line([a, b], colour, 1.6)
        arrow(canvas, a, (-along[0], -along[1]), colour)
        arrow(canvas, b, along, colour)
    else:
        for tip, outward in ((a, -1), (b, 1)):
            tail = (tip[0] + along[0] * 26 * outward, tip[1] + along[1] * 26 * outward)
            canvas.line([tail, tip], colour, 1.6)
            arrow(canvas, tip, (-along[0] * outward, -along[1] * outward), colour)
    _figure(canvas, a, b, words, size, colour, upright=abs(along[1]) > abs(along[0]), away=away)


def arrow(canvas: Canvas, tip: Point, way: Point, colour: Colour = Paint.TEAL, size: float = 10) -> None:
    """An arrow head at `tip` that points along `way` (a unit vector)."""
    back = (tip[0] - way[0] * size, tip[1] - way[1] * size)
    side = (-way[1] * size * 0.32, way[0] * size * 0.32)
    canvas.poly([tip, (back[0] + side[0], back[1] + side[1]), (back[0] - side[0], back[1] - side[1])], colour, None)


def named(canvas: Canvas, at: Point, words_at: Point, words: str, size: float = 19) -> None:
    """A leader from a thing to its name."""
    width = canvas.text_width(words, size)
    right = words_at[0] >= at[0]
    elbow = (words_at[0] - 6, words_at[1]) if right else (words_at[0] + width + 6, words_at[1])
    canvas.line([at, elbow], Paint.PENCIL, 1.3)
    canvas.disc(at[0], at[1], 3, Paint.PENCIL, None)
    chip(canvas, (words_at[0] + width / 2, words_at[1]), words, size, Paint.INK)


def chip(canvas: Canvas, middle: Point, words: str, size: float, colour: Colour) -> None:
    """Words on a patch of paper, so that they can be read over a drawing."""
    half = canvas.text_width(words, size) / 2 + 5
    canvas.rect(
        middle[0] - half,
        middle[1] - size * 0.62,
        middle[0] + half,
        middle[1] + size * 0.62,
        Paint.PAPER,
        None,
        radius=4,
    )
    canvas.text(middle[0], middle[1], words, size, colour, "mm", 0.4)


def _figure(
    canvas: Canvas, a: Point, b: Point, words: str, size: float, colour: Colour, upright: bool, away: float
) -> None:
    if not words:
        return
    middle = ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)
    width = canvas.text_width(words, size)
    if math.dist(a, b) > (size * 1.3 if upright else width) + 40:
        chip(canvas, middle, words, size, colour)
    elif upright:
        rightwards = (b[1] > a[1]) == (away > 0)
        aside = (width / 2 + 14) * (1 if rightwards else -1)
        chip(canvas, (middle[0] + aside, middle[1]), words, size, colour)
    else:
        above = (b[0] > a[0]) == (away > 0)
        chip(canvas, (middle[0], middle[1] + size * (-0.95 if above else 0.95)), words, size, colour)
