"""Other jobs and other times: "when i did the tenor banjo i broke two hooks"."""

from __future__ import annotations

from extract.steps.scene import Scene


def history(scene: Scene) -> bool:
    """True where another job is being told of."""
    return scene.in_history
