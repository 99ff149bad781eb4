"""Which rulings are in force: those given and not taken back since."""

from __future__ import annotations

from collections.abc import Iterable

from extract.rulings.model import OnItem, Pass, Redo, Ruling, Undo


def in_force(rulings: Iterable[Ruling]) -> tuple[OnItem | Pass, ...]:
    """The rulings that hold, in the order in which they were first given.

    Of the lines that undo or redo one ruling, the last one counts; a line about a ruling that the log lacks does
    nothing.
    """
    given: list[OnItem | Pass] = []
    undone: dict[str, bool] = {}
    for one in rulings:
        if isinstance(one, Undo | Redo):
            undone[one.of] = isinstance(one, Undo)
        else:
            given.append(one)
    return tuple(one for one in given if not undone.get(one.id, False))


def may_undo(rulings: Iterable[Ruling]) -> OnItem | Pass | None:
    """The last ruling in force, which an undo button takes back."""
    return _last(tuple(rulings), undone=False)


def may_redo(rulings: Iterable[Ruling]) -> OnItem | Pass | None:
    """The ruling that was undone last, where nothing else was ruled since; what a redo button gives again."""
    return _last(tuple(rulings), undone=True)


def _last(rulings: tuple[Ruling, ...], undone: bool) -> OnItem | Pass | None:
    given: list[OnItem | Pass] = []
    taken_back: list[OnItem | Pass] = []
    for one in rulings:
        if isinstance(one, Undo):
            _move(one.of, given, taken_back)
        elif isinstance(one, Redo):
            _move(one.of, taken_back, given)
        else:
            given.append(one)
            taken_back.clear()
    stack = taken_back if undone else given
    return stack[-1] if stack else None


def _move(wanted: str, here: list[OnItem | Pass], there: list[OnItem | Pass]) -> None:
    for at, one in enumerate(here):
        if one.id == wanted:
            there.append(here.pop(at))
            return
