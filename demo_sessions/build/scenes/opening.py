"""Title cards, the whole guitar, and the list of what is left to do."""

from __future__ import annotations

import math

from demo_sessions.build.drawing import guitar, marks
from demo_sessions.build.drawing.canvas import HEIGHT, WIDTH, Canvas, Paint
from demo_sessions.build.scenes.scene import Scene, Still

NUT = (184.0, 203.0)
PX = 0.72


def _title(first: str, second: str, day: str) -> Still:
    def draw(canvas: Canvas) -> None:
        canvas.rect(0, 0, WIDTH, HEIGHT, Paint.INK, None)
        canvas.rect(22, 22, WIDTH - 22, HEIGHT - 22, Paint.PAPER, Paint.BRASS, 3, radius=10)
        guitar.front(canvas, (250, 158), 0.44)
        canvas.text(WIDTH / 2, 296, first, 46, Paint.INK, "mm", 1.0)
        canvas.text(WIDTH / 2, 343, second, 27, Paint.ROSEWOOD, "mm", 0.4)
        canvas.text(WIDTH / 2, 380, day, 19, Paint.PENCIL, "mm")
        canvas.rect(22, 404, WIDTH - 22, HEIGHT - 22, Paint.TEAL, None)
        words = "Invented guitar, invented people. The voice is a synthesiser's."
        canvas.text(WIDTH / 2, 431, words, 20, Paint.PAPER, "mm", 0.3)

    return draw


def _whole(canvas: Canvas) -> None:
    guitar.front(canvas, NUT, PX)


def _scale(canvas: Canvas) -> None:
    guitar.front(canvas, NUT, PX)
    nut, saddle = NUT[0], NUT[0] + guitar.SCALE * PX
    marks.dimension(canvas, (nut, NUT[1] - 20), (saddle, NUT[1] - 27), "25 1/2 in   648 mm", 138, 26)
    marks.named(canvas, (nut, NUT[1] + 18), (96, 318), "nut")
    marks.named(canvas, (saddle, NUT[1] + 27), (690, 372), "saddle")


def _lifting(canvas: Canvas, seconds: float, _: float) -> None:
    swell = 3 * math.sin(seconds * 3)
    x, y = NUT[0] + 657 * PX, NUT[1]
    canvas.disc(x, y, 72 + swell, None, Paint.HOT, 4)
    marks.chip(canvas, (x - 20, y - 96), "the bridge", 22, Paint.HOT)


def _note(heading: str, lines: tuple[str, ...]) -> Still:
    def draw(canvas: Canvas) -> None:
        canvas.rect(0, 0, WIDTH, marks.LABEL_TOP, Paint.CEDAR, None)
        for y in range(0, int(marks.LABEL_TOP), 67):
            canvas.line([(0, y), (WIDTH, y)], Paint.ROSEWOOD, 1)
        canvas.rect(186, 44, 680, 372, Paint.SHADE, None)
        canvas.rect(176, 34, 670, 362, Paint.BONE)
        canvas.disc(423, 48, 11, Paint.HOT)
        canvas.text(212, 104, heading, 34, Paint.HOT, weight=0.7)
        for i, line in enumerate(lines):
            y = 168 + 62 * i
            canvas.rect(212, y - 13, 238, y + 13, None, Paint.INK, 2)
            canvas.text(256, y, line, 26)
            canvas.line([(212, y + 30), (634, y + 30)], Paint.RULING, 1)

    return draw


SCENES = {
    "title": Scene(
        "", "", _title("Old Bustard", "a lifted bridge and a new saddle slot", "14 March 2025"), lettered=False
    ),
    "title-settled": Scene("", "", _title("Old Bustard", "how the bridge has settled", "2 May 2025"), lettered=False),
    "guitar": Scene("Bridge coming off", "Old Bustard, from the front", _whole, _lifting),
    "guitar-back": Scene("Old Bustard, seven weeks on", "from the front", _whole),
    "scale": Scene("Scale length", "from the front", _scale),
    "to-do": Scene(
        "Left for later", "", _note("Still to do", ("third fret: file, next week", "that dark line: a better lamp"))
    ),
    "to-do-settled": Scene(
        "Left for later", "", _note("Still to do", ("a humidifier for the case", "measure again in the fall"))
    ),
}
