"""The names of units that may stand in a handbook, and the cure for those that may not.

A name stands for exactly one unit of the trade. The text on the right is the name under which the
units library knows it; nothing that an author writes ever reaches that library. Names that a
general library reads as something else (`cfm` as centifermi, `PS` as petasiemens) are refused with
what was meant.
"""

from enum import StrEnum

__all__ = ["FREE_AIR", "LIBRARY_NAMES", "ROLES", "TRAPS", "Role"]


class Role(StrEnum):
    """What is special about a unit."""

    NONE = ""
    PRESSURE = "pressure"
    """Says what it is counted from: (g), (a) or (d)."""
    KELVIN = "kelvin"
    """Needs (a) or (d)."""
    THERMOMETER = "thermometer"
    """A reading as it stands; (d) makes it a difference."""
    TURN = "turn"
    LENGTH = "length"
    """Its third power takes a tag of free air."""
    VOLUME = "volume"
    """Takes a tag of free air."""


LIBRARY_NAMES: dict[str, str] = {
    # length
    "m": "meter", "mm": "millimeter", "cm": "centimeter", "dm": "decimeter", "km": "kilometer",
    "um": "micrometer", "inch": "inch", "ft": "foot", "yd": "yard", "nmi": "nautical_mile",
    # area, volume
    "cmil": "circular_mil", "ha": "hectare",
    "L": "liter", "mL": "milliliter", "cL": "centiliter", "dL": "deciliter", "hL": "hectoliter",
    "gal_us": "gallon", "gal_imp": "imperial_gallon",
    "qt_us": "quart", "pt_us": "pint", "pt_imp": "imperial_pint",
    # mass, substance
    "kg": "kilogram", "g": "gram", "mg": "milligram", "t": "metric_ton", "lb": "pound",
    "oz": "ounce", "mol": "mole", "kmol": "kilomole",
    # time
    "s": "second", "ms": "millisecond", "min": "minute", "h": "hour", "day": "day",
    "Hz": "hertz", "kHz": "kilohertz",
    # speed, acceleration
    "knot": "knot", "g0": "standard_gravity",
    # force
    "N": "newton", "kN": "kilonewton", "MN": "meganewton", "lbf": "pound_force",
    "kgf": "kilogram_force", "tf": "metric_ton * standard_gravity",
    # pressure
    "Pa": "pascal", "hPa": "hectopascal", "kPa": "kilopascal", "MPa": "megapascal",
    "GPa": "gigapascal", "mbar": "millibar", "bar": "bar", "psi": "psi", "atm": "atmosphere",
    "mmHg": "mmHg", "inHg": "inHg", "mmH2O": "millimeter_H2O", "cmH2O": "centimeter_H2O",
    "mH2O": "meter_H2O", "inH2O": "inch_H2O",
    # energy, power
    "J": "joule", "kJ": "kilojoule", "MJ": "megajoule", "GJ": "gigajoule",
    "Wh": "watt_hour", "kWh": "kilowatt_hour", "MWh": "megawatt_hour",
    "W": "watt", "mW": "milliwatt", "kW": "kilowatt", "MW": "megawatt",
    "hp": "horsepower", "hp_metric": "metric_horsepower",
    "VA": "volt * ampere", "kVA": "kilovolt * ampere",
    # temperature
    "K": "kelvin", "degR": "degree_Rankine", "degC": "degree_Celsius", "degF": "degree_Fahrenheit",
    # electricity
    "A": "ampere", "mA": "milliampere", "kA": "kiloampere",
    "V": "volt", "mV": "millivolt", "kV": "kilovolt",
    "ohm": "ohm", "mohm": "milliohm", "kohm": "kiloohm", "Mohm": "megaohm",
    "Ah": "ampere_hour", "mAh": "milliampere_hour",
    # viscosity
    "cSt": "centistokes", "cP": "centipoise",
    # turns and angles
    "rev": "turn", "rpm": "turn / minute", "deg": "degree", "rad": "radian",
    # numbers
    "%": "percent", "ppm": "ppm",
}  # fmt: skip
"""Name in the handbook to name in the units library."""

