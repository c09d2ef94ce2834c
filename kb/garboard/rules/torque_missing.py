"""A joint that holds pressure has no torque on record.

Why: too loose it weeps, too tight the bolt is spent before the pressure comes; and the next person closes
it by feel.

Fix: write `torque` of the joint from the maker's sheet, with its source and tolerance, and whether the
threads are dry or oiled; or leave it to the maker's sheet, which is then what binds.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity

CODE = "torque-missing"
SEVERITY = Severity.NOTE
BINDS_FROM = "sketch"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look through the joints of every part."""
    for part in book.components.values():
        for key, joint in (part.joints or {}).items():
            path = f"joints.{key}"
            if (
                joint.holds_pressure
                and joint.torque is None
                and f"{path}.torque" not in part.places
            ):
                name = joint.name or key.replace("_", " ")
                text = f"{name} of {part.tag} holds pressure and has no torque"
                cure = (
                    "write torque from the maker's sheet with its source, and threads: dry or oiled"
                )
                yield Diagnostic(part.at_place(path), SEVERITY, text, cure, CODE, part.tag)
