"""The pictures that a script can name."""

from __future__ import annotations

from demo_sessions.build.scenes import gluing, measuring, opening, removing, settling, slotting
from demo_sessions.build.scenes.scene import Scene

SCENES: dict[str, Scene] = {
    name: scene
    for room in (opening, measuring, removing, slotting, gluing, settling)
    for name, scene in room.SCENES.items()
}
