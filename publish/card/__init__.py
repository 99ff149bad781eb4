"""The bench card of a session: its procedure on one sheet of A4 or Letter, to stand at the bench."""

from publish.card.make import make_card

__all__ = ["make_card"]
