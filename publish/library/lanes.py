"""Draws figures on a scale, a lane a phase, with the usual band behind."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from extract.record import Phase
from extract.units import unit_named
from publish.context.plots import Caption, Plot, Spot
from publish.library.common import Ends, Scale, middle
from publish.library.graduations import Graduated, graduate
from publish.wording import PHASES, count

_STACK = 3

Placed = Sequence[tuple[Phase, Ends]]


@dataclass(frozen=True, slots=True)
class Frame:
    """The measures of a drawing, in its own units."""

    width: int = 400
    left: int = 96
    right: int = 20
    top: int = 8
    foot: int = 36
    lane: float = 34
    """Height of a lane."""

    def bottom(self, lanes: int) -> float:
        """Where the scale lies."""
        return self.top + self.lane * lanes

    def x(self, ruled: Graduated, value: float) -> float:
        """Place of a figure along the scale."""
        return round(self.left + (self.width - self.left - self.right) * ruled.part(value), 1)

    def y(self, lane: int) -> float:
        """The middle of a lane."""
        return round(self.top + self.lane * lane + self.lane / 2, 1)


WIDE = Frame()


def draw_lanes(
    what: str, placed: Placed, scale: Scale, bands: Sequence[tuple[float, float]], frame: Frame = WIDE
) -> Plot | None:
    """The plot; None where there is no figure. `bands` are in the unit of the scale, and lie on it whole."""
    if not placed:
        return None
    lanes = lanes_of(placed)
    ruled = graduated(placed, scale, bands)
    bottom = round(frame.bottom(len(lanes)), 1)
    unit = unit_named(scale.unit).symbol
    behind = ", the usual range behind" if bands else ""
    half = frame.lane / 2 - 3
    return Plot(
        label=f"{what}: {count(len(placed), 'figure')} on a scale in {unit}{behind}; the table has them",
        width=frame.width,
        height=round(bottom + frame.foot),
        upright=False,
        bands=tuple(
            (
                frame.x(ruled, low),
                frame.top,
                round(frame.x(ruled, high) - frame.x(ruled, low), 1),
                round(bottom - frame.top, 1),
            )
            for low, high in bands
        ),
        lines=f"M{frame.left} {bottom}H{frame.width - frame.right}"
        + "".join(f"M{frame.x(ruled, at)} {bottom}v6" for at, _ in ruled.marks()),
        rule="".join(
            f"M{frame.x(ruled, _middle(placed, phase))} {round(frame.y(at) - half, 1)}v{2 * half:g}"
            for at, phase in enumerate(lanes)
            if sum(one == phase for one, _ in placed) > 1
        ),
        # Of very many figures, those that end up on the same spot are drawn once.
        spots=tuple(dict.fromkeys(spots_of(placed, ruled, frame))),
        captions=(
            *(Caption(frame.left - 12, frame.y(at) + 4, PHASES[phase], "end") for at, phase in enumerate(lanes)),
            *(Caption(frame.x(ruled, at), bottom + 18, text, "middle") for at, text in ruled.marks()),
            Caption(frame.width - frame.right, bottom + 32, unit, "end"),
        ),
        key=tuple((phase, PHASES[phase]) for phase in lanes),
    )


def lanes_of(placed: Placed) -> list[Phase]:
    """The phases that have a figure, in their order from top to bottom."""
    return [phase for phase in PHASES if any(one == phase for one, _ in placed)]


def graduated(placed: Placed, scale: Scale, bands: Sequence[tuple[float, float]]) -> Graduated:
    """The scale on which all figures and bands lie."""
    sizes = [float(end) for _, ends in placed for end in (ends.low, ends.high)]
    return graduate([*sizes, *(end for band in bands for end in band)], halved=bool(scale.below))


def spots_of(placed: Placed, ruled: Graduated, frame: Frame = WIDE) -> list[Spot]:
    """The spot of each figure, in their order; those that are equal lie a little above and below one another."""
    lanes = lanes_of(placed)
    met: dict[tuple[Phase, float], int] = {}
    spots = []
    for phase, ends in placed:
        value = float(ends.value)
        again = met[phase, value] = met.get((phase, value), -1) + 1
        aside = min((again + 1) // 2 * _STACK, frame.lane / 2 - 8) * (1 if again % 2 else -1)
        low, high = frame.x(ruled, float(ends.low)), frame.x(ruled, float(ends.high))
        y = round(frame.y(lanes.index(phase)) + aside, 1)
        spots.append(Spot(round((low + high) / 2, 1), y, phase, round((high - low) / 2, 1)))
    return spots


def _middle(placed: Placed, phase: Phase) -> float:
    return float(middle(ends.value for one, ends in placed if one == phase))
