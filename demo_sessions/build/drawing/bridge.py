"""The bridge: from above, cut through, and along its length.

Sizes are millimetres. Seen from above the strings come from the top of the sheet, in a cut from the left.
"""

from __future__ import annotations

from typing import Literal

from demo_sessions.build.drawing.canvas import Canvas, Paint, Point, box, spline, turned

Slot = Literal["old", "filled", "pencilled", "new", "saddle"]

LENGTH, BREADTH, THICK = 152.0, 38.0, 8.7
OUTLINE = ((-76, -9), (-52, -11), (-40, -15), (40, -15), (52, -11), (76, -9))
BELLY = ((76, 10), (52, 12), (36, 18), (0, 22), (-36, 18), (-52, 12), (-76, 10))
SLOT_LEAN = 3.0
"""Degrees."""


def footprint(middle: Point, px: float, grow: float = 0.0) -> list[Point]:
    """Outline of the bridge from above."""
    rim = [*OUTLINE, *BELLY]
    grown = [(x + (grow if x > 0 else -grow if x < 0 else 0), y + (grow if y > 0 else -grow)) for x, y in rim]
    return [(middle[0] + x * px, middle[1] + y * px) for x, y in grown]


def from_above(canvas: Canvas, middle: Point, px: float, slot: Slot, pins: bool = True) -> None:
    """The bridge from above, its front edge up, bass side to the left."""
    canvas.poly([(x + 5, y + 7) for x, y in footprint(middle, px)], Paint.SHADE, None)
    canvas.grained(footprint(middle, px), Paint.EBONY, Paint.EBONY_GRAIN, gap=5)
    for i in range(6):
        x, y = middle[0] + (-27.5 + 11 * i) * px, middle[1] + (9 - 0.5 * i) * px
        canvas.disc(x, y, 2.6 * px, Paint.BONE if pins else (22, 18, 20))
        if pins:
            canvas.disc(x, y, 0.9 * px, Paint.TEAL, None)
    slot_at = (middle[0], middle[1] - 5 * px)
    if slot == "old":
        canvas.poly(_slot(slot_at, px, 2.4), (20, 16, 18), Paint.PENCIL)
    elif slot in ("filled", "pencilled"):
        canvas.poly(_slot(slot_at, px, 2.4), (64, 55, 58), Paint.PENCIL, 1.0)
    else:
        fill = Paint.BONE if slot == "saddle" else (16, 12, 14)
        canvas.poly(_slot(slot_at, px, 3.2), fill, Paint.PAPER if slot == "new" else Paint.INK)
    if slot == "pencilled":
        for edge in (-1.6, 1.6):
            ends = turned(
                [(slot_at[0] - 37 * px, slot_at[1] + edge * px), (slot_at[0] + 37 * px, slot_at[1] + edge * px)],
                slot_at,
                -SLOT_LEAN,
            )
            canvas.dashed(ends[0], ends[1], Paint.PAPER, 1.6)


def slot_end(middle: Point, px: float, treble: bool) -> Point:
    """Where the slot ends on one side."""
    x = 37 * px * (1 if treble else -1)
    slot_at = (middle[0], middle[1] - 5 * px)
    return turned([(slot_at[0] + x, slot_at[1])], slot_at, -SLOT_LEAN)[0]


def _slot(middle: Point, px: float, wide: float) -> list[Point]:
    half, long = wide * px / 2, 37 * px
    return turned(box(middle[0] - long, middle[1] - half, middle[0] + long, middle[1] + half), middle, -SLOT_LEAN)


def soundboard(canvas: Canvas, left: float, right: float, top: float) -> None:
    """The top of the guitar cut through, with the bridge plate under it."""
    canvas.grained(box(left, top, right, top + 30), Paint.SPRUCE, Paint.SPRUCE_GRAIN, gap=6)


def cut_through(
    canvas: Canvas,
    front: Point,
    px: float,
    lift: float = 0.0,
    saddle: float | None = 4.0,
    slot: float | None = 4.8,
    strung: bool = True,
    plate: bool = True,
) -> list[Point]:
    """The bridge cut across, its front lower corner at `front`; gives its outline.

    `lift` is degrees that the back edge stands up, `saddle` the millimetres of saddle above the bridge (none without),
    `slot` the depth of its slot (none while there is no slot). Where it is not `strung`, string and pin are out.
    """
    x, y = front

    def place(points: list[Point]) -> list[Point]:
        return turned([(x + a * px, y + b * px) for a, b in points], front, -lift)

    if plate:
        canvas.grained(box(x - 8 * px, y + 30, x + 46 * px, y + 30 + 2.4 * px), Paint.CARD, Paint.CEDAR, gap=6)
    body = place(spline_top())
    canvas.grained(body, Paint.EBONY, Paint.EBONY_GRAIN, gap=6)
    if slot is not None:
        canvas.poly(place(box(7, -THICK - 0.3, 10.2, -THICK + slot)), (20, 16, 18), Paint.PENCIL, 1)
    if saddle is not None:
        tip = -THICK - saddle
        canvas.poly(
            place([(7, -THICK + 4.8), (7, tip + 1), (8, tip), (9.4, tip), (10.2, tip + 1), (10.2, -THICK + 4.8)]),
            Paint.BONE,
        )
    if strung:
        canvas.poly(place([(24, -THICK - 2.6), (28, -THICK - 2.6), (27, 10), (25, 10)]), Paint.BONE)
        canvas.poly(place([(23, -THICK - 3.8), (29, -THICK - 3.8), (29, -THICK - 2), (23, -THICK - 2)]), Paint.BONE)
    if strung and saddle is not None:
        run = place([(8.6, -THICK - saddle - 0.3), (23.6, -THICK - 0.3), (24.6, 6)])
        canvas.line([(0, run[0][1] + 8), *run], Paint.BRASS, 3.2)
    return body


def spline_top() -> list[Point]:
    """Outline of the bridge cut across: flat below, its back edge sloping down."""
    return [
        (0, 0),
        (0, -7.4),
        (1.4, -THICK),
        (29, -THICK),
        *spline([(31, -8.5), (36, -6), (BREADTH, -2.6)], False),
        (BREADTH, 0),
    ]


def along(canvas: Canvas, middle: Point, px: float, saddle: bool = False) -> None:
    """The bridge from its front, standing on the top at `middle`."""
    half = LENGTH / 2
    rise = [
        (-half, 0),
        (-half, -3),
        (-half + 22, -4),
        (-half + 34, -THICK),
        (half - 34, -THICK),
        (half - 22, -4),
        (half, -3),
        (half, 0),
    ]
    if saddle:
        crown = spline([(-37, -THICK), (-36, -THICK - 3), (0, -THICK - 5), (36, -THICK - 2.4), (37, -THICK)], False)
        canvas.poly([(middle[0] + x * px, middle[1] + y * px) for x, y in crown], Paint.BONE)
    canvas.grained([(middle[0] + x * px, middle[1] + y * px) for x, y in rise], Paint.EBONY, Paint.EBONY_GRAIN, gap=5)
