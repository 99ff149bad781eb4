"""The plug is pulled on server, browser or both: at most two seconds are lost, and the rest is readable."""

from __future__ import annotations

import random
import time
from pathlib import Path

import av
import pytest
from playwright.sync_api import Playwright

from capture.media import probe
from capture.recording import cut_off, finish
from capture.shop import Shop
from tests.capture.making import Maker
from tests.desk.record.serving import free_port, serving, start, window

pytestmark = pytest.mark.browser

LOST = 2.0
"""Seconds that may be lost."""


@pytest.fixture(scope="module")
def sound(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return Maker(tmp_path_factory.mktemp("sound")).speech()


@pytest.fixture
def shop(tmp_path: Path) -> Shop:
    return Shop.open_or_create(tmp_path / "shop")


def readable_seconds(file: Path) -> float:
    """Seconds of sound that decode, each frame right behind the one before."""
    seconds, last = 0.0, 0.0
    with av.open(str(file)) as container:
        for frame in container.decode(audio=0):
            assert frame.time is not None
            assert frame.time - last < 0.2, f"a gap at {last:.2f}"
            last = frame.time + frame.samples / frame.sample_rate
            seconds += frame.samples / frame.sample_rate
    return seconds


def recovered(shop: Shop) -> float:
    """What the next start finds, as it lies on the disk and made whole."""
    (found,) = cut_off(shop)
    file = found.session.recording_file
    assert file is not None
    as_it_lies = readable_seconds(file)
    done = finish(found.session.folder)
    assert done is not None
    assert done.problem == ""
    assert readable_seconds(file) == pytest.approx(as_it_lies, abs=0.1)
    assert probe(file).duration == pytest.approx(as_it_lies, abs=0.3)
    return as_it_lies


@pytest.mark.parametrize("seed", [1, 2])
def test_the_server_is_killed(seed: int, shop: Shop, tmp_path: Path, playwright: Playwright, sound: Path) -> None:
    with serving(shop.root) as server, window(playwright, tmp_path / "profile", sound) as browser:
        page = browser.open(server.address)
        began = start(page)
        page.wait_for_timeout(random.Random(seed).uniform(3, 6) * 1000)  # noqa: S311
        server.kill()
        killed = time.time()
    assert recovered(shop) >= killed - began - LOST


@pytest.mark.parametrize("seed", [3, 4])
def test_the_browser_is_killed(seed: int, shop: Shop, tmp_path: Path, playwright: Playwright, sound: Path) -> None:
    with serving(shop.root) as server:
        with window(playwright, tmp_path / "profile", sound) as browser:
            page = browser.open(server.address)
            began = start(page)
            page.wait_for_timeout(random.Random(seed).uniform(3, 6) * 1000)  # noqa: S311
            killed = time.time()
            browser.kill()
        server.kill()
    assert recovered(shop) >= killed - began - LOST


def test_the_server_is_killed_and_comes_back_while_the_page_records(
    shop: Shop, tmp_path: Path, playwright: Playwright, sound: Path
) -> None:
    port = str(free_port())
    with window(playwright, tmp_path / "profile", sound) as browser:
        with serving(shop.root, "--port", port) as server:
            page = browser.open(server.address)
            began = start(page)
            page.wait_for_timeout(2500)
            page.keyboard.press("m")
            server.kill()
        page.wait_for_selector("#trouble:not([hidden])")
        page.wait_for_timeout(3000)
        told = page.inner_text("#trouble")
        assert f"spokeshave record --shop {shop.root.resolve()} --port {port}" in told
        assert "The recording goes on" in told
        assert "Do not close this page" in told
        with serving(shop.root, "--port", port) as again:
            other = browser.context.new_page()
            other.goto(again.address)
            other.wait_for_selector("#trouble:not([hidden])")
            assert "another tab" in other.inner_text("#trouble")
            assert not other.is_visible("#prepare")
            page.bring_to_front()
            page.wait_for_selector("#trouble", state="hidden", timeout=15_000)
            page.wait_for_timeout(1500)
            ended = time.time()
            page.click("#stop")
            page.click("#end-yes")
            page.wait_for_selector("#after:not([hidden])", timeout=20_000)
        assert browser.complaints == []
    (session,) = shop.sessions()
    assert session.recording_file is not None
    assert readable_seconds(session.recording_file) == pytest.approx(ended - began, abs=1.0), "not a second is lacking"
    assert cut_off(shop) == ()


def test_server_and_browser_are_killed_and_the_reserve_is_sent_on(
    shop: Shop, tmp_path: Path, playwright: Playwright, sound: Path
) -> None:
    port = str(free_port())
    with window(playwright, tmp_path / "profile", sound) as browser:
        with serving(shop.root, "--port", port) as server:
            page = browser.open(server.address)
            began = start(page)
            page.wait_for_timeout(2000)
            server.kill()
        page.wait_for_timeout(4000)
        killed = time.time()
        browser.kill()
    with serving(shop.root) as again, window(playwright, tmp_path / "profile", sound) as browser:
        assert f":{port}/" in again.address, "the same port by itself"
        page = browser.open(again.address)
        page.wait_for_selector("#cut-off:not([hidden])", timeout=20_000)
        line = page.inner_text("#cut-off-list p >> nth=0")
        assert line.startswith("“Saddle slot” was cut off at 0:0")
        assert browser.complaints == []
    assert recovered(shop) >= killed - began - LOST
