"""A quick card does not fit on one side of A5 at 12 pt, leaves steps out, or parts a value from its unit.

Why: a card that runs over is folded, cut or printed small, and the line that is missing is the one that
was wanted. Type is never made smaller and no step is dropped to make it fit.

Fix: shorten what the record says, or part the task over several cards: give each its own number, place and
`steps`, such as `1-4` and `5-9`. Every step must stand on one of them.
"""

from collections.abc import Iterator

from garboard.book import Book
from garboard.changes.hanging import record_of
from garboard.errors import Diagnostic, Severity
from garboard.records.card_room import fitted, over_one_side
from garboard.records.hazard import Hazard
from garboard.records.procedure import Procedure
from garboard.records.quick_card import missing_steps, plan_of

CODE = "card-overflows"
SEVERITY = Severity.HOLD
BINDS_FROM = "sketch"
WAIVABLE = False
AT_ISSUE = True


def check(book: Book) -> Iterator[Diagnostic]:
    """Reckon every card that hangs, and look for steps that stand on none."""
    vessel = book.content.vessel
    told: set[str] = set()
    for number, card in enumerate(vessel.cards):
        record = record_of(book, card)
        if card.removed or record is None:
            continue
        key = str(record.id)
        plan = plan_of(card, record, vessel.cards)
        found = [book.records.get(one) for one in plan.messages]
        hazards = [one for one in found if isinstance(one, Hazard)]
        plan = fitted(plan, book.components, hazards)
        over = over_one_side(plan, book.components, hazards)
        where = vessel.place(f"cards[{number}].card")
        if over:
            text = f"card {card.card} of {key} does not fit on one side: {'; '.join(over)}"
            cure = f"shorten {key}, or part it over several cards with steps: 1-4, 5-8"
            yield Diagnostic(where, SEVERITY, text, cure, CODE, key)
        if isinstance(record, Procedure) and key not in told:
            told.add(key)
            left = missing_steps(record, vessel.cards)
            if left:
                steps = ", ".join(map(str, left))
                text = (
                    f"step {steps} of {key} stands on no card"
                    if len(left) == 1
                    else (f"steps {steps} of {key} stand on no card")
                )
                yield Diagnostic(
                    where,
                    SEVERITY,
                    text,
                    f"make a card of them: steps: {left[0]}-{left[-1]}",
                    CODE,
                    key,
                )
