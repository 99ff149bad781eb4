"""Searching the site itself, in the browser, from any server of plain files or from the disk.

An index over words and figures, in small files that a script reads, says which sessions may hold what is asked for;
the script then reads those sessions' own files, and no others. It asks as `spokeshave find` does: every word by its
stem and beginning, every figure in any unit.
"""

from publish.search.files import FOLDER, handed_over, items_file, shared_files
from publish.search.items import Searched, searched_of
from publish.search.page import page_of
from publish.search.terms import shards_of

__all__ = ["FOLDER", "Searched", "handed_over", "items_file", "page_of", "searched_of", "shards_of", "shared_files"]
