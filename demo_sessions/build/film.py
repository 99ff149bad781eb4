"""The frames of a film: which picture stands while which line is said."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from PIL import Image

from demo_sessions.build.drawing import marks
from demo_sessions.build.drawing.canvas import Canvas
from demo_sessions.build.scenes import SCENES
from demo_sessions.build.scenes.scene import Scene
from demo_sessions.build.script import Script
from demo_sessions.build.sound import Recording

FPS = 8
FADE = 3
"""Frames over which one picture gives way to the next."""


@dataclass(frozen=True, slots=True)
class Shot:
    """A picture and the seconds for which it stands."""

    scene: Scene
    start: float
    end: float


def shots(script: Script, recording: Recording) -> list[Shot]:
    """The pictures of a film in order; neighbouring lines with the same picture share one.

    Raises `ValueError` where a line names no picture or one that isn't there.
    """
    found: list[Shot] = []
    start = 0.0
    for number, line in enumerate(script.line):
        if line.picture not in SCENES:
            raise ValueError(f"no picture is called {line.picture!r}: {line.say!r}")
        last = number + 1 == len(script.line)
        if last or script.line[number + 1].picture != line.picture:
            end = recording.duration if last else recording.lines[number].until
            found.append(Shot(SCENES[line.picture], start, end))
            start = end
    return found


def film(script: Script, recording: Recording) -> Iterator[Image.Image]:
    """Every frame, at `FPS` a second."""
    frames = 0
    before: Image.Image | None = None
    for shot in shots(script, recording):
        ground = still(shot.scene)
        plain = ground.finished()
        faded_from, before_frames = before, frames
        while frames / FPS < shot.end:
            seconds = max(0.0, frames / FPS - shot.start)
            frame = plain if shot.scene.moving is None else _moved(shot, ground, seconds)
            since = frames - before_frames + 1
            if faded_from is not None and since <= FADE:
                frame = Image.blend(faded_from, frame, since / (FADE + 1))
            before = frame
            frames += 1
            yield frame


def still(scene: Scene) -> Canvas:
    """A scene with nothing moving yet."""
    canvas = marks.sheet()
    if scene.still is not None:
        scene.still(canvas)
    if scene.lettered:
        marks.label(canvas, scene.label, scene.view)
    return canvas


def moved(scene: Scene, ground: Canvas, seconds: float, part: float) -> Image.Image:
    """A frame of a scene: so many seconds after it began, that part of it gone by."""
    canvas = ground.copy()
    if scene.moving is not None:
        scene.moving(canvas, seconds, part)
        if scene.lettered:
            marks.label(canvas, scene.label, scene.view)
    return canvas.finished()


def _moved(shot: Shot, ground: Canvas, seconds: float) -> Image.Image:
    return moved(shot.scene, ground, seconds, min(1.0, seconds / (shot.end - shot.start)))
