"""A signature that the rules would speak against: what they say of it, and nothing is written."""

import sys
from collections import Counter
from collections.abc import Iterable, Iterator

from garboard.errors import Diagnostic

__all__ = ["newly_found", "say_refused"]


def newly_found(before: Iterable[Diagnostic], after: Iterable[Diagnostic]) -> Iterator[Diagnostic]:
    """What is said with a line of signature, and was not said without it.

    Faults are counted and not compared: a second line may have the very fault of a first.

    Args:
        before: What the rules say without it.
        after: What they say with it.
    """
    known = Counter((one.code, one.text) for one in before)
    for one in after:
        if known[one.code, one.text]:
            known[one.code, one.text] -= 1
        else:
            yield one


def say_refused(name: str, against: Iterable[Diagnostic], lacks: str = "") -> int:
    """Say on stderr why it is not signed.

    Args:
        name: What was to be signed.
        against: The faults that it would have.
        lacks: Who may not sign, and what; empty where the signer may.

    Returns:
        The exit status.
    """
    print(f"garboard: {name} is not signed; nothing was written", file=sys.stderr)
    if lacks:
        print(f"  {lacks}", file=sys.stderr)
    for item in against:
        print(f"  {item.text} [{item.code}]\n    help: {item.help}", file=sys.stderr)
    return 2
