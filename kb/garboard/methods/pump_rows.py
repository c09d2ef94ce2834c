"""Rows of regulations on bilge and fire pumps, as printed, and the limits that choose them.

Both columns of a row are held as two figures, because they need not agree.
"""

from typing import Final

from garboard.methods.figures import Figure, Row

__all__ = [
    "CANADA_LONG",
    "CANADA_M",
    "CANADA_SHORT",
    "FIRE_FERRY",
    "FIRE_PUMP",
    "HEAVY",
    "LONG_FT",
    "LONG_M",
    "MANY",
    "PASSENGER_FEW",
    "PASSENGER_LONG",
    "PASSENGER_MANY",
    "PIPE_LONG",
    "PIPE_SHORT",
    "SCHOOL_FIRE_FT",
    "SCHOOL_FIRE_HAND",
    "SCHOOL_FIRE_ROWS",
    "SCHOOL_FT",
    "SCHOOL_HAND",
    "SCHOOL_LARGE",
    "SCHOOL_LARGEST",
    "SCHOOL_MIDDLE",
    "SCHOOL_SMALL",
    "SHORTEST",
    "STRAINER",
]

_BILGE, _PIPE, _FIRE = "46cfr182.520", "46cfr182.510", "46cfr181.300"
_SCHOOL_FIRE, _SCHOOL_BILGE, _CANADA = "46cfr169.559", "46cfr169.654", "tc-sail-training"
_THIRD_ROW: Final = "46cfr182.520, third row as restated in gerr-boat-systems"

_GPM: Final = "gal_us/min"
LONG_M, LONG_FT = Figure(19.8, "m"), Figure(65, "ft")
"""One limit of 46 CFR 182 as its two columns print it; they are 12 mm apart."""
SHORTEST: Final = Figure(7.9, "m")
MANY: Final = 49
"""Passengers up to which the third row holds."""
HEAVY: Final = 100
"""Gross tons from which the last row of 169.654 holds."""
SCHOOL_FT: Final = tuple(Figure(limit, "ft") for limit in (26, 40, 65, 120))
SCHOOL_FIRE_FT: Final = (Figure(90, "ft"), Figure(120, "ft"))
CANADA_M: Final = Figure(20, "m")

PASSENGER_LONG: Final = Row(
    "length over 19.8 m (65 ft)",
    "2 fixed power pumps, each",
    _BILGE,
    {"pumps": Figure(2), "pump_l_min": Figure(190, "L/min"), "pump_gpm": Figure(50, _GPM)},
)
PASSENGER_MANY: Final = Row(
    "length up to 19.8 m (65 ft), over 49 passengers, and every ferry",
    "1 fixed power pump and 1 portable hand pump",
    _BILGE,
    {
        "pumps": Figure(1),
        "pump_l_min": Figure(95, "L/min"),
        "pump_gpm": Figure(25, _GPM),
        "hand_l_min": Figure(38, "L/min"),
        "hand_gpm": Figure(10, _GPM),
    },
)
PASSENGER_FEW: Final = Row(
    "length 7.9 m (26 ft) up to 19.8 m (65 ft), up to 49 passengers, not a ferry",
    "1 fixed power pump and 1 portable hand pump; or 1 fixed hand pump of the same capacity and "
    "1 portable hand pump of 19 L/min (5 gpm)",
    _THIRD_ROW,
    {"pumps": Figure(1), "pump_l_min": Figure(38, "L/min"), "pump_gpm": Figure(10, _GPM)},
)
PIPE_SHORT: Final = Row(
    "length up to 19.8 m (65 ft)",
    "nominal bilge pipe",
    _PIPE,
    {"pipe_nominal_mm": Figure(25, "mm"), "pipe_nominal_inch": Figure(1, "inch")},
)
PIPE_LONG: Final = Row(
    "length over 19.8 m (65 ft)",
    "nominal bilge pipe",
    _PIPE,
    {"pipe_nominal_mm": Figure(40, "mm"), "pipe_nominal_inch": Figure(1.5, "inch")},
)
STRAINER: Final = Row(
    "any length",
    "open area of the strainer, times the pipe",
    _PIPE,
    {"strainer_open_area": Figure(3)},
)
FIRE_PUMP: Final = Row(
    "fire pump required",
    "fixed fire pump",
    _FIRE,
    {
        "fire_l_min": Figure(189, "L/min"),
        "fire_gpm": Figure(50, _GPM),
        "fire_kpa": Figure(414, "kPa(g)"),
        "fire_psi": Figure(60, "psi(g)"),
    },
)
FIRE_FERRY: Final = Row(
    "ferry, up to 49 passengers",
    "fire pump, with the reach of its jet",
    _FIRE,
    {
        "fire_l_min": Figure(38, "L/min"),
        "fire_gpm": Figure(10, _GPM),
        "jet_m": Figure(7.6, "m"),
        "jet_ft": Figure(25, "ft"),
    },
)
SCHOOL_HAND: Final = Row(
    "under 65 ft",
    "portable hand pump; printed as a maximum",
    _SCHOOL_BILGE,
    {"hand_gpm": Figure(5, _GPM)},
)
SCHOOL_SMALL: Final = Row(
    "26 ft to under 40 ft, in addition",
    "fixed pump, hand or power",
    _SCHOOL_BILGE,
    {"pumps": Figure(1), "pump_gpm": Figure(10, _GPM)},
)
SCHOOL_MIDDLE: Final = Row(
    "40 ft to under 65 ft, in addition",
    "fixed power pump",
    _SCHOOL_BILGE,
    {"pumps": Figure(1), "pump_gpm": Figure(25, _GPM)},
)
SCHOOL_LARGE: Final = Row(
    "65 ft to under 120 ft and under 100 gross tons",
    "2 fixed power pumps together",
    _SCHOOL_BILGE,
    {"pumps": Figure(2), "combined_gpm": Figure(50, _GPM)},
)
SCHOOL_LARGEST: Final = Row(
    "120 ft and over, or 100 gross tons and over",
    "2 fixed power pumps; capacity by 46 CFR 56.50-55(c), not held",
    _SCHOOL_BILGE,
    {"pumps": Figure(2)},
)
SCHOOL_FIRE_ROWS: Final = tuple(
    Row(
        when,
        "fire pump",
        _SCHOOL_FIRE,
        {"fire_m3_h": Figure(metric, "m3/h"), "fire_gpm": Figure(gpm, _GPM)},
    )
    for when, metric, gpm in (
        ("under 90 ft", 5.5, 25),
        ("90 ft to under 120 ft", 11.0, 50),
        ("over 120 ft", 14.3, 66.6),
    )
)
SCHOOL_FIRE_HAND: Final = Row(
    "portable hand fire pump",
    "portable hand fire pump",
    _SCHOOL_FIRE,
    {"hand_m3_h": Figure(1.1, "m3/h"), "hand_gpm": Figure(5, _GPM)},
)
CANADA_SHORT: Final = Row(
    "under 20 m",
    "hand pump and power pump",
    _CANADA,
    {"hand_m3_h": Figure(1, "m3/h"), "pump_m3_h": Figure(5, "m3/h")},
)
CANADA_LONG: Final = Row(
    "20 m and over",
    "2 power pumps together",
    _CANADA,
    {"pumps": Figure(2), "combined_m3_h": Figure(10, "m3/h")},
)
