"""The outcome of the proofs as text, so that an unchanged engine need not run them at every build.

It is kept with the engine that ran them: an edit of a method, or of the core, makes another engine,
and every case runs again.
"""

import json
from collections.abc import Iterable, Mapping

from garboard.calc.method import Method
from garboard.methods.proof import Outcome, ProofResult

__all__ = ["read_proofs", "write_proofs"]


def write_proofs(results: Iterable[ProofResult]) -> str:
    """All outcomes: JSON, a line a case."""
    rows = (
        [
            each.method.name, each.proof.name, each.ours, each.published, each.difference,
            each.outcome.value, each.why, each.number,
        ]
        for each in results
    )  # fmt: skip
    return "[" + ",\n".join(json.dumps(row) for row in rows) + "]"


def read_proofs(text: str, methods: Mapping[str, Method]) -> tuple[ProofResult, ...] | None:
    """The outcomes of an earlier run.

    Args:
        text: As written by `write_proofs`.
        methods: The methods as they are now.

    Returns:
        None where the text is something else, or not about every case of these methods in order.
    """
    cases = [(method, proof) for method in methods.values() for proof in method.proofs]
    found = []
    try:
        for (method, proof), row in zip(cases, json.loads(text), strict=True):
            name, case, ours, published, difference, outcome, why, number = row
            texts = all(isinstance(part, str) for part in (ours, published, why))
            numbers = all(part is None or type(part) is float for part in (difference, number))
            if (name, case) != (method.name, proof.name) or not texts or not numbers:
                return None
            held = Outcome(outcome)
            found.append(ProofResult(method, proof, ours, published, difference, held, why, number))
    except (ValueError, TypeError, RecursionError):
        return None
    return tuple(found)
