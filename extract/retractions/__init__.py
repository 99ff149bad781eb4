"""What a later session takes back of an earlier one: which statement is meant, and what stands after it.

    stands = what_stands([Sitting(slug, record, rulings), ...])    # every session of the shop
    stands["2031-05-14-the-heron"].proofed                         # the record as a person, and later sessions, have it

`what_stands` is the one place where it is decided which figures of a shop hold: pages, cards, captions, errata,
medians, `find` and the proof page all take theirs from it.
"""

from extract.retractions.candidates import Candidate
from extract.retractions.giving import retract
from extract.retractions.sitting import Sitting
from extract.retractions.standing import Stands, what_stands
from extract.retractions.tracing import State, Traced

__all__ = ["Candidate", "Sitting", "Stands", "State", "Traced", "retract", "what_stands"]
