"""The command itself: its address, its end, its port, and to whom it listens."""

from __future__ import annotations

import signal
import socket
from pathlib import Path
from urllib.parse import urlsplit

import httpx2 as httpx
import psutil
import pytest

from capture.shop import Shop
from tests.desk.serving import proofing


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    return Shop.open_or_create(tmp_path / "shop").root


@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT])
def test_it_prints_its_address_alone_and_ends_cleanly(shop: Path, number: signal.Signals) -> None:
    with proofing(shop) as (process, address):
        assert httpx.get(address, follow_redirects=True).status_code == 200
        process.send_signal(number)
        out, err = process.communicate(timeout=10)
    assert process.returncode == 0
    assert out == "", "the address was all"
    assert "Traceback" not in err


def test_it_listens_on_the_loopback_address_alone(shop: Path) -> None:
    with proofing(shop) as (process, address):
        listening = [one for one in psutil.Process(process.pid).net_connections() if one.status == "LISTEN"]
    assert [(one.laddr.ip, one.laddr.port) for one in listening] == [("127.0.0.1", urlsplit(address).port)]


def test_every_run_has_a_key_of_its_own_and_the_port_it_was_told(shop: Path) -> None:
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    addresses = []
    for _ in range(2):
        with proofing(shop, "--port", str(port)) as (_, address):
            addresses.append(address)
    assert [urlsplit(one).port for one in addresses] == [port, port]
    assert addresses[0] != addresses[1]


def test_a_port_that_is_taken_is_told_in_one_line(shop: Path) -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with proofing(shop, "--port", str(port)) as (process, address):
            _, err = process.communicate(timeout=10)
    assert (address, process.returncode) == ("", 2)
    assert (
        err
        == f"spokeshave: port {port}: address already in use; name another with --port, or none to take a free one\n"
    )


def test_a_folder_that_is_no_shop_is_told_in_one_line(tmp_path: Path) -> None:
    with proofing(tmp_path) as (process, address):
        _, err = process.communicate(timeout=10)
    assert (address, process.returncode, err.count("\n")) == ("", 2, 1)
