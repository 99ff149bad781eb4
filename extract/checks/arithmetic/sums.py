"""The kinds of sum that are said at a bench, in the order they are tried."""

from __future__ import annotations

from fractions import Fraction

from extract.checks.arithmetic import work
from extract.checks.arithmetic.gauged import near
from extract.checks.arithmetic.loose import LOOSE
from extract.checks.arithmetic.pattern import Sum, said, show

_LINK = (
    "so|that's|that is|it's|is|are|makes|makes it|make|gives|equals|comes to|leaves|leaving|which is|puts us at|"
    "brings us to|puts it at|brings it to|gets us to|total|altogether|we're at|you'd be|you're at|i get|you get"
)
_SEEN = f"{_LINK}|gives you|give you|and you get|sees|see|presents|reads|looks like"
_SO = "so|that's|that is|makes|make|gives|equals|comes to|leaves|which is|puts us at|brings us to|you're|we're|total"
_TOTAL = "makes|make|comes to|come to|adds up to|add up to|gives|altogether|total|together|all told|in all|the sum"
_MIDDLE = "middle|halfway|half way|average|the mean|midpoint|mid point|split the difference"
_CHANGE = "lost|lose|difference|shrunk|dropped|gained|shed|wear|worn"
_WORN = "off|less|gone|lost|difference|of wear|worn|to come off|to take off|to lose|out of it"
_MORE = "higher|more|over|above|bigger|wider|thicker|taller|longer|deeper"
_LESS = "lower|less|under|below|smaller|narrower|thinner|shorter"
_COUNTED = (
    "gaps?|spaces?|spacings?|times|of them|of those|of these|turns|passes|coats|sides|days|weeks|hours|strokes|shims|"
    "washers|layers|links|pieces|plies|steps|courses|bays|intervals"
)
_SHARES = (
    "equal|gaps?|spaces?|spacings?|parts?|pieces|bays|steps|intervals|sections|slots|strings|holes|shares|panels|turns"
)
_WHOLE = "full|overall|total|whole"
_SIDE = "left|right|side|front|back|top|bottom|end|other|one|bass|treble|above|below"
_OFF = (
    "cut|cuts|take|takes|took|taking|trim|trimmed|saw|sawn|plane|planed|lose|loses|lost|used|use|minus|less|drink|"
    "drank|pour|poured|spill|spilt|gone|off|remove|removed|waste|wasted"
)
_CLOSE, _WIDE, _FREE = Fraction(2), Fraction(4), Fraction(12)
"""How many times a result may be out and still be meant as one; the plainer the words, the more."""

