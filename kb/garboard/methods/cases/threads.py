"""Cases for threads and pipes: every row of the tables, and what is refused."""

from functools import partial
from typing import Final

from garboard.calc.method import Expect, Proof
from garboard.methods.cases.constructed import OWN

__all__ = ["THREAD_AND_PIPE_SIZE"]

_THREAD: Final = partial(Proof, source="iso-228-7", seen="secondary", basis="table")
_PIPE: Final = partial(Proof, source="asme-b36.10", seen="secondary", basis="table")
_MINOR: Final = partial(_THREAD, result="minor", absolute="0.004 mm")
_REFUSED: Final = partial(OWN, result="minor", expect=Expect.REFUSE)
_HALF: Final = {"major": "20.95 mm", "tpi": "14 1/inch"}

_PUBLISHED: Final = (
    _MINOR(
        name="thread-minor-1_4",
        call={"size": "0.25", "major": "13.157 mm", "tpi": "19 1/inch"},
        value="11.445 mm",
        independent="scipy 1.17.1: 11.445 mm",
        note="the charts print 0.4506 inch",
    ),
    _MINOR(
        name="thread-minor-1_2",
        call={"size": "0.5", "major": "20.955 mm", "tpi": "14 1/inch"},
        value="18.631 mm",
        independent="scipy 1.17.1: 18.6315 mm",
        note="the charts print 0.7335 inch",
    ),
    _MINOR(
        name="thread-minor-1",
        call={"size": "1", "major": "33.249 mm", "tpi": "11 1/inch"},
        value="30.292 mm",
        independent="scipy 1.17.1: 30.2919 mm",
        note="the charts print 1.1926 inch",
    ),
    _THREAD(
        name="thread-identify-half",
        call={**_HALF, "angle": "55 deg"},
        result="identified",
        value="G 1/2",
    ),
    _PIPE(
        name="pipe-bore-1.25",
        call={"size": "1.25", "schedule": "40"},
        result="bore",
        value="35.08 mm",
        absolute="0.1 mm",
        must_not_give=(
            ("31.75 mm", "nominal size taken as bore"),
            ("32 mm", "DN number taken as bore"),
        ),
        independent="fluids 1.3.1: 35.08 mm",
    ),
    _MINOR(
        name="thread-minor-3_4",
        call={"size": "0.75", "major": "26.441 mm", "tpi": "14 1/inch"},
        value="24.117 mm",
        independent="scipy 1.17.1: 24.1175 mm",
        note="the charts print 0.9495 inch",
    ),
    _PIPE(
        name="pipe-outside-1",
        call={"size": "1", "schedule": "40"},
        result="outside",
        value="33.4 mm",
        absolute="0.05 mm",
        must_not_give=(("25.4 mm", "one inch taken literally"),),
        independent="fluids 1.3.1: 33.4 mm",
    ),
)

