"""One line that calls a method, worked out as a handbook would."""

import pytest

from garboard.calc.network import Network, evaluate
from garboard.calc.sheet import Fence
from garboard.errors import Where
from garboard.methods import METHODS
from tests.methods.said import Work


@pytest.fixture
def work() -> Work:
    """Work the lines of one fence out, called `case`."""

    def work(*lines: str) -> Network:
        fence = Fence("case", "", lines, Where("case.md"), "case")
        return evaluate([fence], {}, METHODS)

    return work
