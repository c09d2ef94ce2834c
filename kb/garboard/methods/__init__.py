"""The engineering methods that a line may call, each proven against published values."""

from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Method
from garboard.methods.bilge import BILGE_PIPE_BORE_METHOD
from garboard.methods.conversion import UNIT_CONVERSION_METHOD
from garboard.methods.gauges import GAUGE_RANGE_METHOD
from garboard.methods.guards import GUARD_OPENING_METHOD
from garboard.methods.pump_rules import BILGE_AND_FIRE_PUMP_RULES_METHOD
from garboard.methods.receiver import PRESSURE_DATUM_METHOD
from garboard.methods.starting_air import STARTING_AIR_RECEIVER_METHOD
from garboard.methods.starting_rules import STARTS_REQUIRED_METHOD
from garboard.methods.test_pressure import TEST_PRESSURE_BY_CODE_METHOD

__all__ = ["METHODS"]

METHODS: Final[Mapping[str, Method]] = {
    "unit_conversion": UNIT_CONVERSION_METHOD,
    "pressure_datum": PRESSURE_DATUM_METHOD,
    "starting_air_receiver": STARTING_AIR_RECEIVER_METHOD,
    "starts_required": STARTS_REQUIRED_METHOD,
    "guard_opening": GUARD_OPENING_METHOD,
    "bilge_and_fire_pump_rules": BILGE_AND_FIRE_PUMP_RULES_METHOD,
    "bilge_pipe_bore": BILGE_PIPE_BORE_METHOD,
    "test_pressure_by_code": TEST_PRESSURE_BY_CODE_METHOD,
    "gauge_range": GAUGE_RANGE_METHOD,
}
"""In the order of the manual."""
