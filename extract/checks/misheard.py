"""A figure for which another reading sounds about as likely.

Takes "forty inches" where "fourteen inches" goes with the sound as well; lets a figure pass whose rivals lie far below.
"""

from __future__ import annotations

from collections.abc import Iterator

from extract.checks.finding import Suspicion
from extract.checks.talk import Talk
from extract.record import Reading

SOURCE = "second hearing: both readings held against the sound"


def find_misheard(talk: Talk) -> Iterator[Suspicion]:
    """Each figure that a near rival may have been."""
    for one in talk.said:
        heard = one.measure.heard
        if heard is None or not heard.near_tie or len(heard.readings) < 2:
            continue
        decided, rival = heard.readings[:2]
        first = next((reading for reading in heard.readings if reading.first_heard), decided)
        changed = f", first heard as “{_words(first)}”" if first is not decided else ""
        yield Suspicion(
            "misheard",
            "look",
            (one.measure,),
            f"“{decided.text}”{changed} may also have been “{_words(rival)}”: listen again",
            SOURCE,
        )


def _words(reading: Reading) -> str:
    return reading.text.strip(" .,;:?!")
