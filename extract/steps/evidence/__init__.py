"""How likely it is that a clause built like a step is one: named signs, and what each of them weighs."""

from functools import cache

from extract.steps.evidence.signs import signs_of
from extract.weights import Weights, weight_file

__all__ = ["Weights", "signs_of", "step_weights"]


@cache
def step_weights() -> Weights:
    """The weights that `python -m tests.benchmarks.fit_steps` fitted."""
    data = weight_file("step")
    return Weights(data["bias"], data["signs"])
