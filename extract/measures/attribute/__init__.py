"""What a figure measures: two ordered tables of rules, for what is said and for what is not.

The item is looked for between the two: a word of measure tells whose it is, and a thing tells how it is measured.
"""

from extract.measures.attribute import around, before, behind, change, inferred, joined, loose
from extract.measures.attribute.near import Rule, usual_measure

__all__ = ["INFERRED", "SAID", "Rule", "usual_measure"]

SAID: tuple[tuple[str, Rule], ...] = (
    ("removal", behind.by_removal),
    ("difference", loose.by_difference),
    ("every", change.by_every),
    ("existence", behind.by_existence),
    ("adjective behind", behind.by_adjective),
    ("noun behind", behind.by_noun),
    ("off", change.by_off),
    ("of", loose.by_of),
    ("series", behind.by_series),
    ("restated", joined.by_restatement),
    ("thing behind", behind.by_thing),
    ("narrowing", change.by_narrowing),
    ("change", change.by_change),
    ("noun before", before.by_noun),
    ("following", joined.by_following),
    ("verb before", before.by_verb),
    ("verb to", before.by_verb_to),
    ("adjective before", before.by_adjective),
    ("preposition", loose.by_preposition),
    ("noun in sentence", around.by_noun_in_sentence),
    ("unlike word", before.by_unlike_word),
    ("direction", before.by_direction),
    ("span", around.by_span),
    ("pronoun for it", around.by_pronoun),
    ("verb in sentence", around.by_verb_in_sentence),
    ("heading", around.by_heading),
)
"""Rules for attributes that are said; the first that answers wins."""

INFERRED: tuple[tuple[str, Rule], ...] = (
    ("probe", inferred.by_probe),
    ("again", inferred.by_again),
    ("pronoun", inferred.by_pronoun),
    ("pending", around.by_pending),
    ("company", inferred.by_company),
    ("look", inferred.by_look),
    ("usual of the thing", inferred.by_usual),
    ("same item", inferred.by_same_item),
    ("band", inferred.by_band),
    ("reading", inferred.by_reading),
    ("repetition", inferred.by_repetition),
    ("carried", inferred.by_carrying),
    ("usual of the topic", inferred.by_usual_topic),
    ("kind", inferred.by_kind),
)
"""Rules for attributes that are not said; they need the item."""
