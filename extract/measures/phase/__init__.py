"""Whether a figure was found, is aimed at, was reached or is said in general: one ordered table of rules."""

from extract.measures.figure import Figure, Finding
from extract.measures.phase import implied, spoken
from extract.measures.phase.stretches import Rule
from extract.record import Phase

__all__ = ["RULES", "find_phase"]

RULES: tuple[tuple[str, Rule], ...] = (
    ("restated", spoken.by_restatement),
    ("following", spoken.by_following),
    ("sum", spoken.by_sum),
    ("rotation", implied.by_rotation),
    ("general", spoken.by_general_words),
    ("result", spoken.by_result_words),
    ("now", spoken.by_now),
    ("verdict", spoken.by_verdict),
    ("past", spoken.by_past),
    ("contrast", spoken.by_found_behind),
    ("target", spoken.by_target_words),
    ("thing", implied.by_thing),
    ("made", spoken.by_made),
    ("reading", spoken.by_reading),
    ("work", spoken.by_work),
    ("again", implied.by_again),
    ("defect", implied.by_defect),
    ("kind", implied.by_kind),
    ("meter", implied.by_meter),
    ("material", implied.by_material),
    ("new", implied.by_new),
    ("end", implied.by_end),
    ("state", implied.by_state),
    ("progress", implied.by_progress),
)
"""The first rule that answers wins; the last always answers."""


def find_phase(figure: Figure, finding: Finding) -> tuple[Phase, str]:
    """The phase of a figure and the name of the rule that gave it."""
    for name, rule in RULES:
        phase = rule(figure, finding)
        if phase:
            return phase, name
    raise LookupError("the last rule of the table must always answer")
