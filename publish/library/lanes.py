"""Draws figures on a scale, a lane a phase, with the usual band behind."""

from __future__ import annotations

from collections.abc import Sequence

from extract.record import Phase
from extract.units import unit_named
from publish.context.plots import Caption, Plot, Spot
from publish.library.common import Ends, Scale, middle
from publish.library.graduations import Graduated, graduate
from publish.wording import PHASES, count

WIDTH = 400
_LEFT, _RIGHT, _TOP, _LANE, _FOOT = 96, 20, 8, 34, 36
_STACK = 3

Placed = Sequence[tuple[Phase, Ends]]


def draw_lanes(what: str, placed: Placed, scale: Scale, bands: Sequence[tuple[float, float]]) -> Plot | None:
    """The plot; None where there is no figure. `bands` are in the unit of the scale, and lie on it whole."""
    if not placed:
        return None
    lanes = [phase for phase in PHASES if any(one == phase for one, _ in placed)]
    sizes = [float(end) for _, ends in placed for end in (ends.low, ends.high)]
    ruled = graduate([*sizes, *(end for band in bands for end in band)], halved=bool(scale.below))
    bottom = _TOP + _LANE * len(lanes)
    unit = unit_named(scale.unit).symbol
    behind = ", the usual range behind" if bands else ""
    return Plot(
        label=f"{what}: {count(len(placed), 'figure')} on a scale in {unit}{behind}; the table has them",
        width=WIDTH,
        height=bottom + _FOOT,
        upright=False,
        bands=tuple(
            (_x(ruled, low), _TOP, round(_x(ruled, high) - _x(ruled, low), 1), bottom - _TOP) for low, high in bands
        ),
        lines=f"M{_LEFT} {bottom}H{WIDTH - _RIGHT}"
        + "".join(f"M{_x(ruled, at)} {bottom}v6" for at, _ in ruled.marks()),
        rule="".join(f"M{_x(ruled, _middle(placed, phase))} {_y(at) - 14}v28" for at, phase in enumerate(lanes)),
        spots=_spots(placed, lanes, ruled),
        captions=(
            *(Caption(_LEFT - 12, _y(at) + 4, PHASES[phase], "end") for at, phase in enumerate(lanes)),
            *(Caption(_x(ruled, at), bottom + 18, text, "middle") for at, text in ruled.marks()),
            Caption(WIDTH - _RIGHT, bottom + 32, unit, "end"),
        ),
        key=tuple((phase, PHASES[phase]) for phase in lanes),
    )


def _x(ruled: Graduated, value: float) -> float:
    return round(_LEFT + (WIDTH - _LEFT - _RIGHT) * ruled.part(value), 1)


def _y(lane: int) -> float:
    return _TOP + _LANE * lane + _LANE / 2


def _middle(placed: Placed, phase: Phase) -> float:
    return float(middle(ends.value for one, ends in placed if one == phase))


def _spots(placed: Placed, lanes: Sequence[Phase], ruled: Graduated) -> tuple[Spot, ...]:
    """The figures; those that are equal lie a little above and below one another."""
    met: dict[tuple[Phase, float], int] = {}
    spots = []
    for phase, ends in placed:
        value = float(ends.value)
        again = met[phase, value] = met.get((phase, value), -1) + 1
        aside = min((again + 1) // 2 * _STACK, 9) * (1 if again % 2 else -1)
        low, high = _x(ruled, float(ends.low)), _x(ruled, float(ends.high))
        spots.append(
            Spot(round((low + high) / 2, 1), _y(lanes.index(phase)) + aside, phase, round((high - low) / 2, 1))
        )
    # Of very many figures, those that end up on the same spot are drawn once.
    return tuple(dict.fromkeys(spots))