PLAIN: tuple[Sum, ...] = (
    Sum(
        "two abreast",
        said("A", 4, "side by side|in parallel|abreast", 2, _SEEN, 3, "C"),
        work.abreast,
        show("two of {a} in parallel"),
        carrier="itself",
    ),
    Sum(
        "rate",
        said("A", "a|per|every|each", "W", 5, "over|in|for|after", 3, "B", 7, "C"),
        near(work.over_time, _WIDE),
        show("{a} a {w} for {b}"),
    ),
    Sum(
        "product",
        said("A", 2, "times|multiplied by", 2, "B", 7, _LINK, 3, "C"),
        work.product,
        show("{a} times {b}"),
        carrier="itself",
    ),
    Sum(
        "so many times",
        said("A", 3, "times|multiplied by", 1, "B", 3, _LINK, 3, "C"),
        near(work.times_bare, _WIDE),
        show("{a} times {b}"),
        carrier="itself",
    ),
    Sum(
        "times a count",
        said("A", 3, "times|multiplied by", "N", 1, _LINK, 3, "C"),
        near(work.many, _WIDE),
        show("{n} times {a}"),
        carrier="itself",
    ),
    Sum(
        "sum of bare figures",
        said("comes to|adds up to|add|weighs|together", 2, "A", 2, "and|plus", 2, "B", 2, "so|that's|is|makes", 3, "C"),
        near(work.bare_total, Fraction(8, 5)),
        show("{a} and {b}"),
        carrier="itself",
    ),
    Sum(
        "quotient",
        said("A", 2, "divided by|across|over", 3, "B", 6, _LINK, 3, "C"),
        work.quotient,
        show("{a} over {b}"),
        carrier="itself",
    ),
    Sum(
        "comparison, more",
        said("A", 3, _LINK, 2, "C", _MORE, "than", 2, "B"),
        work.difference,
        show("{a} less {b}"),
        carrier="itself",
    ),
    Sum(
        "comparison, less",
        said("A", 3, _LINK, 2, "C", _LESS, "than", 2, "B"),
        work.difference,
        show("{b} less {a}"),
        carrier="itself",
    ),
    Sum(
        "middle",
        said("A", 3, "and|to", 3, "B", 8, _MIDDLE, 6, "C"),
        work.middle,
        show("the middle of {a} and {b}"),
        carrier="operator",
    ),
    Sum(
        "the middle between",
        said(
            "split the difference between|the middle of|halfway between|half way between|midway between|the average of",
            1,
            "A",
            3,
            "and|to",
            3,
            "B",
            4,
            f"{_LINK}|and it's",
            3,
            "C",
        ),
        near(work.middle, _WIDE),
        show("the middle of {a} and {b}"),
        carrier="itself",
    ),
    Sum(
        "share of",
        said("A", "of", 2, "B", 4, f"{_LINK}|would be|works out at", 3, "C"),
        near(work.said_share, _WIDE),
        show("{a} of {b}"),
        carrier="itself",
    ),
    Sum(
        "half, joined to what it is of",
        said("A", "of that|of that's|of it|of which", 2, "C"),
        near(work.joined_half, _WIDE),
        show("half of the whole of {a}"),
        carrier="itself",
    ),
    Sum(
        "sides",
        said(_WHOLE, 4, "A", 3, "B", "to|on|at|in", 1, _SIDE, 3, "C", "to|on|at|in", 1, _SIDE),
        near(work.difference),
        show("{a} less {b}"),
        carrier="itself",
    ),
    Sum(
        "percent of",
        said("A", 1, "of", 3, "B", 6, f"{_LINK}|would be|works out at", 3, "C"),
        near(work.part, _WIDE),
        show("{a} of {b}"),
        carrier="itself",
    ),
    Sum(
        "remaining",
        said("A", 9, _OFF, 4, "B", 6, "leaves|leaving|left|remains|remaining|still", 6, "C"),
        near(work.difference, _WIDE),
        show("{a} less {b}"),
    ),
    Sum(
        "remaining, said behind",
        said("A", 9, _OFF, 4, "B", 6, "so|that's|leaves|leaving|and", 4, "C", "left|remaining|to go|over"),
        near(work.difference, _WIDE),
        show("{a} less {b}"),
    ),
    Sum(
        "both sides",
        said("A", 4, "each|per|a|either", "side|end|way", 6, f"{_LINK}|{_TOTAL}|so", 4, "C"),
        work.double_of_it,
        show("twice {a}"),
    ),
    Sum(
        "per side",
        said("A", 6, "so|that's|which is|gives|split", 4, "C", "each|either|per|a", "side|end|way"),
        work.half_of_it,
        show("half of {a}"),
    ),
    Sum(
        "percent",
        said("A", 9, "B", 8, f"{_CHANGE}|down|up|low|high", 4, "C"),
        near(work.percent, _CLOSE),
        show("from {a} to {b}"),
        carrier="operator",
    ),
    Sum("strength", said("A", 5, "in|to", 3, "B", 7, "C"), work.strength, show("{a} in {b}")),
    Sum("plus", said("A", 3, "plus|add", 3, "B", 6, _LINK, 4, "C"), work.total, show("{a} plus {b}"), carrier="itself"),
    Sum("and", said("A", 3, "and", 3, "B", 5, _TOTAL, 3, "C"), work.total, show("{a} and {b}"), carrier="itself"),
    Sum("more", said("A", 18, "B", "more|extra|on top", 3, _SO, 4, "C"), work.total, show("{a} plus {b}")),
    Sum(
        "minus",
        said("A", 3, "minus|less|take away|take off", 2, "B", 6, _LINK, 4, "C"),
        near(work.difference, _WIDE),
        show("{a} less {b}"),
        carrier="itself",
    ),
    Sum(
        "down to",
        said("A", 4, "down to|up to", 2, "B", 5, _SO, 3, "C"),
        near(work.difference, _FREE),
        show("{a} to {b}"),
    ),
    Sum(
        "change",
        said("A", 9, "B", 6, _CHANGE, 3, "C"),
        near(work.difference, _WIDE),
        show("{a} to {b}"),
        carrier="operator",
    ),
    Sum(
        "worn",
        said("A", 9, "B", 4, "so|that's", 4, "C", 1, _WORN),
        near(work.difference, _WIDE),
        show("{a} to {b}"),
    ),
    Sum(
        "double",
        said("A", 8, "double|twice|doubled", "it|that|this|of that", 6, "C"),
        near(work.double, _CLOSE),
        show("twice {a}"),
        carrier="operator",
    ),
    Sum(
        "double, said before",
        said("double|twice|doubling", 2, "A", 3, f"{_LINK}|and", 3, "C"),
        near(work.double, _CLOSE),
        show("twice {a}"),
        carrier="operator",
    ),
    Sum(
        "half",
        said("A", 8, "half|halve|halved", "it|that|of it|of that|of that's|that's|of which|this", 6, "C"),
        near(work.half, _FREE),
        show("half of {a}"),
        carrier="operator",
    ),
    Sum(
        "third", said("A", 8, "third", "of it|of that", 6, "C"), work.third, show("a third of {a}"), carrier="operator"
    ),
    Sum(
        "quarter",
        said("A", 8, "quarter", "of it|of that", 6, "C"),
        work.quarter,
        show("a quarter of {a}"),
        carrier="operator",
    ),
    Sum(
        "shares",
        said("A", 4, "over|across|into|between|in|among|by", 1, "N", 1, _SHARES, 3, "C"),
        work.shared,
        show("{a} over {n}"),
    ),
    Sum(
        "gaps between so many",
        said("A", 9, "N", "gaps?|spaces?|spacings?|intervals", 3, _SO, 3, "C"),
        near(work.many),
        show("{n} times {a}"),
    ),
    Sum(
        "count, put plainly",
        said("A", 4, "N", _COUNTED, 1, "is|makes|make", 2, "C"),
        near(work.many, _WIDE),
        show("{n} times {a}"),
    ),
    Sum("count", said("A", 4, "N", _COUNTED, 3, _SO, 3, "C"), near(work.many, _WIDE), show("{n} times {a}")),
    Sum(
        "so many at",
        said("N", 3, "at|of|times", 1, "A", 3, _LINK, 3, "C"),
        near(work.many),
        show("{n} times {a}"),
    ),
    Sum(
        "divided",
        said("A", 4, "divided by|divide by|split", 2, "N", 6, "C"),
        work.shared,
        show("{a} divided by {n}"),
        carrier="itself",
    ),
)
"""Of sums that fit, one that comes out clears the figure; where none does, the first one speaks."""

SUMS = (*PLAIN, *LOOSE)
