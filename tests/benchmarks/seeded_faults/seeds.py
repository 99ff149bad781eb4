"""Seeds one fault at a time into a narration that has been marked: what is changed, where, and which kind it is.

Only what a careful reader could notice is seeded: a conversion or a sum that is wrong in itself, a second figure for
the same named thing, a figure outside the span or band that the data files hold for the marked thing, a unit of a kind
that the spoken attribute can't have, and a dropped unit that nothing else in the talk settles. The same insertions with
the right figure are the traps: none of them may be stopped.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Any

from extract.checks.linear import conversion
from extract.magnitudes import SIZE, magnitudes
from extract.trade import Trade
from tests.benchmarks.seeded_faults.writing import OTHER, SAID, said

_TEMPLATES = tomllib.loads(Path(__file__).with_name("templates.toml").read_text(encoding="utf-8"))
_WRONG = (Fraction(3, 4), Fraction(13, 10), Fraction(3, 2))
_KINDS = {"length": "newton * meter", "mass": "inch", "temperature": "inch", "torque": "millimeter", "ratio": "degC"}
_FIRM = frozenset({"thickness", "width", "depth", "diameter", "length", "weight", "torque", "temperature", "humidity"})
_FIRM_WORDS = {"thickness": "thick", "width": "wide", "depth": "deep", "length": "long"}
_AHEAD = 25
"""Cues behind a figure among which a place for a new line is looked for."""
_NO_WAY = frozenset({"minute", "hour", "percent", "liter"})
"""Units of which only a sum is seeded."""
_DROPPED = frozenset({"torque", "temperature", "time", "pressure"})

Gold = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Seeded:
    """A talk with one thing changed at `cue`; `kind` is null for a trap."""

    lines: tuple[str, ...]
    cue: int
    kind: str | None
    how: str


def seed(lines: tuple[str, ...], gold: Gold, trade: Trade, kinds_of: dict[str, str]) -> Iterator[Seeded]:
    """Every fault and trap for one narration. `kinds_of` gives the kind of each unit."""
    plain = [one for one in gold["measures"] if _is_plain(one, lines, kinds_of)]
    for number, one in enumerate(plain):
        yield from _restated(lines, one, number)
        yield from _sums(lines, one, number, gold)
        yield from _turned(lines, one, number, gold)
        yield from _conflicts(lines, one, number, gold)
        yield from _implausible(lines, one, trade, kinds_of)
        yield from _wrong_kind(lines, one, kinds_of)
        yield from _dropped(lines, one, gold, kinds_of)


def _is_plain(one: Gold, lines: tuple[str, ...], kinds_of: dict[str, str]) -> bool:
    whole = one["unit"] in kinds_of and one["unit"] in SAID and one["quote"] in lines[one["cue"]]
    return whole and one["stands"] and one["unit_said"] and one["low"] is None and one["value"] > 0


def _value(one: Gold) -> Fraction:
    return Fraction(one["value"]).limit_denominator(1000)


def _replaced(lines: tuple[str, ...], cue: int, old: str, new: str) -> tuple[str, ...]:
    return (*lines[:cue], lines[cue].replace(old, new, 1), *lines[cue + 1 :])


def _inserted(lines: tuple[str, ...], at: int, line: str) -> tuple[str, ...]:
    return (*lines[:at], line, *lines[at:])


def _restated(lines: tuple[str, ...], one: Gold, number: int) -> Iterator[Seeded]:
    """The figure again in the other system, right and wrong."""
    other = OTHER.get(one["unit"])
    convert = conversion(one["unit"], other) if other else None
    if other is None or convert is None:
        return
    template = _TEMPLATES["restated"][number % len(_TEMPLATES["restated"])]
    exact = convert(_value(one))
    wrong = exact * _WRONG[number % len(_WRONG)] + (15 if "deg" in other else 0)
    for value, kind in ((exact, None), (wrong, "conversion")):
        line = f"{one['quote']} {template.format(b=said(value, other))}"
        yield Seeded(_replaced(lines, one["cue"], one["quote"], line), one["cue"], kind, "restated in another unit")


def _sums(lines: tuple[str, ...], one: Gold, number: int, gold: Gold) -> Iterator[Seeded]:
    """A sum worked from the figure, on a line of its own, right and wrong."""
    at = _quiet(one["cue"], len(lines), gold)
    if "deg" in one["unit"] or at is None:
        return
    name = list(_TEMPLATES["sums"])[number % len(_TEMPLATES["sums"])]
    a = _value(one)
    b = (a * Fraction(3, 5)).limit_denominator(20)
    templates = _TEMPLATES["sums"][name]
    template = templates[(number // 7) % len(templates)]
    counts = {"four of": 4, "three of": 3, "five gaps": 5}
    count = next((count for words, count in counts.items() if words in template), 1)
    share = Fraction(1, 10) if "ten percent" in template else Fraction(1, 4)
    results = {"half": a / 2, "double": 2 * a, "sum": a + b, "difference": a - b, "middle": (a + b) / 2}
    exact = results.get(name, a * count if name == "multiple" else a * share)
    for value, kind in ((exact, None), (exact * _WRONG[number % 3], "arithmetic")):
        texts = {key: said(figure, one["unit"]) for key, figure in (("a", a), ("b", b), ("r", value))}
        line = template.format(**texts)
        if "{a}" not in template:
            line = f"so it's {texts['a']} and {line}"
        yield Seeded(_inserted(lines, at, line), at, kind, name)


def _quiet(cue: int, count: int, gold: Gold) -> int | None:
    """The nearest place behind a cue where no figure stands close, so that a new line parts no sum."""
    taken = {measure["cue"] for measure in gold["measures"]}
    places = range(cue + 1, min(count, cue + _AHEAD))
    return next((at for at in places if not taken & {at - 1, at, at + 1} - {cue}), None)


def _turned(lines: tuple[str, ...], one: Gold, number: int, gold: Gold) -> Iterator[Seeded]:
    """A change that goes the other way than its words say, for every third figure."""
    at = _quiet(one["cue"], len(lines), gold)
    if at is None or number % 3 or "deg" in one["unit"] or one["unit"] in _NO_WAY:
        return
    a = _value(one)
    for words, template in list(_TEMPLATES["direction"].items()):
        factors = (_WRONG[0], _WRONG[1]) if words == "less" else (_WRONG[1], _WRONG[0])
        for factor, kind in zip(factors, (None, "conflict"), strict=True):
            line = template[number // 3 % len(template)].format(a=said(a, one["unit"]), r=said(a * factor, one["unit"]))
            yield Seeded(_inserted(lines, at, line), at, kind, f"direction, {words}")


def _conflicts(lines: tuple[str, ...], one: Gold, number: int, gold: Gold) -> Iterator[Seeded]:
    """A second figure for the same named thing, far behind, of the same moment."""
    templates = _TEMPLATES["conflict"].get(one["phase"], ())
    again = [m for m in gold["measures"] if m["attribute"] == one["attribute"] and m["item"] == one["item"]]
    if not templates or not one["attribute"] or not one["item"] or len(again) > 1:
        return
    at = max(one["cue"] + 3, len(lines) - 2)
    names = {"attribute": one["attribute"][0], "item": one["item"][0]}
    for value, kind in ((_value(one), None), (_value(one) * Fraction(5, 4), "conflict")):
        line = templates[number % len(templates)].format(b=said(value, one["unit"]), **names)
        yield Seeded(_inserted(lines, at, line), at, kind, f"said again, {one['phase']}")


def _implausible(lines: tuple[str, ...], one: Gold, trade: Trade, kinds_of: dict[str, str]) -> Iterator[Seeded]:
    """The point moved, where the data files know better."""
    spans = list(_spans(one, trade, kinds_of[one["unit"]]))
    for factor, how in ((Fraction(10), "a zero too many"), (Fraction(1, 10), "a zero too few")):
        value = _value(one) * factor
        if spans and all(_is_far(value, one["unit"], *span) for span in spans):
            changed = _replaced(lines, one["cue"], one["quote"], said(value, one["unit"]))
            yield Seeded(changed, one["cue"], "implausible", how)


def _spans(one: Gold, trade: Trade, kind: str) -> Iterator[tuple[float, float, str]]:
    names = {tuple(name.split()) for name in one["item"]}
    for name in names:
        for row in magnitudes().by_thing.get(name, ()):
            if row.kind == kind and (row.what in one["attribute"] or row.what == SIZE):
                yield row.low, row.high, row.unit
    for attribute in trade.attributes:
        if attribute.name in one["attribute"]:
            for band in attribute.bands:
                if not band.items or {*band.items} & {*one["item"]}:
                    yield band.low, band.high, band.unit


def _is_far(value: Fraction, unit: str, low: float, high: float, to: str) -> bool:
    convert = conversion(unit, to)
    there = convert(value) if convert is not None else Fraction(0)
    return convert is not None and (there > 2 * high or (low > 0 and there < low / 3))


def _wrong_kind(lines: tuple[str, ...], one: Gold, kinds_of: dict[str, str]) -> Iterator[Seeded]:
    """Another kind of unit behind the figure, where its attribute is said in words."""
    line = lines[one["cue"]].lower()
    wrong = _KINDS.get(kinds_of[one["unit"]])
    for name in one["attribute"]:
        if name in _FIRM and wrong and (name in line or f" {_FIRM_WORDS.get(name, '-')}" in line):
            changed = _replaced(lines, one["cue"], one["quote"], said(_value(one), wrong))
            yield Seeded(changed, one["cue"], "dimension", f"{SAID[wrong]} of {name}")
            return


def _dropped(lines: tuple[str, ...], one: Gold, gold: Gold, kinds_of: dict[str, str]) -> Iterator[Seeded]:
    """The unit left out, where no other figure of its kind is in the talk."""
    kind = kinds_of[one["unit"]]
    alike = [m for m in gold["measures"] if kinds_of.get(m["unit"]) == kind]
    if kind in _DROPPED and len(alike) == 1 and one["phase"] == "target" and one["value"] == int(one["value"]):
        changed = _replaced(lines, one["cue"], one["quote"], str(int(one["value"])))
        yield Seeded(changed, one["cue"], "unit_missing", f"{kind} without a unit")
