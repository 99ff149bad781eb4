"""A sheet to draw on, twice as fine as the film so that edges come out smooth.

Coordinates are pixels of the film, x to the right and y down, from the upper left corner.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from functools import lru_cache
from typing import Literal

from PIL import Image, ImageDraw, ImageFont

WIDTH, HEIGHT = 854, 480
FINER = 2

Point = tuple[float, float]
Colour = tuple[int, int, int]


class Paint:
    """The colours of the bench."""

    PAPER: Colour = (245, 237, 221)
    RULING: Colour = (236, 226, 205)
    SHADE: Colour = (222, 209, 184)
    INK: Colour = (44, 40, 48)
    PENCIL: Colour = (118, 108, 98)
    SPRUCE: Colour = (232, 200, 143)
    SPRUCE_GRAIN: Colour = (214, 177, 116)
    CEDAR: Colour = (198, 138, 88)
    ROSEWOOD: Colour = (104, 58, 46)
    EBONY: Colour = (52, 45, 48)
    EBONY_GRAIN: Colour = (74, 64, 66)
    BONE: Colour = (250, 245, 228)
    STEEL: Colour = (158, 170, 181)
    STEEL_DARK: Colour = (98, 110, 122)
    BRASS: Colour = (205, 164, 78)
    GLUE: Colour = (222, 158, 52)
    HOT: Colour = (196, 66, 42)
    TEAL: Colour = (28, 106, 112)
    FOIL: Colour = (212, 217, 221)
    CARD: Colour = (206, 174, 130)
    CLOTH: Colour = (66, 84, 116)


Anchor = Literal["lm", "mm", "rm", "ls", "ms", "la", "ma"]


@lru_cache
def font(size: float) -> ImageFont.FreeTypeFont:
    """The typeface that comes with Pillow, so that no build depends on the machine's own."""
    found = ImageFont.load_default(size * FINER)
    if not isinstance(found, ImageFont.FreeTypeFont):
        raise RuntimeError("this Pillow was built without FreeType; install the wheel from PyPI")
    return found


def spline(points: Sequence[Point], closed: bool, steps: int = 12) -> list[Point]:
    """A smooth line through the points (Catmull-Rom)."""
    count = len(points)
    curve: list[Point] = []
    for i in range(count if closed else count - 1):
        around = [i - 1, i, i + 1, i + 2]
        a, b, c, d = (points[k % count if closed else min(max(k, 0), count - 1)] for k in around)
        for step in range(steps):
            curve.append(_between(a, b, c, d, step / steps))
    if not closed:
        curve.append(points[-1])
    return curve


def _between(a: Point, b: Point, c: Point, d: Point, t: float) -> Point:
    def one(p: float, q: float, r: float, s: float) -> float:
        return 0.5 * (2 * q + (r - p) * t + (2 * p - 5 * q + 4 * r - s) * t**2 + (3 * q - p - 3 * r + s) * t**3)

    return one(a[0], b[0], c[0], d[0]), one(a[1], b[1], c[1], d[1])


def turned(points: Sequence[Point], about: Point, degrees: float) -> list[Point]:
    """The points turned clockwise about one of them."""
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    return [
        (about[0] + (x - about[0]) * cos - (y - about[1]) * sin, about[1] + (x - about[0]) * sin + (y - about[1]) * cos)
        for x, y in points
    ]


def box(x0: float, y0: float, x1: float, y1: float) -> list[Point]:
    """Corners of a rectangle."""
    return [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]


