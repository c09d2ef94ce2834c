"""What was worked out before, of one content folder: blocks, units, proofs."""

from collections.abc import Callable, Mapping
from pathlib import Path

from garboard.calc.engine import engine
from garboard.calc.known_units import recall_units, write_units
from garboard.calc.method import Method
from garboard.calc.store import Store
from garboard.methods.kept_proofs import read_proofs, write_proofs
from garboard.methods.proof import ProofResult
from garboard.reading.store_folder import StoreFolder

__all__ = ["KeptWork"]

VALUES, UNITS, PROOFS = "values.json", "units.json", "proofs.json"


class KeptWork:
    """Opened before a folder is read, saved once it has been worked out."""

    def __init__(self, content: Path) -> None:
        self.folder = StoreFolder(content, engine())
        self.units = self.folder.read(UNITS) or ""
        recall_units(self.units)
        self.store = Store.read(self.folder.read(VALUES) or "")

    def proofs(
        self, methods: Mapping[str, Method], prove: Callable[[], tuple[ProofResult, ...]]
    ) -> tuple[ProofResult, ...]:
        """The outcome of every case of every method.

        Args:
            methods: The methods.
            prove: Runs them, where this engine has not done so here before.
        """
        found = read_proofs(self.folder.read(PROOFS) or "", methods)
        if found is None:
            found = prove()
            self.folder.write(PROOFS, write_proofs(found))
        return found

    def save(self) -> None:
        """Write what has changed."""
        if self.store.changed:
            self.folder.write(VALUES, self.store.write())
            self.store.changed = False
        units = write_units()
        if units != self.units:
            self.folder.write(UNITS, units)
            self.units = units
