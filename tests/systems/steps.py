"""Count the lines of the graph's own code that one answer runs: a measure of work that no clock and no load disturbs."""

import sys
from collections.abc import Callable
from types import FrameType
from typing import Any

from garboard.systems import enquiry

GRAPH = enquiry.__file__.rpartition("/")[0]


def steps(ask: Callable[[], object]) -> int:
    """How many lines under `garboard/systems` run while something is asked."""
    count = 0

    def line(frame: FrameType, event: str, _: Any) -> Any:
        nonlocal count
        del frame
        count += event == "line"
        return line

    def call(frame: FrameType, _event: str, _: Any) -> Any:
        return line if frame.f_code.co_filename.startswith(GRAPH) else None

    before = sys.gettrace()
    sys.settrace(call)
    try:
        ask()
    finally:
        sys.settrace(before)
    return count
