"""Several processes at one log, and processes that are killed while they write."""

from __future__ import annotations

import random
import subprocess
import sys
import time
from pathlib import Path

from extract.rulings import RulingLog, stet
from tests.extract.rulings.bench import hand, proof

_KILLS = 12
_WRITERS = 3
_NOTES = 40


def start(path: Path, name: str, most: int) -> subprocess.Popen[str]:
    command = [sys.executable, "-m", "tests.extract.rulings.appender", str(path), name, str(most)]
    return subprocess.Popen(command, stdout=subprocess.PIPE, text=True)


def test_writers_at_one_time_lose_none_of_one_anothers_lines(tmp_path: Path) -> None:
    path = tmp_path / "rulings.json"
    writers = {f"writer{number}": start(path, f"writer{number}", _NOTES) for number in range(_WRITERS)}
    told = {name: writer.communicate(timeout=120)[0].split() for name, writer in writers.items()}
    read = RulingLog(path).read()
    assert not read.aside
    for name, ids in told.items():
        assert len(ids) == _NOTES
        assert [one.id for one in read.rulings if one.id.startswith(name)] == ids
    assert len(read.rulings) == _WRITERS * _NOTES


def test_a_writer_that_is_killed_leaves_what_it_had_told(tmp_path: Path) -> None:
    """SIGKILL at any moment; the log is one and the same throughout."""
    path = tmp_path / "rulings.json"
    chance = random.Random(64)  # noqa: S311 (moments to kill at, no secret)
    told: list[str] = []
    for number in range(_KILLS):
        writer = start(path, f"killed{number}", 100_000)
        assert writer.stdout is not None
        for _ in range(chance.randrange(1, 25)):
            told.append(writer.stdout.readline().strip())
        time.sleep(chance.random() / 200)
        writer.kill()
        told += writer.communicate(timeout=60)[0].split()
    read = RulingLog(path).read()
    assert set(told) <= {one.id for one in read.rulings}
    assert len(read.aside) <= _KILLS
    assert RulingLog(path).append(stet(proof(), "m-0", hand(1))) == RulingLog(path).read().rulings[-1]


def test_a_lock_of_a_killed_writer_holds_up_nobody(tmp_path: Path) -> None:
    path = tmp_path / "rulings.json"
    writer = start(path, "killed", 100_000)
    assert writer.stdout is not None
    writer.stdout.readline()
    writer.kill()
    writer.communicate(timeout=60)
    begun = time.monotonic()
    RulingLog(path).append(stet(proof(), "m-0", hand(1)))
    assert time.monotonic() - begun < 5


def test_a_log_cut_at_any_byte_gives_all_whole_lines(tmp_path: Path) -> None:
    path = tmp_path / "rulings.json"
    log = RulingLog(path)
    given = [log.append(stet(proof(), "m-0", hand(number))) for number in range(3)]
    whole = path.read_bytes()
    ends = [at for at, byte in enumerate(whole) if byte == ord("\n")]
    for cut in range(len(whole)):
        path.write_bytes(whole[:cut])
        read = log.read()
        kept = sum(end <= cut for end in ends)
        assert list(read.rulings) == given[:kept]
        torn = cut > 0 and cut not in ends and cut - 1 not in ends
        assert len(read.aside) == torn
