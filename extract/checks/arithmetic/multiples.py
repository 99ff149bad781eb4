"""Multiples, parts and shares that are said less plainly: the words only hint at what was worked out."""

from __future__ import annotations

from fractions import Fraction

from extract.checks.arithmetic import gauged, work
from extract.checks.arithmetic.gauged import one_of
from extract.checks.arithmetic.pattern import IN_ALL, SO, Sum, said, show

_WIDE = Fraction(4)
"""How many times a result may be out where only kinds of unit hint at the sum."""
_EACH = "each|apiece|a piece|each one|a time|per|a go|a turn|per turn|a pass|per pass|each time|a side"
_SPAN = "first to last|first to the last|end to end|outside to outside|overall|altogether|in all|total|across the lot"
_TURNING = "pitch|a turn|per turn|per rev|each turn|a revolution|per revolution|every turn|one turn"

_TAKES = f"{SO}|is|are|takes|take|took|needs|lasts|another|would be|it's|in"
_MUCH = "that|it|as much|this|the"

MULTIPLES: tuple[Sum, ...] = (
    Sum(
        "from and to, at a rate",
        said("from", 3, "A", 2, "to|up to|down to", 2, "B", 4, "at", 2, "D", "a|an|per|every", "W", 5, _TAKES, 2, "C"),
        gauged.near(gauged.between_at_a_rate, _WIDE),
        show("{a} to {b} at {d} a {w}"),
        carrier="itself",
    ),
    Sum(
        "at a rate",
        said("A", 7, "at", 2, "B", "a|an|per|every", "W", 4, _TAKES, 2, "C"),
        gauged.near(gauged.at_a_rate, _WIDE),
        show("{a} at {b} a {w}"),
        carrier="itself",
    ),
    Sum(
        "times a factor",
        said("A", 14, "M", "times", 1, _MUCH, 6, "C"),
        gauged.near(gauged.scaled),
        show("{x} times {a}"),
    ),
    Sum(
        "a factor times",
        said("M", "times", 2, "A", 3, f"{SO}|is|it's", 3, "C"),
        gauged.near(gauged.scaled),
        show("{x} times {a}"),
        carrier="itself",
    ),
    Sum(
        "each, added",
        said("each|every|one", 4, "A", 10, "add them|add those|add the two|add both|add the pair|in series", 6, "C"),
        gauged.near(gauged.whole_multiple, gauged.NEAREST),
        gauged.so_many_of_it,
        carrier="itself",
    ),
    Sum(
        "in one period",
        said("A", "a|per|every|each", "W", 9, "P", 6, "C"),
        one_of(gauged.over_one_period),
        show("{a} a {w} for a {p}"),
    ),
    Sum("electrical", said("A", 8, "B", 9, SO, 4, "C"), gauged.near(gauged.electrical, _WIDE), show("{a} with {b}")),
    Sum("turns of a pitch", said("A", 2, _TURNING, 12, "B", 10, "C"), gauged.turned, show("{a} with {b}")),
    Sum("pitch said before", said(_TURNING, 3, "A", 12, "B", 10, "C"), gauged.turned, show("{a} with {b}")),
    Sum("turns, then the pitch", said("A", 8, "B", 2, _TURNING, 8, "C"), gauged.turned, show("{a} with {b}")),
    Sum(
        "turns needed",
        said("A", 6, "B", 10, "D", 4, SO, 3, "C"),
        gauged.turns_needed,
        show("at {b} for {a}, {d}"),
    ),
    Sum(
        "each turn, so many turns",
        said("each|every|one", "turn", 3, "A", 4, "B", 4, "C"),
        gauged.turned,
        show("{a} with {b}"),
    ),
    Sum("turns each", said("A", 8, "B", 3, _EACH, 8, "C"), gauged.turned, show("{a} with {b}")),
    Sum(
        "share of the other",
        said("A", 12, "B", 10, SO, 4, "C", "of"),
        one_of(gauged.share_of_other, gauged.share_of_first),
        show("one of {a} and {b} in percent of the other"),
    ),
    Sum("percent off", said("A", 1, "off|less than", 3, "B", 6, SO, 4, "C"), gauged.percent_off, show("{a} off {b}")),
    Sum(
        "percent on",
        said("A", 1, "more than|on top of|on", 3, "B", 6, SO, 4, "C"),
        gauged.percent_on,
        show("{a} on {b}"),
    ),
    Sum(
        "part of it",
        said("F", "of", 3, "A", 4, f"{SO}|is|are", 3, "C"),
        one_of(gauged.part_of_it, near=gauged.NEAREST),
        show("{f} of {a}"),
        carrier="operator",
    ),
    Sum(
        "halved",
        said(
            "A",
            6,
            "halved|halve it|half that|in half|in two|half's|half is|half of which|half of that|half of it|halfway",
            5,
            "C",
        ),
        one_of(work.half),
        show("half of {a}"),
        carrier="operator",
    ),
    Sum(
        "doubled",
        said("A", 6, "doubled|times two|both sides|two of them|two of those|the pair|twice that", 6, "C"),
        one_of(work.double),
        show("twice {a}"),
        carrier="operator",
    ),
    Sum(
        "radius",
        said("A", 6, "diameter|across|round|dia|od", 8, "radius", 4, "C"),
        one_of(work.half),
        show("half of {a}"),
    ),
    Sum("diameter", said("A", 2, "radius", 8, "diameter|across|dia", 4, "C"), one_of(work.double), show("twice {a}")),
    Sum(
        "between two",
        said("A", 10, "split the difference|meet in the middle", 1, "with|and", 4, "B", 8, "C"),
        one_of(work.middle),
        show("the middle of {a} and {b}"),
        carrier="operator",
    ),
    Sum(
        "between the two",
        said(
            "A",
            9,
            "B",
            10,
            "split the difference|meet in the middle|the middle is|middle's|middle of that|halfway|average|the mean",
            8,
            "C",
        ),
        one_of(work.middle, near=gauged.NEAREST),
        show("the middle of {a} and {b}"),
        carrier="operator",
    ),
    Sum(
        "and so many lots",
        said("A", 3, "and|plus", 1, "N", "lots of|times|at|of", 1, "B", 4, f"{SO}|is|are", 3, "C"),
        gauged.and_so_many,
        show("{a} and {n} times {b}"),
        carrier="operator",
    ),
    Sum(
        "each of so many",
        said("A", 3, _EACH, 4, "N", 12, SO, 4, "C"),
        one_of(work.many),
        show("{n} times {a}"),
    ),
    Sum(
        "first to last",
        said("A", 8, "N", 12, _SPAN, 6, "C"),
        one_of(gauged.between_fellows, work.many),
        show("{m} times {a}"),
    ),
    Sum("so many each", said("N", 6, "A", 2, _EACH, 7, SO, 5, "C"), one_of(work.many), show("{n} times {a}")),
    Sum("of so many", said("A", 8, "N", 4, SO, 4, "C", 1, IN_ALL), one_of(work.many), show("{n} times {a}")),
    Sum(
        "so many of those",
        said("A", 9, "N", "of those|of them|of these|times|lots", 9, SO, 4, "C"),
        one_of(work.many),
        show("{n} times {a}"),
    ),
    Sum(
        "ratio",
        said("N", "to one|to 1|parts to one|parts to 1", 14, "A", 9, "C"),
        one_of(work.shared, work.many),
        show("{a} at {n} to 1"),
    ),
    Sum(
        "ratio said behind",
        said("A", 9, "N", "to one|to 1", 8, "C"),
        one_of(work.shared, work.many),
        show("{a} at {n} to 1"),
    ),
)
