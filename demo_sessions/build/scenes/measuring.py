"""What was found: string height, the gap under the bridge, its thickness, the neck, the humidity."""

from __future__ import annotations

from functools import partial

from demo_sessions.build.drawing import bridge, guitar, marks, tools
from demo_sessions.build.drawing.canvas import WIDTH, Canvas, Colour, Paint
from demo_sessions.build.scenes.scene import Scene

FRONT = (236.0, 262.0)
PX = 9.5
SIXTY_FOURTH = 13.0
"""Pixels, in the close view of the twelfth fret."""
BOARD = 292.0


def _string_height(canvas: Canvas, sixty_fourths: int, words: str, string: Colour, thick: float) -> None:
    guitar.neck_side(canvas, -20, WIDTH + 20, BOARD)
    for x in (118, 427, 720):
        guitar.fret(canvas, x, BOARD, 44, 26)
    y = BOARD - 26 - sixty_fourths * SIXTY_FOURTH
    canvas.line([(0, y + 9), (WIDTH, y - 9)], string, thick)
    marks.dimension(canvas, (427, y + thick / 2), (427, BOARD - 26), words, 64, 34)
    marks.named(canvas, (410, BOARD - 12), (180, 372), "12th fret")
    marks.named(canvas, (120, y + 6), (60, 56), "string")


def _section(canvas: Canvas, lift: float = 0.0) -> None:
    bridge.soundboard(canvas, 0, WIDTH, FRONT[1])
    bridge.cut_through(canvas, FRONT, PX, lift)


def _lifted(canvas: Canvas) -> None:
    _section(canvas, 2.6)
    marks.named(canvas, (250, 222), (70, 120), "bridge")
    marks.named(canvas, (150, 278), (40, 340), "spruce top")
    marks.named(canvas, (318, 136), (150, 64), "saddle")


def _feeler_in(canvas: Canvas, seconds: float, _: float) -> None:
    reach = min(1.0, seconds / 2.5)
    x = FRONT[0] + bridge.BREADTH * PX + 90 - 142 * reach
    tools.feeler(canvas, (x, FRONT[1] - 6), -1.2, 6)
    if reach == 1.0:
        marks.chip(canvas, (700, 206), "0.012 in feeler", 26, Paint.TEAL)


def _thick(canvas: Canvas) -> None:
    _section(canvas)
    top = FRONT[1] - bridge.THICK * PX
    x = FRONT[0] + 18 * PX
    marks.dimension(canvas, (x, top), (x, FRONT[1]), "11/32 in", 270, 32)
    marks.named(canvas, (300, 300), (80, 356), "bridge plate")


def _relief(canvas: Canvas) -> None:
    face = guitar.neck_side(canvas, 40, 810, 226, 16)
    for number in range(1, 15):
        x = 40 + 770 * guitar.fret_from_nut(number) / guitar.fret_from_nut(15)
        guitar.fret(canvas, x, face[min(24, round((x - 40) / 770 * 24))][1], 12, 9)
    tools.straightedge(canvas, 52, 800, 217)
    marks.named(canvas, (430, 226), (520, 366), "relief: the hollow under the edge")
    marks.named(canvas, (120, 200), (70, 120), "straightedge")


def _hygrometer(value: float, canvas: Canvas, seconds: float, _: float) -> None:
    settle = value + 14 * max(0.0, 1 - seconds / 1.2) ** 2
    tools.dial(canvas, (300, 202), 158, 0, 100, settle, 20, "%")
    canvas.text(520, 186, f"{value:g} %", 72, Paint.TEAL, "lm", 1.4)
    canvas.text(524, 244, "on the hygrometer", 22, Paint.PENCIL)


def _action(sixty_fourths: int, words: str, side: str, canvas: Canvas) -> None:
    string, thick = (Paint.BRASS, 9.0) if side == "bass" else (Paint.STEEL_DARK, 4.0)
    _string_height(canvas, sixty_fourths, words, string, thick)


def _both_sides(canvas: Canvas, _: float, part: float) -> None:
    treble = part > 0.72
    _action(*((5, "5/64 in", "treble") if treble else (6, "6/64 in", "bass")), canvas)
    marks.chip(canvas, (690, 74), "treble side" if treble else "bass side", 28, Paint.ROSEWOOD)


SCENES = {
    "action-high": Scene("String height, bass side", "at the 12th fret", partial(_action, 9, "9/64 in", "bass")),
    "action-high-treble": Scene(
        "String height, treble side", "at the 12th fret", partial(_action, 7, "7/64 in", "treble")
    ),
    "action-seven": Scene("String height, bass side", "at the 12th fret", partial(_action, 7, "7/64 in", "bass")),
    "action-six": Scene("String height, bass side", "at the 12th fret", partial(_action, 6, "6/64 in", "bass")),
    "action-low": Scene("String height now", "at the 12th fret", None, _both_sides),
    "action-treble": Scene("String height, treble side", "at the 12th fret", partial(_action, 5, "5/64 in", "treble")),
    "lifted": Scene("Back edge lifted", "cut through the bridge", _lifted, _feeler_in),
    "bridge-section": Scene("Bridge thickness", "cut through the bridge", _thick),
    "relief": Scene("Neck relief", "from the side, hollow drawn large", _relief),
    "humidity": Scene("Humidity in the shop", "", None, partial(_hygrometer, 48.0)),
    "humidity-case": Scene("Humidity in the case", "", None, partial(_hygrometer, 32.0)),
}