class Canvas:
    """The sheet."""

    def __init__(self, image: Image.Image | None = None) -> None:
        self.image = image or Image.new("RGB", (WIDTH * FINER, HEIGHT * FINER), Paint.PAPER)
        self._draw = ImageDraw.Draw(self.image)

    def copy(self) -> Canvas:
        """Another sheet with the same drawing."""
        return Canvas(self.image.copy())

    def finished(self) -> Image.Image:
        """The drawing at the size of the film."""
        return self.image.reduce(FINER)

    def poly(
        self, points: Sequence[Point], fill: Colour | None, edge: Colour | None = Paint.INK, width: float = 1.6
    ) -> None:
        """A filled shape with an outline."""
        scaled = self._scaled(points)
        if fill is not None:
            self._draw.polygon(scaled, fill=fill)
        if edge is not None:
            self._draw.line([*scaled, *scaled[:2]], fill=edge, width=self._width(width), joint="curve")

    def grained(
        self, points: Sequence[Point], fill: Colour, grain: Colour, gap: float = 5, upright: bool = False, seed: int = 1
    ) -> None:
        """A piece of wood: a filled shape with lines of grain across it, and an outline."""
        layer = Image.new("RGB", self.image.size, fill)
        pen = ImageDraw.Draw(layer)
        dice = random.Random(seed)
        xs, ys = [x for x, _ in points], [y for _, y in points]
        low, high = (min(xs), max(xs)) if upright else (min(ys), max(ys))
        start, stop = (min(ys), max(ys)) if upright else (min(xs), max(xs))
        at = low
        while at < high:
            at += gap * dice.uniform(0.4, 1.5)
            sway = dice.uniform(-1.2, 1.2)
            ends = [(start, at), ((start + stop) / 2, at + sway), (stop, at)]
            line = [(b, a) if upright else (a, b) for a, b in ends]
            pen.line(self._scaled(line), fill=grain, width=self._width(dice.choice((0.5, 0.8, 1.2))))
        mask = Image.new("L", self.image.size, 0)
        ImageDraw.Draw(mask).polygon(self._scaled(points), fill=255)
        self.image.paste(layer, mask=mask)
        self.poly(points, None)

    def line(self, points: Sequence[Point], colour: Colour = Paint.INK, width: float = 1.6) -> None:
        """A line through the points."""
        self._draw.line(self._scaled(points), fill=colour, width=self._width(width), joint="curve")

    def dashed(self, start: Point, end: Point, colour: Colour = Paint.INK, width: float = 1.4, dash: float = 6) -> None:
        """A broken line."""
        length = math.dist(start, end)
        pieces = max(1, int(length / dash))
        for i in range(0, pieces, 2):
            ends = [i / pieces, min(1.0, (i + 1) / pieces)]
            self.line([_along(start, end, t) for t in ends], colour, width)

    def rect(
        self,
        x0: float,
        y0: float,
        x1: float,
        y1: float,
        fill: Colour | None,
        edge: Colour | None = Paint.INK,
        width: float = 1.6,
        radius: float = 0,
    ) -> None:
        """A rectangle, its corners rounded where `radius` is given."""
        self._draw.rounded_rectangle(
            [x0 * FINER, y0 * FINER, x1 * FINER, y1 * FINER],
            radius=radius * FINER,
            fill=fill,
            outline=edge,
            width=self._width(width),
        )

    def disc(
        self,
        x: float,
        y: float,
        radius: float,
        fill: Colour | None,
        edge: Colour | None = Paint.INK,
        width: float = 1.6,
    ) -> None:
        """A circle."""
        corners = [(x - radius) * FINER, (y - radius) * FINER, (x + radius) * FINER, (y + radius) * FINER]
        self._draw.ellipse(corners, fill=fill, outline=edge, width=self._width(width))

    def text(
        self,
        x: float,
        y: float,
        words: str,
        size: float = 18,
        colour: Colour = Paint.INK,
        anchor: Anchor = "lm",
        weight: float = 0.0,
    ) -> None:
        """Words; `weight` thickens them by that many pixels."""
        self._draw.text(
            (x * FINER, y * FINER),
            words,
            font=font(size),
            fill=colour,
            anchor=anchor,
            stroke_width=weight * FINER / 2,
        )

    def text_width(self, words: str, size: float) -> float:
        """How wide the words are."""
        return font(size).getlength(words) / FINER

    @staticmethod
    def _scaled(points: Sequence[Point]) -> list[Point]:
        return [(x * FINER, y * FINER) for x, y in points]

    @staticmethod
    def _width(width: float) -> int:
        return max(1, round(width * FINER))


def _along(start: Point, end: Point, t: float) -> Point:
    return start[0] + (end[0] - start[0]) * t, start[1] + (end[1] - start[1]) * t
