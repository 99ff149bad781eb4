"""Which hearing of a window to keep, and whether to hear it again."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from capture.leaks import Prime, leaks, settle
from capture.options import HearingOptions
from capture.words import Hearing


@dataclass(frozen=True, slots=True)
class Manner:
    """One way of hearing a window."""

    primed: bool
    no_repeat: int = 0
    """Length of token runs that may not come twice; 0 for no bound."""


FIRST = Manner(primed=True)
UNPRIMED = Manner(primed=False)

LADDER = (UNPRIMED, Manner(primed=False, no_repeat=5), Manner(primed=False, no_repeat=3))
"""What is tried, in order, where the first hearing loops or is very unsure.

Whisper's own ladder raises the temperature, that is, draws at random. CTranslate2 seeds its generator once a thread, so
a run that goes on after a kill would draw other words than an unbroken one. Beam search under a bound on repeats breaks
loops as well, and always gives the same words.
"""


def trusted(first: Hearing, again: Callable[[Manner], Hearing], prime: Prime, options: HearingOptions) -> Hearing:
    """The hearing to keep for a window: the first one, or one that is better founded.

    `again` hears the same window in another manner. Empty where the model says that nothing was said.
    """
    if _silent(first, options):
        return replace(first, words=())
    if not _sound_of_mind(first, options):
        tried = [first]
        for manner in LADDER:
            tried.append(again(manner))
            if _sound_of_mind(tried[-1], options):
                break
        best = _best(tried, options)
        if _silent(best, options):
            return replace(best, words=())
        if best is not first:
            return best
    if leaks(first, prime):
        return settle(first, again(UNPRIMED), prime)
    return first


def _silent(hearing: Hearing, options: HearingOptions) -> bool:
    """True where the model itself says that nothing was said (Whisper's own rule)."""
    return hearing.no_speech > options.no_speech and hearing.log_probability < options.min_log_probability


def _sound_of_mind(hearing: Hearing, options: HearingOptions) -> bool:
    return hearing.compression <= options.max_compression and hearing.log_probability >= options.min_log_probability


def _best(tried: Sequence[Hearing], options: HearingOptions) -> Hearing:
    """The likeliest hearing that doesn't loop; the likeliest of all where each one loops."""
    steady = [hearing for hearing in tried if hearing.compression <= options.max_compression]
    return max(steady or tried, key=lambda hearing: hearing.log_probability)