_EDGES: Final = (
    _REFUSED(
        name="thread-no-pitch",
        call={"major": "20.95 mm"},
        value="the pitch is not counted",
    ),
    _REFUSED(
        name="thread-no-diameter",
        call={"tpi": "14 1/inch"},
        value="the diameter over the crests is not measured",
    ),
    _REFUSED(
        name="thread-half-without-angle",
        call=_HALF,
        value="give the angle or use a gauge",
    ),
    _REFUSED(
        name="thread-sixty-degrees",
        call={**_HALF, "angle": "60 deg"},
        value="the count is that of NPT 1/2, 3/4: use a gauge",
    ),
    _REFUSED(
        name="thread-sixty-degrees-named",
        call={**_HALF, "size": "0.5", "angle": "60 deg"},
        value="no diameter is held for a thread with flanks of 60 degrees",
    ),
    _THREAD(
        name="thread-just-near-enough",
        call={"major": "12.87 mm", "tpi": "19 1/inch"},
        result="identified",
        value="G 1/4",
        note="0.287 mm under",
    ),
    _REFUSED(
        name="thread-just-too-far",
        call={"major": "12.847 mm", "tpi": "19 1/inch"},
        value="no thread held has 19 to the inch within 0.3 mm",
        note="0.31 mm under",
    ),
    _REFUSED(
        name="thread-metric-count",
        call={"major": "20 mm", "tpi": "16.9333 1/inch"},
        value="no thread held has 16.9333 to the inch",
        note="a pitch of 1.5 mm",
    ),
    _REFUSED(
        name="thread-half-too-far",
        call={"major": "21.34 mm", "tpi": "14 1/inch", "angle": "55 deg"},
        value="the count is that of NPT 1/2, 3/4",
    ),
    _REFUSED(
        name="thread-named-wrongly",
        call={"size": "0.375", "major": "13.157 mm", "tpi": "19 1/inch"},
        value="a 3/8 thread of 55 degrees is 16.662 mm with 19 to the inch",
    ),
    _REFUSED(
        name="thread-named-just-too-far",
        call={"size": "0.25", "major": "12.847 mm", "tpi": "19 1/inch"},
        value="this is another thread",
    ),
    _REFUSED(
        name="thread-named-wrongly-with-angle",
        call={**_HALF, "size": "0.75", "angle": "55 deg"},
        value="this is a 1/2 thread, not 0.75",
    ),
    _REFUSED(
        name="thread-size-not-held",
        call={"size": "3", "major": "87.9 mm", "tpi": "11 1/inch"},
        value="no thread is held for size 3",
    ),
    _MINOR(
        name="thread-diameter-in-inches",
        call={"major": "0.518 inch", "tpi": "19 1/inch"},
        value="11.445 mm",
        note="no angle is needed where no other thread has that count",
    ),
    _REFUSED(
        name="pipe-size-not-held",
        call={"size": "0.25", "schedule": "40"},
        result="bore",
        value="no pipe is held for size 1/4",
    ),
    _REFUSED(
        name="pipe-schedule-not-held",
        call={"size": "1", "schedule": "160"},
        result="bore",
        value="`160` is no word for `schedule`",
    ),
    _REFUSED(
        name="pipe-no-schedule",
        call={"size": "1"},
        result="bore",
        value="give the schedule for a pipe",
    ),
    _REFUSED(
        name="pipe-no-size",
        call={"schedule": "40"},
        result="bore",
        value="say the nominal size of the pipe",
    ),
    _REFUSED(
        name="pipe-and-thread",
        call={**_HALF, "size": "0.5", "schedule": "40"},
        result="bore",
        value="a pipe or a thread, one at a time",
    ),
)

_THREADS: Final = tuple(
    _THREAD(
        name=f"thread-row-{size}",
        call={"major": f"{major} mm", "tpi": f"{count} 1/inch", "angle": "55 deg"},
        result="identified",
        value=f"G {trade}",
    )
    for size, trade, count, major in (
        ("0.125", "1/8", 28, 9.728),
        ("0.25", "1/4", 19, 13.157),
        ("0.375", "3/8", 19, 16.662),
        ("0.5", "1/2", 14, 20.955),
        ("0.75", "3/4", 14, 26.441),
        ("1", "1", 11, 33.249),
        ("1.25", "1 1/4", 11, 41.91),
        ("1.5", "1 1/2", 11, 47.803),
        ("2", "2", 11, 59.614),
    )
)

_COUNTS: Final = tuple(
    _REFUSED(
        name=f"thread-npt-{count}",
        call={"major": "30 mm", "tpi": f"{count} 1/inch"},
        value=f"the count is that of NPT {sizes}: use a gauge",
    )
    for count, sizes in (("27", "1/8"), ("18", "1/4, 3/8"), ("14", "1/2, 3/4"), ("11.5", "1, 2"))
)

_PIPES: Final = tuple(
    _PIPE(
        name=f"pipe-{result}-{size}-{schedule}",
        call={"size": size, "schedule": schedule},
        result=result,
        value=f"{value} mm",
    )
    for size, outside, bore_40, bore_80 in (
        ("0.5", 21.3, 15.76, 13.84),
        ("0.75", 26.7, 20.96, 18.88),
        ("1", 33.4, 26.64, 24.3),
        ("1.25", 42.2, 35.08, 32.5),
        ("1.5", 48.3, 40.94, 38.14),
        ("2", 60.3, 52.48, 49.22),
        ("3", 88.9, 77.92, 73.66),
        ("4", 114.3, 102.26, 97.18),
    )
    for result, schedule, value in (
        ("outside", "40", outside),
        ("bore", "40", bore_40),
        ("bore", "80", bore_80),
    )
)

THREAD_AND_PIPE_SIZE: Final = _PUBLISHED + _EDGES + _THREADS + _COUNTS + _PIPES
