"""What every room's tests share: one Playwright and one browser a run, since it can't be started twice side by side."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Playwright, sync_playwright


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as program:
        yield program


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    """Debian's Chromium, without a sandbox and without a word to anyone."""
    browser = playwright.chromium.launch(
        executable_path="/usr/bin/chromium",
        args=[
            "--no-sandbox", "--disable-background-networking", "--disable-gpu", "--disable-dev-shm-usage",
            "--autoplay-policy=no-user-gesture-required", "--mute-audio",
        ],
    )  # fmt: skip
    yield browser
    browser.close()
