"""Sound from a microphone of this machine through PortAudio, with the optional package `sounddevice`."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING, Protocol

from capture.errors import SpokeshaveError

if TYPE_CHECKING:
    import sounddevice

RATE = 48_000
"""Samples a second: what sound cards run at by themselves."""

WIDTH = 2
"""Bytes a sample: 16-bit, the form that every reader of WAV knows."""


class MicrophoneError(SpokeshaveError):
    """A microphone that can't be used."""

    def __init__(self, problem: str, remedy: str) -> None:
        self.problem = problem
        self.remedy = remedy
        super().__init__(f"{problem}; {remedy}")


class SoundInput(Protocol):
    """Where sound comes from."""

    def read(self, frames: int) -> bytes:
        """The next `frames` samples: one channel at `RATE`, signed 16-bit, little end first. Waits for them."""
        ...


class _PortAudioInput:
    def __init__(self, stream: sounddevice.RawInputStream) -> None:
        self._stream = stream

    def read(self, frames: int) -> bytes:
        content, _ = self._stream.read(frames)
        return bytes(content)


@contextmanager
def open_microphone(named: str = "") -> Iterator[SoundInput]:
    """The usual microphone, or the one whose name holds `named`.

    Raises `MicrophoneError` where PortAudio is lacking, there is no such microphone, or it fails, also later on.
    """
    try:
        import sounddevice
    except ImportError as error:
        raise MicrophoneError(
            "a microphone can be used in the terminal only with the extra `mic`",
            "install `spokeshave[mic]`, or record on the page, without --mic",
        ) from error
    except OSError as error:
        raise MicrophoneError(
            "PortAudio is not installed on this machine",
            "install it (Debian: apt install libportaudio2), or record on the page, without --mic",
        ) from error
    try:
        stream = sounddevice.RawInputStream(
            samplerate=RATE, channels=1, dtype="int16", device=_device(sounddevice.query_devices(), named)
        )
        with stream:
            yield _PortAudioInput(stream)
    except sounddevice.PortAudioError as error:
        raise MicrophoneError(
            f"the microphone can't be used ({error})", "close what else uses it, or name another with --mic"
        ) from error


def _device(devices: sounddevice.DeviceList, named: str) -> int | None:
    inputs = [(int(one["index"]), str(one["name"])) for one in devices if one["max_input_channels"] > 0]
    if not inputs:
        raise MicrophoneError("there is no microphone", "plug one in, then run this again")
    if not named:
        return None
    hits = [index for index, name in inputs if named.casefold() in name.casefold()]
    if not hits:
        names = ", ".join(name for _, name in inputs)
        raise MicrophoneError(f"no microphone is called {named!r}", f"name one of: {names}")
    return hits[0]
