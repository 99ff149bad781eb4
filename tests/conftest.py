"""What every room's tests share: one Playwright and one browser a run, since it can't be started twice side by side."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Playwright, expect, sync_playwright


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as program:
        yield program


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    """Debian's Chromium, without a sandbox and without a word to anyone."""
    # On a machine that is busy with other work a page may take longer than Playwright's own 5 s.
    expect.set_options(timeout=20_000)
    browser = playwright.chromium.launch(
        executable_path="/usr/bin/chromium",
        args=[
            "--no-sandbox", "--disable-background-networking", "--disable-gpu", "--disable-dev-shm-usage",
            "--autoplay-policy=no-user-gesture-required", "--mute-audio",
        ],
    )  # fmt: skip
    yield browser
    browser.close()
