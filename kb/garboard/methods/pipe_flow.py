"""Pressure lost along a full pipe, warm and cold, with the Darcy friction factor.

Below Re 2000 the flow is laminar and f is 64 / Re; above 4000 Colebrook's formula holds. Between the
two the flow may be either: both drops are shown and no single one is. Colebrook's formula has the
factor on both sides; with x for 1 / sqrt(f) it is put into the tangent three times, which leaves
less than 1e-12 of it, held by a test against another library. The factor is Darcy's: Fanning's is
a quarter of it.

Hydraulic oil is always worked cold as well as warm: cold oil may ask for ten times the pressure.

By hand: water of 1.306 mm2/s at 0.2 m/s in a bore of 10 mm is Re 1531, f 0.04179; over 3 m that is
0.04179 x 300 x 999.7 x 0.2^2 / 2 = 250.7 Pa. 40 L/min of oil of 46 mm2/s in 16 mm run at 3.316 m/s, Re
1153; over 10 m, at 870 kg/m3, that is 0.0555 x 625 x 870 x 3.316^2 / 2 = 1.659 bar.
"""

from typing import Final

from garboard.calc.method import (
    Contradiction,
    FormulaMethod,
    Grade,
    Limit,
    Parameter,
    Printed,
    Result,
)
from garboard.methods.cases.pipe_flow import PIPE_PRESSURE_DROP
from garboard.methods.publications import published

__all__ = ["PIPE_PRESSURE_DROP_METHOD"]

_EITHER: Final = "flow may be laminar or turbulent: both drops are shown, no single number"
_COLD: Final = "cold viscosity missing: the cold start is not checked"

