"""How likely it is that a clause built like a step is one: named signs, and what each of them weighs."""

from extract.steps.evidence.signs import signs_of
from extract.steps.evidence.weights import Weights, step_weights

__all__ = ["Weights", "signs_of", "step_weights"]
