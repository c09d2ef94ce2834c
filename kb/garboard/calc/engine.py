"""Which engine worked something out: its own text, the interpreter, the number libraries.

A developer's edit of the core or of a method, another Python or another numpy may change a last
figure, so each makes another engine. What another engine has kept is never read.
"""

import platform
import sys
from collections.abc import Mapping
from functools import cache
from hashlib import blake2b
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from garboard.calc.method import Method

__all__ = ["digest", "engine", "engine_of"]

HOUSE = Path(__file__).parent.parent
ROOMS = ("calc/*.py", "methods/**/*.py", "errors.py", "names.py")
"""What decides about a worked number."""
LIBRARIES = ("numpy", "pint")
OWN = "garboard.methods."


def digest(*parts: str) -> str:
    """A short name that only these texts have.

    >>> digest("a", "b") == digest("ab"), len(digest("a"))
    (False, 40)
    """
    found = blake2b(digest_size=20)
    for part in parts:
        raw = part.encode("utf-8", "surrogatepass")
        found.update(b"%d:" % len(raw))
        found.update(raw)
    return found.hexdigest()


@cache
def engine(further: tuple[str, ...] = ()) -> str:
    """The engine of this process; empty where its own text cannot be read, so nothing is kept.

    Args:
        further: Other modules that decide about what is kept, `records/*.py`.
    """
    try:
        texts = [
            text
            for pattern in (*ROOMS, *further)
            for path in sorted(HOUSE.glob(pattern))
            for text in (path.relative_to(HOUSE).as_posix(), path.read_text("utf-8"))
        ]
        libraries = [version(name) for name in LIBRARIES]
    except (OSError, ValueError, PackageNotFoundError):
        return ""
    return digest(sys.version, platform.machine(), sys.platform, *libraries, *texts)


def engine_of(methods: Mapping[str, Method]) -> str:
    """The engine with a table of methods.

    Args:
        methods: The methods that a calculation may call.

    Returns:
        Its digest; empty where a method's code stands outside the engine, so nothing is kept.
    """
    own = engine()
    told = []
    for name, method in methods.items():
        look_up = getattr(method, "look_up", None)
        if look_up is not None and not f"{look_up.__module__}.".startswith(OWN):
            return ""
        told += [
            name,
            f"{getattr(look_up, '__module__', '')}:{getattr(look_up, '__qualname__', '')}",
        ]
        told += [repr(part) for part in (method.parameters, method.results, method.limits)]
        told += [repr(getattr(method, part, None)) for part in ("body", "alarms")]
    return own and digest(own, *told)
