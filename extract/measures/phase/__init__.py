"""Whether a figure was found, is aimed at, was reached or is said in general.

No one word settles it, so each sign in the talk has a weight, and the phase with the largest sum holds.
"""

from extract.measures.phase.weighing import by_weight

__all__ = ["by_weight"]