ROLES: dict[str, Role] = {
    **dict.fromkeys(("Pa", "hPa", "kPa", "MPa", "GPa", "mbar", "bar", "psi", "atm"), Role.PRESSURE),
    **dict.fromkeys(("mmHg", "inHg", "mmH2O", "cmH2O", "mH2O", "inH2O"), Role.PRESSURE),
    **dict.fromkeys(("K", "degR"), Role.KELVIN),
    **dict.fromkeys(("degC", "degF"), Role.THERMOMETER),
    **dict.fromkeys(("rev", "rpm"), Role.TURN),
    **dict.fromkeys(("m", "mm", "cm", "dm", "km", "inch", "ft", "yd"), Role.LENGTH),
    **dict.fromkeys(("L", "mL", "cL", "dL", "hL", "gal_us", "gal_imp", "qt_us"), Role.VOLUME),
    **dict.fromkeys(("pt_us", "pt_imp"), Role.VOLUME),
}

FREE_AIR: dict[str, tuple[int, str]] = {
    "n": (101_325, "273.15"),
    "s": (101_325, "288.15"),
    "anr": (100_000, "293.15"),
}
"""Tag of free air: the pressure in Pa(a) and the temperature in K at which its volume is stated.

(n) DIN 1343; (s) ISO 2533; (anr) ISO 8778, with 65 % relative humidity, whose vapour counts as part
of the amount (verify before citing).
"""

