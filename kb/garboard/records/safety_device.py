"""Which parts are safety devices: what must work by itself when nobody is looking."""

from garboard.records.component import Component

__all__ = ["is_safety_device"]

ALWAYS = (
    "relief valve",
    "bursting disc",
    "fuse",
    "breaker",
    "pressure switch",
    "level switch",
    "transmitter",
    "quick-closing valve",
)


def is_safety_device(part: Component) -> bool:
    """Whether somebody's safety hangs on the part working by itself: by its kind, or by its duty."""
    return part.kind in ALWAYS or bool(part.stops or part.watches)
