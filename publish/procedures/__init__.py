"""The procedure library: what was done in the same way on several jobs, set beside one another.

    works = [work_of(source, settings) for source in sources]     # small values, one a session; keep them as you like
    procedures = procedures_of(works, log.read().rulings)          # pure

Which there are is found by outlines of the sessions alone (`library.py`): recognising is `knowing.py`, setting beside
one another `aligning.py`; what a person rules is in `rulings/`.
"""

from publish.procedures.cards import make_procedure_card
from publish.procedures.gathering import procedures_of
from publish.procedures.links import links_of
from publish.procedures.of_shop import log_of, procedures_of_shop
from publish.procedures.pages import make_procedures
from publish.procedures.places import INDEX, card_name, page_name
from publish.procedures.procedure import Procedure, Procedures
from publish.procedures.work import SessionWork, work_of

__all__ = [
    "INDEX",
    "Procedure",
    "Procedures",
    "SessionWork",
    "card_name",
    "links_of",
    "log_of",
    "make_procedure_card",
    "make_procedures",
    "page_name",
    "procedures_of",
    "procedures_of_shop",
    "work_of",
]
