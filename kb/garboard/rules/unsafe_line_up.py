"""An operating state lines the plant up so that it can hurt somebody.

Question: with every valve where the state has it and its machines running, can a machine fill a vessel that has
no relief valve for its rating, or one that its stop switch does not feel, or does it run against a shut outlet
without relief?

Why: an operating state is what people put the plant into on purpose and leave it in. 29 CFR 1917.155(b): no
valve between a receiver and its relief valve; 46 CFR 56.07-10(a)(2): the weakest part sets the limit.

Bad: charging: shut SA-HV-017, the valve under the relief valve; running SA-CP-001.

Good: charging: open SA-HV-017; running SA-CP-001.

Fix: correct the positions of the state, or take the machine out of `running`; where the plant has to stand so,
change the layout.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.errors import Diagnostic, Severity
from garboard.systems.forbidden import gathered
from garboard.systems.modes import find_unsafe

CODE = "unsafe-line-up"
SEVERITY = Severity.STOP
BINDS_FROM = "building"
WAIVABLE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Look at the plant as it stands in every operating state."""
    for code, surveyed in book.surveys.items():
        system = surveyed.plant.system
        for name, troubles in find_unsafe(surveyed.plant):
            for trouble in gathered(troubles):
                where = system.place(f"operating_states.{name}")
                text = f"in `{name}` {trouble.text}"
                cure = "correct its positions, or take the machine out of `running`"
                yield Diagnostic(where, SEVERITY, text, cure, CODE, trouble.about or code)
