"""The thing that has the measure: a table of rules that propose things, and weighed signs that choose among them."""

from extract.measures.item.rules import RULES, Rule
from extract.measures.item.weighing import find_item

__all__ = ["RULES", "Rule", "find_item"]
