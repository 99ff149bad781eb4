"""Working figures of the bench: arcs, frets, strings, wood, drills, wire, screws, threads and pitch.

Small functions with the source of each rule. `spokeshave figure` prints them with their working.
"""

from extract.working.worked import Answer, Worked, WorkingError

__all__ = ["Answer", "Worked", "WorkingError"]
