"""The words that the ear keeps in mind for a session: what was measured on the same work before, then its trade's.

Only names of parts and of what is measured are taken from past records, never a figure: what is in mind is soon heard.
"""

from __future__ import annotations

from collections import Counter
from itertools import chain

from capture.shop import Session, Shop
from desk.fellows import fellows

MOST = 16
"""Names from past records; more would crowd out the trade's."""


def past_words(shop: Shop, session: Session) -> tuple[str, ...]:
    """What was measured in the shop's other sessions of the same work, and of which parts, the most frequent first."""
    found: Counter[str] = Counter()
    for record in fellows(session, shop):
        found.update(name for one in record.measures for name in (one.attribute, one.item) if name)
    return tuple(name for name, _ in sorted(found.items(), key=lambda pair: (-pair[1], pair[0]))[:MOST])


def prime_for(trade: str, past: tuple[str, ...] = ()) -> str:
    """A prime of past names and of those of the trade, where a person has named it; what is said tells it too late."""
    from capture import compose_prime
    from extract.trade import load_trade

    if not trade:
        return compose_prime(past)
    general = set(load_trade("general").attributes)
    return compose_prime(tuple(chain(past, (one.name for one in load_trade(trade).attributes if one not in general))))
