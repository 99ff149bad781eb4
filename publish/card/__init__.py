"""The bench card of a session: its procedure on one sheet of A4 or Letter, to stand at the bench."""

from publish.card.make import card_figure, card_setting, card_step, is_wait, make_card, wait_for

__all__ = ["card_figure", "card_setting", "card_step", "is_wait", "make_card", "wait_for"]
