"""One picture of a film: what stands still in it, and what moves."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from demo_sessions.build.drawing.canvas import Canvas

Still = Callable[[Canvas], None]
Moving = Callable[[Canvas, float, float], None]


@dataclass(frozen=True, slots=True)
class Scene:
    """A picture with its big label. Both drawers get the sheet; the moving one also the seconds since the scene
    began and how much of the scene has gone by, 0..1."""

    label: str
    view: str
    still: Still | None = None
    moving: Moving | None = None
    lettered: bool = True
    """False for title cards, which have no label below."""
