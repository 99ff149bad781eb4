"""The time of publishing a shop again after a change, beside making all of it.

    python -m tests.benchmarks.editions [SESSIONS]

The shop is the one of `generated_shop`: sessions of 34 lines and 30 figures, four to a work, a week apart. The first
row makes everything; each other is the second of two runs of `spokeshave publish` in a process of its own after the
same kind of change, with what the program itself takes to start in it. Wall time and processor time, in seconds.
"""

from __future__ import annotations

import resource
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from capture.files import write_atomic
from capture.shop import Session, SessionSettings, Shop
from publish.presswork.store import FILE
from tests.benchmarks.generated_shop import generated
from tests.publish.session import SHOP


def main() -> None:
    """Print a Markdown table."""
    number = int(sys.argv[1]) if len(sys.argv) > 1 else 1000
    with tempfile.TemporaryDirectory() as folder:
        shop = shop_of(Path(folder) / "shop", number)
        middle = shop.sessions()[number // 2]
        print(f"| {number} sessions | wall, s | processor, s |\n|---|---|---|")
        _row("everything", shop)
        for name, change in CHANGES.items():
            for last in (False, True):
                change(shop, middle)
                if last:
                    _row(name, shop)
                else:
                    _publish(shop)
        (shop.root / FILE).unlink()
        _row("everything again, the store lost", shop)


def shop_of(root: Path, number: int) -> Shop:
    """A shop of generated sessions on disk."""
    shop = Shop.open_or_create(root, SHOP)
    for one in map(generated, range(number)):
        facts = one.record.session
        settings = {"title": facts.title, "date": facts.date, "subject": facts.subject, "trade": facts.trade}
        session = shop.add_session(SessionSettings.model_validate(settings))
        write_atomic(session.record_file, one.record.to_json())
        if one.transcript is not None:
            write_atomic(session.transcript_file, one.transcript.to_json())
    return shop


def _nothing(shop: Shop, session: Session) -> None:
    """Leave all as it is."""


def _figure(shop: Shop, session: Session) -> None:
    _swap(session.record_file, '"hedged": true', '"hedged":  true')


def _title(shop: Shop, session: Session) -> None:
    _swap(session.folder / "session.toml", '"Job ', '"Another job ')


def _add(shop: Shop, session: Session) -> None:
    settings = SessionSettings.model_validate({"title": "One more", "date": "2060-01-01", "subject": "mandola no. 3"})
    added = shop.add_session(settings)
    for name in ("record.json", "transcript.json"):
        (added.folder / name).write_bytes((session.folder / name).read_bytes())


def _remove(shop: Shop, session: Session) -> None:
    shop.remove(shop.sessions()[-1])


CHANGES: dict[str, Callable[[Shop, Session], None]] = {
    "nothing changed": _nothing,
    "a figure of one session": _figure,
    "the title of one session": _title,
    "one session more": _add,
    "one session less": _remove,
}


def _swap(path: Path, one: str, other: str) -> None:
    text = path.read_text(encoding="utf-8")
    changed = text.replace(one, other) if one in text else text.replace(other, one)
    if changed == text:
        raise SystemExit(f"{path} holds neither {one} nor {other}")
    path.write_text(changed, encoding="utf-8")


def _row(name: str, shop: Shop) -> None:
    wall, processor = _publish(shop)
    print(f"| {name} | {wall:.2f} | {processor:.2f} |", flush=True)


def _publish(shop: Shop) -> tuple[float, float]:
    before, begun = _children(), time.perf_counter()
    command = [sys.executable, "-m", "desk", "publish", "--shop", str(shop.root)]
    subprocess.run(command, check=True, capture_output=True)
    return time.perf_counter() - begun, _children() - before


def _children() -> float:
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime


if __name__ == "__main__":
    main()
