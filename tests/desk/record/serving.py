"""The capture page at work: the server as a process, and a browser whose microphone is a sound file."""

from __future__ import annotations

import signal
import socket
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

import psutil
from playwright.sync_api import BrowserContext, Page, Playwright

BEGAN = """
const start = MediaRecorder.prototype.start;
MediaRecorder.prototype.start = function (...more) {
  this.addEventListener("start", () => { window.began = Date.now() / 1000; });
  return start.apply(this, more);
};
"""
"""Notes by the clock of the machine when sound began to be recorded."""


@dataclass
class Server:
    """`spokeshave record` at work."""

    process: subprocess.Popen[str]
    address: str

    def kill(self) -> None:
        """As a power cut would end it."""
        self.process.send_signal(signal.SIGKILL)
        self.process.wait(10)


@contextmanager
def serving(shop: Path, *more: str) -> Iterator[Server]:
    """The command, with the address that it printed."""
    command = [sys.executable, "-m", "desk", "record", "--shop", str(shop), "--no-browser", *more]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True) as process:
        assert process.stdout is not None
        try:
            yield Server(process, process.stdout.readline().strip())
        finally:
            process.terminate()


@dataclass
class Window:
    """A browser with a profile of its own, which another one may open again."""

    context: BrowserContext
    profile: Path
    complaints: list[str] = field(default_factory=list)

    def open(self, address: str) -> Page:
        """The capture page, its microphone open."""
        page = self.context.new_page()
        page.add_init_script(BEGAN)
        page.on("pageerror", lambda error: self.complaints.append(str(error)))
        page.goto(address)
        return page

    def kill(self) -> None:
        """All its processes at once."""
        for one in psutil.Process().children(recursive=True):
            try:
                if any(str(self.profile) in word for word in one.cmdline()):
                    one.kill()
            except psutil.NoSuchProcess:
                continue


@contextmanager
def window(playwright: Playwright, profile: Path, sound: Path, scheme: str = "light") -> Iterator[Window]:
    """Chromium that hears `sound` over and over."""
    context = playwright.chromium.launch_persistent_context(
        profile,
        executable_path="/usr/bin/chromium",
        args=[
            "--no-sandbox", "--disable-background-networking", "--disable-gpu", "--disable-dev-shm-usage",
            "--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream",
            f"--use-file-for-fake-audio-capture={sound}",
        ],
        permissions=["microphone", "camera"],
        viewport={"width": 1280, "height": 900},
        color_scheme="dark" if scheme == "dark" else "light",
    )  # fmt: skip
    opened = Window(context, profile)
    try:
        yield opened
    finally:
        opened.kill()


def start(page: Page, title: str = "Saddle slot") -> float:
    """Begin to record; gives the moment, in seconds of the machine's clock."""
    page.fill("#title", title)
    page.click("#start")
    page.wait_for_selector("body.recording")
    began: float = page.evaluate("window.began")
    return began


def free_port() -> int:
    """A port that is free now."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port: int = free.getsockname()[1]
    return port
