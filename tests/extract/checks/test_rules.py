"""Every rule on the sentences of its fixture file, through the whole table of rules."""

from __future__ import annotations

from pathlib import Path

import pytest

from extract.checks import run_checks
from extract.trade import load_trade
from tests.extract.checks.records import Case, cases, record_of, trade_of

_HERE = Path(__file__).parent
_FILES = sorted(_HERE.glob("*.txt"))


def _cases() -> list[object]:
    return [
        pytest.param(case, trade_of(path), id=f"{path.stem}: {case.title}") for path in _FILES for case in cases(path)
    ]


@pytest.mark.parametrize(("case", "trade"), _cases())
def test_findings_are_the_ones_due(case: Case, trade: str) -> None:
    found = run_checks(record_of(case.lines), load_trade(trade))
    assert [_line(one.kind, one.severity, one.message) for one in found] == list(case.expected)


def _line(kind: str, severity: str, message: str) -> str:
    return f"{kind} {severity}: {message}".replace("\N{NO-BREAK SPACE}", " ")
