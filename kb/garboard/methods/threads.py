"""The thread by diameter and pitch together, and the real bore of a nominal pipe.

A nominal size is a name, not a length: it is written without a unit, 1.25 for 1 1/4, and no
figure of it is ever taken for a bore. Half-inch and three-quarter-inch pipe threads of 55 and of
60 degrees have the same count, so there the flank angle is asked for.

By hand: a 1/4 thread is 13.157 mm over the crests with 19 to the inch: 25.4 / 19 = 1.3368 mm,
less 2 x 0.640327 x 1.3368 leaves 11.445 mm. A 1 1/4 pipe of schedule 40 is 42.2 mm outside and
35.08 mm inside, neither 31.75 nor 32.
"""

import math
from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Answer, Argument, Grade, Limit, Parameter, Result, TableMethod
from garboard.errors import OutsideValidity
from garboard.methods.cases.threads import THREAD_AND_PIPE_SIZE
from garboard.methods.figures import NEAR, Figure, number, required
from garboard.methods.publications import published

__all__ = ["THREAD_AND_PIPE_SIZE_METHOD"]

_NAMES: Final = {
    "0.125": "1/8",
    "0.25": "1/4",
    "0.375": "3/8",
    "0.5": "1/2",
    "0.75": "3/4",
    "1": "1",
    "1.25": "1 1/4",
    "1.5": "1 1/2",
    "2": "2",
    "3": "3",
    "4": "4",
}
"""How a nominal size is written in a call, and how the trade writes it."""

G_AND_R: Final = {
    "0.125": (28, 9.728),
    "0.25": (19, 13.157),
    "0.375": (19, 16.662),
    "0.5": (14, 20.955),
    "0.75": (14, 26.441),
    "1": (11, 33.249),
    "1.25": (11, 41.91),
    "1.5": (11, 47.803),
    "2": (11, 59.614),
}
"""Parallel and taper threads of 55 degrees: threads to the inch, diameter over the crests in mm."""

NPT: Final = {
    "0.125": 27,
    "0.25": 18,
    "0.375": 18,
    "0.5": 14,
    "0.75": 14,
    "1": 11.5,
    "2": 11.5,
}
"""Taper threads of 60 degrees: threads to the inch. No diameter is held."""

PIPE_MM: Final = {
    "0.5": (21.3, 15.76, 13.84),
    "0.75": (26.7, 20.96, 18.88),
    "1": (33.4, 26.64, 24.3),
    "1.25": (42.2, 35.08, 32.5),
    "1.5": (48.3, 40.94, 38.14),
    "2": (60.3, 52.48, 49.22),
    "3": (88.9, 77.92, 73.66),
    "4": (114.3, 102.26, 97.18),
}
"""Outside diameter, bore of schedule 40, bore of schedule 80."""

_SCHEDULES: Final = ("40", "80")
_MEASURED: Final = Figure(0.3, "mm")
"""A diameter is measured this near, or the thread is another one."""
_DEPTH: Final = 2 * 0.640327
"""Of the pitch, both sides, for flanks of 55 degrees."""
_WHITWORTH: Final = 55
_THREADS, _PIPES = "iso-228-7", "asme-b36.10"

_NO_PITCH: Final = "the pitch is not counted: diameter and threads to the inch go together"
_NO_DIAMETER: Final = "the diameter over the crests is not measured"
_SHARED: Final = (
    "threads of 55 and of 60 degrees share 14 to the inch (half inch G and NPT): give the angle or "
    "use a gauge"
)
_Asked = Mapping[str, Argument]


def _per_inch(asked: _Asked) -> float:
    """Threads counted to the inch."""
    return required(asked, "tpi", _NO_PITCH) / Figure(1, "1/inch").si


def _same(one: float, other: float) -> bool:
    return math.isclose(one, other, rel_tol=NEAR)


def _angle(asked: _Asked) -> float | None:
    """Flank angle in degrees."""
    angle = number(asked, "angle")
    return None if angle is None else math.degrees(angle)


def _shared(count: float) -> list[str]:
    """The sizes of 60 degree threads with this count."""
    return [size for size, per_inch in NPT.items() if _same(count, per_inch)]


def _identify(major: float, count: float, angle: float | None) -> str:
    """The size whose diameter and count both agree."""
    shared = _shared(count)
    near = [
        size
        for size, (per_inch, crest) in G_AND_R.items()
        if _same(count, per_inch) and abs(major - Figure(crest, "mm").si) <= _MEASURED.si
    ]
    if angle is not None and not _same(angle, _WHITWORTH):
        raise OutsideValidity(_foreign(shared, f"flanks of {angle:g} degrees"))
    if shared and not near:
        raise OutsideValidity(_foreign(shared, f"{count:g} to the inch"))
    if shared and angle is None:
        raise OutsideValidity(_SHARED)
    if not near:
        raise OutsideValidity(
            f"no thread held has {count:g} to the inch within {_MEASURED} of that diameter: "
            "measure again, or it is another thread"
        )
    return near[0]


def _foreign(shared: list[str], what: str) -> str:
    counts = (
        f"; the count is that of NPT {', '.join(_NAMES[size] for size in shared)}" if shared else ""
    )
    return f"no diameter is held for a thread with {what}{counts}: use a gauge"


