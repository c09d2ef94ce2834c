"""Cases of our own: arithmetic that follows from a definition, and rules stricter than their sources."""

from functools import partial
from typing import Final

from garboard.calc.method import Proof

__all__ = ["HOUSE", "OWN"]

OWN: Final = partial(Proof, source="definition", seen="constructed", basis="constructed")
HOUSE: Final = partial(Proof, source="house-rule", seen="constructed", basis="constructed")
