"""What goes with the film: cues that put it right while it plays, a text to set beneath it, stills of its errata."""

from publish.film.beneath import BENEATH, beneath
from publish.film.slips import SLIPS, Slip, slip_cues, slips_of
from publish.film.stills import errata_stills

__all__ = ["BENEATH", "SLIPS", "Slip", "beneath", "errata_stills", "slip_cues", "slips_of"]