def _check_named(size: str, major: float, count: float) -> str:
    """Hold a measured thread against the size it is said to be."""
    if size not in G_AND_R:
        raise OutsideValidity(f"no thread is held for size {_NAMES[size]}")
    per_inch, crest = G_AND_R[size]
    if not _same(count, per_inch) or abs(major - Figure(crest, "mm").si) > _MEASURED.si:
        raise OutsideValidity(
            f"a {_NAMES[size]} thread of 55 degrees is {crest} mm with {per_inch} to the inch: this "
            "is another thread"
        )
    return size


def _thread(asked: _Asked) -> Answer:
    """Identify a thread and give its minor diameter."""
    major, count = required(asked, "major", _NO_DIAMETER), _per_inch(asked)
    angle = _angle(asked)
    if "size" in asked and angle is None:
        size = _check_named(asked["size"].word, major, count)
    else:
        size = _identify(major, count, angle)
    if "size" in asked and size != asked["size"].word:
        raise OutsideValidity(f"this is a {_NAMES[size]} thread, not {asked['size'].text}")
    per_inch, crest = G_AND_R[size]
    pitch = Figure(1, "inch").si / count
    minor = major - _DEPTH * pitch
    doubtful = angle is None and _shared(count)
    return Answer(
        results={"minor": minor},
        words={} if doubtful else {"identified": f"G {_NAMES[size]}"},
        columns=("thread", "over the crests", "to the inch", "source"),
        rows=((f"G {_NAMES[size]} or R {_NAMES[size]}", f"{crest} mm", str(per_inch), _THREADS),),
        notes=(
            "parallel (G) and taper (R) have the same count and angle: look whether it tapers",
            "a thread that starts is not a thread that fits: named, not interchangeable",
            *((f"not identified: {_SHARED}",) if doubtful else ()),
        ),
    )


def _pipe(asked: _Asked) -> Answer:
    """Read the real diameters of a nominal pipe."""
    if "size" not in asked:
        raise OutsideValidity("say the nominal size of the pipe")
    size = asked["size"].word
    if size not in PIPE_MM:
        raise OutsideValidity(f"no pipe is held for size {_NAMES[size]}")
    schedule = asked["schedule"].word
    outside, *bores = (Figure(value, "mm") for value in PIPE_MM[size])
    bore = bores[_SCHEDULES.index(schedule)]
    return Answer(
        results={"bore": bore.si, "outside": outside.si},
        printed={"bore": str(bore), "outside": str(outside)},
        columns=("pipe", "outside", "bore", "source"),
        rows=((f"nominal {_NAMES[size]}, schedule {schedule}", str(outside), str(bore), _PIPES),),
        notes=("the nominal size is a name: neither it nor the DN number is a bore",),
    )


def look_up(asked: _Asked) -> Answer:
    """Read a pipe where a schedule is given, a thread where a diameter or count is."""
    if "schedule" in asked:
        if {"major", "tpi", "angle"} & set(asked):
            raise OutsideValidity("a pipe or a thread, one at a time")
        return _pipe(asked)
    if not {"major", "tpi", "angle"} & set(asked):
        raise OutsideValidity(
            "give the schedule for a pipe, or diameter and threads to the inch for a thread"
        )
    return _thread(asked)


THREAD_AND_PIPE_SIZE_METHOD: Final = TableMethod(
    name="thread_and_pipe_size",
    title="Thread and real bore of a pipe",
    purpose="Stop purchases of the wrong thread or bore: name a thread from its diameter and "
    "pitch, give the real bore of a nominal pipe.",
    grade=Grade.A,
    parameters=(
        Parameter("major", "diameter over the crests, measured", "mm", missing=_NO_DIAMETER),
        Parameter("tpi", "threads counted to the inch", "1/inch", missing=_NO_PITCH),
        Parameter("angle", "flank angle, if known", "deg"),
        Parameter("size", "nominal size, a name without a unit", words=tuple(_NAMES)),
        Parameter("schedule", "wall schedule of the pipe", words=_SCHEDULES),
    ),
    results=(
        Result("minor", "diameter at the roots, 55 degree form", "mm"),
        Result("identified", "thread, by its name"),
        Result("bore", "inside diameter of the pipe", "mm"),
        Result("outside", "outside diameter of the pipe", "mm"),
    ),
    limits=(
        Limit("major > 0 mm", _NO_DIAMETER),
        Limit("tpi > 0 1/inch", _NO_PITCH),
    ),
    valid=(
        "worked out as minor = major - 2 x 0.640327 x 25.4 mm / threads to the inch",
        "identification only: diameter within 0.3 mm and an exact count",
        "threads of 55 degrees from 1/8 to 2; pipes from 1/2 to 4, schedules 40 and 80",
        "a size or schedule that is not in the tables is refused: no value is held",
    ),
    sources=published(_THREADS, _PIPES, "definition"),
    caution="A thread that starts is not a thread that fits. Parallel and taper, 55 and 60 "
    "degrees do not mix.",
    deferral="Pressure rating comes from the maker of the fitting.",
    do_not=("rate a fitting for pressure", "call a thread interchangeable"),
    proofs=THREAD_AND_PIPE_SIZE,
    look_up=look_up,
)
