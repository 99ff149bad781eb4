"""Prints a site anew where something changed, and keeps the rest: the work of the press between two editions.

What a page over all sessions needs of one session is made once and kept in a store, under a sum over all that the
session is made from; so is every file of the site. Clock times decide nothing.
"""

from publish.presswork.press import Press
from publish.presswork.reading import Read, read_sessions
from publish.presswork.store import Store, StoreBrokenError, opened
from publish.presswork.sums import edition_of

__all__ = ["Press", "Read", "Store", "StoreBrokenError", "edition_of", "opened", "read_sessions"]
