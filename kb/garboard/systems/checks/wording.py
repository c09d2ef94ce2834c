"""What several checks of a layout say alike: how a valve is made sure of."""

from garboard.systems.enquiry import Enquiry
from garboard.systems.line_up import LineUp

__all__ = ["secure"]


def secure(enquiry: Enquiry, line: LineUp) -> str:
    """The second way out of a finding that hangs on valves: one of them is held where it is safe.

    Args:
        enquiry: The plant that is asked; where its locks are free, one that is locked already stays so.
        line: How the valves stand when it happens.
    """
    plant = enquiry.plant
    moved = (*line.shut, *(tag for tag, _ in line.turned))
    locked = [tag for tag in moved if plant.parts[plant.numbers[tag]].locked is not None]
    if locked and not enquiry.locks:
        return f"leave {' or '.join(locked)} locked and ask for a concession"
    held = [" or ".join(line.shut) + " open"] if line.shut else []
    held += [f"{tag} so that it cannot stand at {position}" for tag, position in line.turned]
    if not held:
        return "move the one there is"
    return f"lock {' or '.join(held)}, say how it is secured, and put it on a round"
