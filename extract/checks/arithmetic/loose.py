"""Sums that are said less plainly: the words only hint at what was worked out, so the result must be near to count."""

from __future__ import annotations

from extract.checks.arithmetic import gauged, work
from extract.checks.arithmetic.gauged import one_of
from extract.checks.arithmetic.multiples import MULTIPLES
from extract.checks.arithmetic.pattern import MAKES, SO, Sum, said, show

_ROOM = (
    "clearance|play|slop|daylight|room|spare|slack|movement|overlap|headroom|difference|wear|gap|taper|shake|float|"
    "interference|crush|drop|rise|travel|stretch|shrinkage|error|allowance|spread"
)
_TO_GO = (
    "to come off|to take off|to go|to lose|to find|to make up|to remove|to spare|too long|too big|too wide|too thick|"
    "too short|too small|too narrow|too high|too low|too deep|oversize|undersize|short|shy|off|less|more|"
    "bigger|smaller|wider|narrower|thicker|thinner|longer|shorter|higher|lower|taller|deeper|tighter|looser|heavier|"
    "lighter|hotter|cooler|worse|better|gone|left|lost|worn|adrift|difference"
)
_MOVED = (
    "tapers|taper|widens|narrows|rises|rose|climbs|climbed|drops|dropped|grows|grew|grown|shrinks|shrunk|shrank|thins|"
    "thinned|opened|opens|closed|closes|came down|come down|coming down|comes down|went up|gone up|goes up|gained|"
    "gains|lost|loses|lose|stretched|lowered|raised|moved|moves|shifted|put on|taken off|took off|take off|up by|down "
    "by|up|down|fell|fallen|risen|wears|worn|saved|add|adds|added|short by|out by|off by|over by|took|"
    "taken|gone|removed|dropping|losing|gaining|shedding|climbing|falling|rising|shrinking|stretching"
)
_SIDES = "side|face|end|edge|way|cheek|flank"

LOOSE: tuple[Sum, ...] = (
    *MULTIPLES,
    Sum(
        "three in all",
        said("A", 6, "B", 6, "D", 6, MAKES, 4, "C"),
        one_of(gauged.grand_total),
        show("{a}, {b} and {d} together"),
    ),
    Sum(
        "two in all",
        said("A", 9, "with|and|plus|another|add", 6, "B", 7, MAKES, 4, "C"),
        one_of(work.total, gauged.with_both_ends),
        show("{a} and {b}"),
    ),
    Sum(
        "two, said behind",
        said(
            "A",
            9,
            "and|plus|another|add",
            6,
            "B",
            7,
            SO,
            4,
            "C",
            1,
            "altogether|in all|total|all told|all up|together|overall",
        ),
        one_of(work.total, gauged.with_both_ends),
        show("{a} and {b}"),
    ),
    Sum(
        "a side each of the difference",
        said("A", 12, "B", 5, SO, 2, "each|either|both", _SIDES, 5, "C"),
        one_of(gauged.half_difference),
        show("half the difference of {a} and {b}"),
    ),
    Sum(
        "from and to, and so much off",
        said("from", 2, "A", 2, "to|down to|up to", 2, "B", 4, "C", _TO_GO),
        one_of(work.difference),
        show("{a} to {b}"),
    ),
    Sum(
        "per face",
        said("A", 7, "C", 1, "each|either|per|a|from each|off each|on each", _SIDES),
        one_of(work.half),
        show("half of {a}"),
    ),
    Sum(
        "a face of the difference",
        said("A", 12, "B", 7, SO, 6, "C", 1, "each|either|per|a|from each|off each|on each", _SIDES),
        one_of(gauged.half_difference),
        show("half the difference of {a} and {b}"),
    ),
    Sum(
        "room",
        said("A", 12, "B", 9, SO, 6, "C", "of", 1, _ROOM),
        one_of(work.difference, gauged.half_difference),
        show("{a} to {b}"),
    ),
    Sum(
        "room, said before",
        said("A", 12, "B", 9, SO, 4, _ROOM, 3, "C"),
        one_of(work.difference, gauged.half_difference),
        show("{a} to {b}"),
    ),
    Sum("to go", said("A", 12, "B", 9, SO, 5, "C", _TO_GO), one_of(work.difference), show("{a} to {b}")),
    Sum(
        "all told",
        said("A", 10, "B", 6, SO, 3, "C", 1, "all told|all round|all around|in all|altogether|overall|total"),
        one_of(work.difference, gauged.half_difference, work.total),
        show("{a} against {b}"),
    ),
    Sum(
        "three, all told",
        said("A", 8, "B", 8, "D", 8, SO, 3, "C", 3, "all told|in all|altogether|overall|total|together|all up"),
        one_of(gauged.grand_total),
        show("{a}, {b} and {d} together"),
    ),
    Sum(
        "moved",
        said("A", 12, "B", 9, "so|that's|which|means|meaning", 5, _MOVED, 4, "C"),
        one_of(work.difference),
        show("{a} to {b}"),
    ),
    Sum(
        "moved, in a new sentence",
        said("from|was|were", 6, "A", 10, "to|now|now's", 4, "B", 4, _MOVED, 2, "C"),
        one_of(work.difference),
        show("{a} to {b}"),
        carrier="itself",
    ),
    Sum(
        "from and to",
        said("from", 3, "A", 4, "to|down to|up to", 3, "B", 5, "so|that's|which is|call it", 2, "C"),
        one_of(work.difference),
        show("{a} to {b}"),
    ),
    Sum(
        "wants to be",
        said(
            "A",
            10,
            "want|wants|need|needs|should be|ought to be|supposed to be",
            6,
            "B",
            7,
            "so|that's|another|which",
            2,
            "C",
        ),
        one_of(work.difference, gauged.half_difference),
        show("{a} to {b}"),
    ),
    Sum(
        "wanted and had",
        said(
            "want|wants|need|needs|after",
            3,
            "A",
            6,
            "got|have|had|there's|it's|only",
            3,
            "B",
            3,
            "so|another|which",
            6,
            "C",
        ),
        one_of(work.difference, gauged.half_difference),
        show("{a} less {b}"),
        carrier="itself",
    ),
    Sum(
        "less one at each end",
        said("A", 8, "B", 4, "each end|both ends|either end|each side|both sides|either side", 2, "so|which", 8, "C"),
        one_of(gauged.without_both_ends, near=gauged.NEAREST),
        show("{a} less twice {b}"),
    ),
    Sum(
        "came off",
        said("A", 14, "B", 2, "came off|comes off|come off|come away|came away|worn off|wore off|went", 9, SO, 6, "C"),
        one_of(work.difference),
        show("{a} less {b}"),
    ),
    Sum(
        "that taken off",
        said(
            "A",
            4,
            "off|less|out",
            8,
            "B",
            5,
            "take that off|takes that off|take that away|took that off|lose that|knock that off|less that",
            2,
            "leaves|leaving|leave|got|you've|have|left with|down to|you're at|that's|it's",
            2,
            "C",
        ),
        one_of(work.difference, near=gauged.NEAREST),
        show("{b} less {a}"),
        carrier="itself",
    ),
    Sum(
        "taken off",
        said(
            "A",
            12,
            "off|grind|ground|file|filed|sand|sanded|plane|planed|cut|trim|skim|lose|remove|take|took|taken|taking",
            5,
            "B",
            8,
            "leaves|leaving|left|remains|so i'm at|down to",
            5,
            "C",
        ),
        one_of(work.difference),
        show("{a} less {b}"),
    ),
)
"""Tried behind the plain ones."""
