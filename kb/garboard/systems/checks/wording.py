"""What several checks of a layout say alike: a list of tags, and how a valve is made sure of."""

from garboard.systems.line_up import LineUp

__all__ = ["listed", "secure"]


def listed(tags: tuple[str, ...]) -> str:
    """Tags in a row: `SA-NV-001, SA-FI-001 and SA-ST-001`."""
    if len(tags) < 2:
        return "".join(tags)
    return f"{', '.join(tags[:-1])} and {tags[-1]}"


def secure(line: LineUp) -> str:
    """The second way out of a finding that hangs on valves: one of them is held where it is safe."""
    held = [*line.shut, *(f"{tag} out of {position}" for tag, position in line.turned)]
    if not held:
        return "move the one there is"
    held[len(line.shut) - 1] += " open" if line.shut else ""
    return f"lock {' or '.join(held)}, say how it is secured, and put it on a round"
