"""Who draws: the core knows no site generator, so whoever does offers itself by an entry point."""

from importlib.metadata import entry_points

from garboard.errors import GarboardError

__all__ = ["who_draws"]


def who_draws(group: str, what: str) -> object:
    """What is offered, of several the first by name.

    Args:
        group: The entry point group.
        what: What it draws, in words: `a site`.

    Raises:
        GarboardError: Nobody has offered to.
    """
    for entry in sorted(entry_points(group=group), key=lambda one: one.name):
        return entry.load()
    raise GarboardError(
        f"nothing is installed that draws {what} (entry point group {group}); install garboard anew"
    )
