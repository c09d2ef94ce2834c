"""The engineering methods that a line may call, each proven against published values."""

from collections.abc import Mapping
from typing import Final

from garboard.calc.method import Method
from garboard.methods.air_line import AIR_LINE_PRESSURE_DROP_METHOD
from garboard.methods.batteries import BATTERY_AUTONOMY_METHOD
from garboard.methods.bilge import BILGE_PIPE_BORE_METHOD
from garboard.methods.cable_current import DC_CABLE_CURRENT_LIMIT_METHOD
from garboard.methods.cable_size import DC_CABLE_SIZE_METHOD
from garboard.methods.closed_volume import CLOSED_VOLUME_TEMPERATURE_METHOD
from garboard.methods.compressor import COMPRESSOR_DUTY_METHOD
from garboard.methods.conversion import UNIT_CONVERSION_METHOD
from garboard.methods.delivery import FREE_AIR_DELIVERY_METHOD
from garboard.methods.engine_room import ENGINE_ROOM_AIR_METHOD
from garboard.methods.expansion import THERMAL_MOVEMENT_METHOD
from garboard.methods.flammable_gas import FLAMMABLE_GAS_FACTS_METHOD
from garboard.methods.flooding import FLOODING_RATE_METHOD
from garboard.methods.free_surface import FREE_SURFACE_INFORMATION_METHOD
from garboard.methods.gauges import GAUGE_RANGE_METHOD
from garboard.methods.guards import GUARD_OPENING_METHOD
from garboard.methods.hydraulics import HYDRAULIC_FORCE_AND_POWER_METHOD
from garboard.methods.leak import LEAK_BY_PRESSURE_DECAY_METHOD
from garboard.methods.moisture import COMPRESSED_AIR_WATER_METHOD
from garboard.methods.orifice import ORIFICE_AIR_FLOW_METHOD
from garboard.methods.pipe_flow import PIPE_PRESSURE_DROP_METHOD
from garboard.methods.pressure_parts import PRESSURE_PART_RECHECK_METHOD
from garboard.methods.pump_rules import BILGE_AND_FIRE_PUMP_RULES_METHOD
from garboard.methods.receiver import PRESSURE_DATUM_METHOD
from garboard.methods.relief import RELIEF_CAPACITY_CHECK_METHOD
from garboard.methods.sensing_line import SENSING_LINE_CUT_OFF_METHOD
from garboard.methods.ship_motion import SHIP_MOTION_LOAD_METHOD
from garboard.methods.starting_air import STARTING_AIR_RECEIVER_METHOD
from garboard.methods.starting_rules import STARTS_REQUIRED_METHOD
from garboard.methods.stored_energy import GAS_TEST_STORED_ENERGY_METHOD
from garboard.methods.suction import SUCTION_HEAD_AVAILABLE_METHOD
from garboard.methods.surge import RECEIVER_SURGE_VOLUME_METHOD
from garboard.methods.tanks import TANK_CONTENTS_METHOD
from garboard.methods.test_pressure import TEST_PRESSURE_BY_CODE_METHOD
from garboard.methods.threads import THREAD_AND_PIPE_SIZE_METHOD
from garboard.methods.welds import WELD_LOAD_ESTIMATE_METHOD

__all__ = ["METHODS"]

METHODS: Final[Mapping[str, Method]] = {
    "unit_conversion": UNIT_CONVERSION_METHOD,
    "pressure_datum": PRESSURE_DATUM_METHOD,
    "sensing_line_cut_off": SENSING_LINE_CUT_OFF_METHOD,
    "starting_air_receiver": STARTING_AIR_RECEIVER_METHOD,
    "starts_required": STARTS_REQUIRED_METHOD,
    "receiver_surge_volume": RECEIVER_SURGE_VOLUME_METHOD,
    "guard_opening": GUARD_OPENING_METHOD,
    "bilge_and_fire_pump_rules": BILGE_AND_FIRE_PUMP_RULES_METHOD,
    "bilge_pipe_bore": BILGE_PIPE_BORE_METHOD,
    "flooding_rate": FLOODING_RATE_METHOD,
    "leak_by_pressure_decay": LEAK_BY_PRESSURE_DECAY_METHOD,
    "closed_volume_temperature": CLOSED_VOLUME_TEMPERATURE_METHOD,
    "orifice_air_flow": ORIFICE_AIR_FLOW_METHOD,
    "compressed_air_water": COMPRESSED_AIR_WATER_METHOD,
    "compressor_duty": COMPRESSOR_DUTY_METHOD,
    "free_air_delivery": FREE_AIR_DELIVERY_METHOD,
    "test_pressure_by_code": TEST_PRESSURE_BY_CODE_METHOD,
    "pipe_pressure_drop": PIPE_PRESSURE_DROP_METHOD,
    "suction_head_available": SUCTION_HEAD_AVAILABLE_METHOD,
    "dc_cable_size": DC_CABLE_SIZE_METHOD,
    "dc_cable_current_limit": DC_CABLE_CURRENT_LIMIT_METHOD,
    "battery_autonomy": BATTERY_AUTONOMY_METHOD,
    "hydraulic_force_and_power": HYDRAULIC_FORCE_AND_POWER_METHOD,
    "tank_contents": TANK_CONTENTS_METHOD,
    "free_surface_information": FREE_SURFACE_INFORMATION_METHOD,
    "thread_and_pipe_size": THREAD_AND_PIPE_SIZE_METHOD,
    "gauge_range": GAUGE_RANGE_METHOD,
    "relief_capacity_check": RELIEF_CAPACITY_CHECK_METHOD,
    "gas_test_stored_energy": GAS_TEST_STORED_ENERGY_METHOD,
    "weld_load_estimate": WELD_LOAD_ESTIMATE_METHOD,
    "ship_motion_load": SHIP_MOTION_LOAD_METHOD,
    "thermal_movement": THERMAL_MOVEMENT_METHOD,
    "air_line_pressure_drop": AIR_LINE_PRESSURE_DROP_METHOD,
    "engine_room_air": ENGINE_ROOM_AIR_METHOD,
    "flammable_gas_facts": FLAMMABLE_GAS_FACTS_METHOD,
    "pressure_part_recheck": PRESSURE_PART_RECHECK_METHOD,
}
"""In the order of the manual."""