PIPE_PRESSURE_DROP_METHOD: Final = FormulaMethod(
    name="pipe_pressure_drop",
    title="Pressure lost in a pipe",
    purpose="Pressure lost in fuel, cooling-water, bilge and hydraulic lines, warm and cold.",
    grade=Grade.B,
    parameters=(
        Parameter("Q", "flow", "L/min"),
        Parameter("v", "mean speed, where it is known", "m/s", default="Q / area"),
        Parameter("D", "inside diameter", "mm", missing="measure the bore or look it up"),
        Parameter(
            "D_from",
            "where the diameter comes from",
            default="measured",
            words=("measured", "table", "nominal"),
            missing="a nominal size is not a bore: measure it, or look it up by size and schedule",
        ),
        Parameter("L", "length of pipe, with the equivalent length of fittings", "m"),
        Parameter("K", "loss coefficients of fittings, added up", default="0"),
        Parameter("rho", "density", "kg/m3"),
        Parameter(
            "fluid",
            "what it is; hydraulic oil is worked warm and cold",
            words=("hydraulic_oil", "water", "fuel", "other"),
            missing="give nu; or, for hydraulic oil, say fluid = hydraulic_oil and give nu_warm and "
            "nu_cold",
        ),
        Parameter("nu", "kinematic viscosity", "mm2/s", default="thinner"),
        Parameter("nu_warm", "viscosity of hydraulic oil at work", "mm2/s"),
        Parameter(
            "nu_cold", "viscosity of hydraulic oil at the coldest start", "mm2/s", missing=_COLD
        ),
        Parameter(
            "rough",
            "roughness of the wall; -1 mm stands for not said, which laminar flow alone can do "
            "without",
            "mm",
            default="-1 mm",
        ),
        Parameter("rel_rough", "roughness over bore, where it is known", default="rough / D"),
        Parameter("Re", "Reynolds number, where it is known"),
    ),
    results=(
        Result("Re", "Reynolds number"),
        Result("f", "Darcy friction factor"),
        Result("drop", "pressure lost", "kPa(d)"),
        Result("drop_laminar", "pressure lost if laminar", "kPa(d)"),
        Result("drop_turbulent", "pressure lost if turbulent", "kPa(d)"),
        Result("Re_cold", "Reynolds number at the coldest start"),
        Result("drop_cold", "pressure lost at the coldest start", "kPa(d)"),
    ),
    limits=(
        Limit("abs(Re - 3000) >= 1000", f"Re between 2000 and 4000: {_EITHER}", of=("f", "drop")),
        Limit(
            "Re <= 4000", "the flow is turbulent, a laminar drop is not shown", of=("drop_laminar",)
        ),
        Limit(
            "Re >= 2000",
            "the flow is laminar, a turbulent drop is not shown",
            of=("drop_turbulent",),
        ),
        Limit(
            "Re_cold <= 2000",
            "not laminar even when cold: call again with nu = the cold viscosity",
            of=("drop_cold",),
        ),
        Limit(
            "min(Re - 2000, 0 - rel_rough) <= 0",
            "roughness of the wall missing: flow that is not laminar feels it, give rough",
        ),
        Limit(
            "rel_rough <= 0.05", "rougher than the formula was made for, a twentieth of the bore"
        ),
        Limit("nu_cold >= nu_warm", "cold oil is never thinner than warm oil"),
        Limit("Re > 0", "no flow"),
        Limit("D > 0 mm", "the bore is missing"),
        Limit("L >= 0 m", "a length below zero"),
        Limit("K >= 0", "a loss coefficient below zero"),
        Limit("rho > 0 kg/m3", "the density is missing"),
        Limit("nu > 0 mm2/s", "the viscosity is missing"),
    ),
    valid=(
        "Newtonian liquid, full pipe, steady flow",
        "fittings entered as K or as equivalent length, from a named source",
        "hydraulic oil is always worked cold as well as warm",
        "the friction factor is Darcy's; Fanning's is a quarter of it",
    ),
    sources=published("pipe-flow-textbook", "fluids-doc-examples", "definition", "house-rule"),
    caution="A collapsing suction hose and a fouled strainer are not in the formula.",
    deferral="Hydraulic hoses and fittings: their maker.",
    do_not=("choose a hose", "give one number between Re 2000 and 4000"),
    proofs=PIPE_PRESSURE_DROP,
    contradictions=(
        Contradiction(
            topic="friction factor of a smooth-looking pipe",
            printed=(
                Printed(
                    "0.012 at Re 1e6, roughness ratio 1e-4; 0.05 at Re 1e4, ratio 0.01",
                    "a page on compressed air",
                ),
                Printed("0.01344 and 0.04313", "the Colebrook formula"),
            ),
            effect="11 percent low and 16 percent high",
            handbook="works the factor out, and never reads that page",
            sources=("fluids-doc-examples",),
        ),
    ),
    only={
        "bore": ("D_from", "measured", "table"),
        "thinner": ("fluid", "hydraulic_oil"),
        "Re_cold": ("fluid", "hydraulic_oil"),
    },
    body="""\
bore = D in mm  # inside diameter, not a nominal size
area = pi / 4 * bore^2 in mm2  # of the bore
thinner = min(nu_warm, nu_cold) in mm2/s  # hydraulic oil at work
Re = v * bore / nu  # Reynolds number
wall = max(rel_rough, 0) / 3.7  # what the wall adds
film = 2.51 / max(Re, 2000)  # what the liquid adds; not asked for in laminar flow
k = 2 / log(10)  # twice, and from the natural logarithm to that of ten
x_0 = -k * log(wall + film)  # 1 / sqrt(f), first guess
s_0 = wall + film * x_0  # both together at that guess
x_1 = k * (film * x_0 - s_0 * log(s_0)) / (s_0 + k * film)  # where the tangent meets zero
s_1 = wall + film * x_1  # both together there
x_2 = k * (film * x_1 - s_1 * log(s_1)) / (s_1 + k * film)  # closer
s_2 = wall + film * x_2  # both together there
x_3 = k * (film * x_2 - s_2 * log(s_2)) / (s_2 + k * film)  # the root
f_laminar = 64 / Re  # Darcy friction factor, laminar
f_turbulent = 1 / x_3^2  # Darcy friction factor, Colebrook
f = f_laminar if Re < 4000 else f_turbulent  # Darcy friction factor
push = rho * v^2 / 2 in kPa(d)  # pressure that makes the speed
drop_laminar = (f_laminar * L / D + K) * push in kPa(d)  # pressure lost if laminar
drop_turbulent = (f_turbulent * L / D + K) * push in kPa(d)  # pressure lost if turbulent
drop = (f * L / D + K) * push in kPa(d)  # pressure lost
Re_cold = v * bore / nu_cold  # Reynolds number at the coldest start
drop_cold = (64 / Re_cold * L / D + K) * push in kPa(d)  # pressure lost then, laminar
""",
)
