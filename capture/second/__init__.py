"""A second hearing of figures: each is held against what else it may have been.

The rivals come from a callable that is passed in, since the grammar of numbers lives in a later room.
"""

from capture.second.rival import Doubt, Rival, RivalMaker

__all__ = ["Doubt", "Rival", "RivalMaker"]
