"""What runs in a system, as far as a check asks: a gas, a liquid, or current."""

from enum import StrEnum

from garboard.records.system import System

__all__ = ["DIRECT_CURRENT", "GASES", "Medium", "medium_of", "medium_word"]

GASES = ("air", "gas", "steam", "nitrogen", "oxygen", "carbon dioxide", "refrigerant", "exhaust")
DIRECT_CURRENT = "direct current"


class Medium(StrEnum):
    """How a medium behaves when it is shut in."""

    GAS = "gas"
    LIQUID = "liquid"
    CURRENT = "current"


def medium_of(system: System, service: str = "") -> Medium:
    """The medium of a system, or of one of its services where that says another.

    Air, gas and steam are gases, and so is what ends in such a word (`compressed air`).
    """
    word = medium_word(system, service)
    if word == DIRECT_CURRENT:
        return Medium.CURRENT
    gas = any(word == name or word.endswith(f" {name}") for name in GASES)
    return Medium.GAS if gas else Medium.LIQUID


def medium_word(system: System, service: str = "") -> str:
    """The medium of a system, or of one of its services, as its author calls it; in small letters."""
    own = (system.services or {}).get(service)
    return ((own.medium if own else None) or system.medium or "").casefold().strip()
