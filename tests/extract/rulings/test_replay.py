"""Any sequence of rulings, undone and given again at will, is what replaying its log gives."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from extract.record import Because, Record
from extract.rulings import (
    Hand,
    Proofed,
    Ruling,
    RulingError,
    add,
    amend,
    apply,
    in_force,
    may_redo,
    may_undo,
    merge,
    note,
    redo,
    reorder,
    split,
    stet,
    strike,
    undo,
)
from extract.rulings.model import ruling_adapter
from tests.extract.rulings.bench import record

_FIGURES = st.sampled_from(["7/64 in", "3 mm", "150", "2 to 3 thou", "about 24 mm ± 1 mm", "5 °C"])
_REASONS: tuple[Because, ...] = ("said_wrong", "heard_wrong", "own_words")
_BECAUSE = st.sampled_from(_REASONS)
_TEXTS = st.sampled_from(["Heat the plate to 140 °F", "Lift the bridge", "Clean it, slowly"])
_MOST = 12


def _items(proofed: Proofed, kind: str) -> list[str]:
    return sorted(one.id for one in proofed.items.values() if one.kind == kind)


@st.composite
def _ruling(draw: st.DrawFn) -> Callable[[Proofed, Hand], Ruling]:
    """Something that a person may ask for, right or wrong, decided once the items are known."""
    act = draw(st.sampled_from(["stet", "strike", "note", "measure", "text", "add", "reorder", "merge", "split"]))
    pick, other = draw(st.integers(0, 99)), draw(st.integers(0, 99))
    figure, because, text = draw(_FIGURES), draw(_BECAUSE), draw(_TEXTS)

    def one_of(listed: list[str], at: int) -> str:
        return listed[at % len(listed)]

    def give(proofed: Proofed, hand: Hand) -> Ruling:
        everything, steps = sorted(proofed.items), _items(proofed, "step")
        makers: dict[str, Callable[[], Ruling]] = {
            "stet": lambda: stet(proofed, one_of(everything, pick), hand),
            "strike": lambda: strike(proofed, one_of(everything, pick), hand),
            "note": lambda: note(proofed, one_of(everything, pick), text, hand),
            "measure": lambda: amend(
                proofed, one_of(_items(proofed, "measure"), pick), {"figure": figure, "where": text}, hand,
                because=because, overrule=True,
            ),
            "text": lambda: amend(proofed, one_of([*steps, "l-1", "d-1", "c-nut"], pick), {"text": text}, hand),
            "add": lambda: _added(proofed, other, figure, text, hand),
            "reorder": lambda: reorder(proofed, one_of(steps, pick), one_of(steps, other), hand),
            "merge": lambda: merge(proofed, [one_of(steps, pick), one_of(steps, other)], hand),
            "split": lambda: split(proofed, one_of(steps, pick), [text, f"Then {text}"], hand),
        }  # fmt: skip
        return makers[act]()

    return give


def _added(proofed: Proofed, number: int, figure: str, text: str, hand: Hand) -> Ruling:
    kind, to = [
        ("measure", {"figure": figure}), ("step", {"text": text}), ("doubt", {"text": text}),
        ("follow_up", {"text": text}), ("correction", {"figure": figure}),
    ][number % 5]  # fmt: skip
    withdraws = "m-0" if kind == "correction" and number % 2 else None
    given: Any = to
    return add(proofed, kind, number / 5, number // 25, "as said", given, hand, withdraws=withdraws)  # type: ignore[arg-type]


_Press = Callable[[Proofed, Hand], Ruling] | str
_presses = st.lists(st.one_of(_ruling(), st.sampled_from(["undo", "redo"])), max_size=_MOST)


@settings(max_examples=100, deadline=None)
@given(_presses)
def test_undo_and_redo_go_through_the_very_states_there_were(presses: list[_Press]) -> None:
    log: list[Ruling] = []
    now = apply(record(), log)
    done: list[Record] = [now.record]
    undone: list[Record] = []
    for number, press in enumerate(presses):
        hand = Hand("Ada", ruling_id=f"ruling-{number:04d}")
        if press == "undo":
            last = may_undo(log)
            assert (last is None) == (len(done) == 1)
            if last is not None:
                log.append(undo(now, last.id, hand))
                undone.append(done.pop())
        elif press == "redo":
            last = may_redo(log)
            assert (last is None) == (not undone)
            if last is not None:
                log.append(redo(last.id, hand))
                done.append(undone.pop())
        elif callable(press):
            try:
                log.append(press(now, hand))
            except RulingError:
                continue
            undone.clear()
            now = apply(record(), log)
            done.append(now.record)
            continue
        now = apply(record(), log)
        assert now.record == done[-1]


@settings(max_examples=100, deadline=None)
@given(_presses, st.data())
def test_what_was_undone_leaves_no_trace(presses: list[_Press], data: st.DataObject) -> None:
    log: list[Ruling] = []
    for number, press in enumerate(presses):
        hand = Hand("Ada", ruling_id=f"ruling-{number:04d}")
        if callable(press):
            try:
                log.append(press(apply(record(), log), hand))
            except RulingError:
                continue
        elif log:  # any ruling, not just the last one
            of = data.draw(st.sampled_from(log)).id
            log.append(redo(of, hand) if press == "redo" else ruling_adapter.validate_python(
                {"act": "undo", "of": of, "id": hand.ruling_id, "at": hand.at}
            ))  # fmt: skip
    whole, replayed = apply(record(), log), apply(record(), in_force(log))
    assert whole == replayed
    assert whole == apply(record(), log)
    again = [ruling_adapter.validate_json(one.model_dump_json(exclude_none=True)) for one in log]
    assert whole == apply(record(), again)
    _is_sound(whole)


def _is_sound(proofed: Proofed) -> None:
    """What holds of a record whatever a person ruled."""
    ruled, machine = proofed.record, proofed.machine
    assert machine == record()
    assert Record.model_validate_json(ruled.to_json()) == ruled
    assert {one.id for one in machine.measures} <= {one.id for one in ruled.measures}
    assert [one.number for one in ruled.steps] == list(range(1, len(ruled.steps) + 1))
    for listed in (ruled.measures, ruled.corrections, ruled.findings, ruled.steps, ruled.doubts, ruled.follow_ups):
        ids = [one.id for one in listed]
        assert len(ids) == len(set(ids))
    held = {one.id for one in ruled.corrections}
    assert all(one.corrected_by in held for one in ruled.measures if one.corrected_by is not None)
    accounted = {*proofed.placed, *(one.ruling.id for one in proofed.unplaced)}
    assert {one.id for one in proofed.in_force if one.act != "pass"} == accounted
    assert proofed.kept + proofed.moved + len(proofed.unplaced) == len(accounted)