TRAPS: dict[str, str] = {
    "gal": "say which gallon: gal_us or gal_imp; they differ by a fifth",
    "Gal": "say which gallon: gal_us or gal_imp; they differ by a fifth",
    "gallon": "say which gallon: gal_us or gal_imp; they differ by a fifth",
    "gpm": "say which gallon: gal_us/min or gal_imp/min",
    "qt": "say which quart: qt_us",
    "pt": "say which pint: pt_us or pt_imp",
    "cfm": "write ft3/min, or ft3(s)/min for free air",
    "scfm": "write ft3(s)/min, free air at 15 degC and 101 325 Pa, or state the reference used",
    "cfh": "write ft3/h",
    "cc": "write cm3 or mL",
    "mil": "write 0.001 inch; mil is an angle elsewhere",
    "thou": "write 0.001 inch",
    "ton": "say which: t is 1000 kg; 2000 lb and 2240 lb are written in lb",
    "tons": "say which: t is 1000 kg; 2000 lb and 2240 lb are written in lb",
    "tonne": "write t",
    "R": "write degR(a) or degR(d) for temperature; a gas constant is a named value",
    "F": "write degF for a thermometer reading, degF(d) for a difference",
    "C": "write degC for a thermometer reading, degC(d) for a difference; charge is in Ah",
    "Mpa": "write MPa; capital and small letters differ in units",
    "mPa": "write MPa for megapascal, or Pa; capital and small letters differ in units",
    "KPa": "write kPa; capital and small letters differ in units",
    "Kpa": "write kPa; capital and small letters differ in units",
    "kpa": "write kPa; capital and small letters differ in units",
    "pa": "write Pa; capital and small letters differ in units",
    "PA": "write Pa; capital and small letters differ in units",
    "Bar": "write bar with its tag, such as bar(g); capital and small letters differ in units",
    "BAR": "write bar with its tag, such as bar(g); capital and small letters differ in units",
    "mBar": "write mbar; capital and small letters differ in units",
    "Mbar": "write mbar; capital and small letters differ in units",
    "barg": "write bar(g)",
    "bara": "write bar(a)",
    "barA": "write bar(a)",
    "psig": "write psi(g)",
    "psia": "write psi(a)",
    "psid": "write psi(d)",
    "Psi": "write psi with its tag, such as psi(g); capital and small letters differ in units",
    "PSI": "write psi with its tag, such as psi(g); capital and small letters differ in units",
    "PS": "write hp_metric",
    "CV": "write hp_metric",
    "HP": "write hp (550 ft.lbf/s) or hp_metric (75 kgf.m/s)",
    "bhp": "write hp (550 ft.lbf/s) or hp_metric (75 kgf.m/s)",
    "in": "write inch",
    "inches": "write inch",
    "feet": "write ft",
    "foot": "write ft",
    "yard": "write yd",
    "lbs": "write lb for mass, lbf for force",
    "l": "write L; a small l looks like a one",
    "ltr": "write L",
    "lpm": "write L/min",
    "liter": "write L",
    "litre": "write L",
    "liters": "write L",
    "litres": "write L",
    "Nm": "write N.m for newton metre; free air is m3(n)",
    "Nm3": "write m3(n)",
    "Sm3": "write m3(s)",
    "NL": "write L(n)",
    "Kg": "write kg; capital and small letters differ in units",
    "KG": "write kg; capital and small letters differ in units",
    "kgs": "write kg",
    "kilo": "write kg",
    "gr": "write g",
    "M": "write m; capital and small letters differ in units",
    "MM": "write mm; capital and small letters differ in units",
    "mtr": "write m",
    "meter": "write m",
    "metre": "write m",
    "meters": "write m",
    "metres": "write m",
    "micron": "write um",
    "mu": "write um",
    "\u00b5m": "write um",
    "\u03bcm": "write um",
    "nm": "write nmi for a sea mile; a nanometre is 0.001 um",
    "NM": "write nmi for a sea mile, N.m for a torque",
    "mi": "write nmi for a sea mile, 1.609344 km for a land mile",
    "mile": "write nmi for a sea mile, 1.609344 km for a land mile",
    "miles": "write nmi for a sea mile, 1.609344 km for a land mile",
    "kn": "write knot for speed, kN for force",
    "kt": "write knot",
    "kts": "write knot",
    "knots": "write knot",
    "Kw": "write kW; capital and small letters differ in units",
    "KW": "write kW; capital and small letters differ in units",
    "kw": "write kW; capital and small letters differ in units",
    "kwh": "write kWh; capital and small letters differ in units",
    "KWh": "write kWh; capital and small letters differ in units",
    "AH": "write Ah; capital and small letters differ in units",
    "ah": "write Ah; capital and small letters differ in units",
    "a": "write A for ampere; capital and small letters differ in units",
    "v": "write V for volt; capital and small letters differ in units",
    "w": "write W for watt; capital and small letters differ in units",
    "amp": "write A",
    "amps": "write A",
    "volt": "write V",
    "volts": "write V",
    "watt": "write W",
    "watts": "write W",
    "Ohm": "write ohm; capital and small letters differ in units",
    "\u03a9": "write ohm",
    "\u2126": "write ohm",
    "S": "write s for second; capital and small letters differ in units",
    "sec": "write s",
    "second": "write s",
    "seconds": "write s",
    "mins": "write min",
    "minute": "write min",
    "minutes": "write min",
    "hr": "write h",
    "hrs": "write h",
    "hour": "write h",
    "hours": "write h",
    "H": "write h for hour; capital and small letters differ in units",
    "d": "write day",
    "days": "write day",
    "RPM": "write rpm; capital and small letters differ in units",
    "turn": "write rev",
    "turns": "write rev",
    "degrees": "write deg for an angle, degC for a temperature",
    "degree": "write deg for an angle, degC for a temperature",
    "\u00b0": "write deg for an angle, degC for a temperature",
    "\u00b0C": "write degC",
    "\u00b0F": "write degF",
    "celsius": "write degC",
    "Celsius": "write degC",
    "percent": "write %",
    "wg": "write mmH2O(g) or inH2O(g)",
    "kcal": "write kJ; there are several calories",
    "BTU": "write kJ; there are several of them",
    "Btu": "write kJ; there are several of them",
    "hz": "write Hz; capital and small letters differ in units",
    "AWG": "a wire gauge is no unit: look its area up and write mm2",
}
"""A name that is refused, and what to write."""
