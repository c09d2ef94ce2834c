"""Force of a hydraulic cylinder, and the power that its oil carries.

The reading at the cylinder is the difference across a wall that is open to the air on its other
side, so a gauge pressure is the right one here. Back pressure on the return side is taken off the
reading by whoever uses it.

By hand: 160 bar(g) on a bore of 50 mm pushes with 16 MPa x 1963.5 mm2 = 31.416 kN; with a rod of 28
mm it pulls with 16 MPa x (1963.5 - 615.75) mm2 = 21.564 kN. 40 L/min at 160 bar(g) carry 40e-3 / 60
x 160e5 = 10.667 kW, which is 10.667 / 0.85 = 12.55 kW at the shaft.
"""

from typing import Final

from garboard.calc.method import FormulaMethod, Grade, Limit, Parameter, Result
from garboard.methods.cases.hydraulics import HYDRAULIC_FORCE_AND_POWER
from garboard.methods.publications import published

__all__ = ["HYDRAULIC_FORCE_AND_POWER_METHOD"]

HYDRAULIC_FORCE_AND_POWER_METHOD: Final = FormulaMethod(
    name="hydraulic_force_and_power",
    title="Force of a cylinder and power of its pump",
    purpose="Force of a cylinder, and the power a pump must put into the oil.",
    grade=Grade.A,
    parameters=(
        Parameter("p", "reading at the cylinder, less any back pressure", "bar(g)"),
        Parameter("D", "bore of the cylinder", "mm"),
        Parameter(
            "d_rod", "diameter of the rod", "mm", missing="the rod takes its share of the bore"
        ),
        Parameter("Q", "flow", "L/min"),
        Parameter(
            "eta", "efficiency of the pump, a share", missing="the shaft gives more than the oil"
        ),
        Parameter("p_relief", "setting of the relief valve of the circuit", "bar(g)"),
    ),
    results=(
        Result("F_push", "force pushing", "kN"),
        Result("F_pull", "force pulling", "kN"),
        Result("P_oil", "power in the oil", "kW"),
        Result("P_shaft", "power at the pump shaft", "kW"),
    ),
    limits=(
        Limit("d_rod < D", "rod not smaller than the bore: no ring is left for the oil to pull on"),
        Limit("d_rod > 0 mm", "the rod is missing"),
        Limit("p <= p_relief", "above the setting of the relief valve: it lifts first"),
        Limit("p > 0 bar(g)", "no pressure"),
        Limit("D > 0 mm", "the bore is missing"),
        Limit("Q > 0 L/min", "the flow is missing"),
        Limit("eta > 0", "efficiency is a share above 0"),
        Limit("eta <= 1", "efficiency is a share, not above 1: no pump gives more than it takes"),
    ),
    valid=(
        "the other side of the piston is open to air or to a return without pressure; back "
        "pressure is taken off by whoever gives the reading",
        "friction of seals and of the load is not in it",
    ),
    sources=published("definition"),
    caution="The force is there whether or not anyone means it. Chock the load before opening a "
    "line.",
    deferral="Hoses, cylinders and relief valves: their maker.",
    do_not=("choose a hose or cylinder", "set a relief valve"),
    proofs=HYDRAULIC_FORCE_AND_POWER,
    body="""\
F_push = difference(p) * pi / 4 * D^2 in kN  # on the whole bore
F_pull = difference(p) * pi / 4 * (D^2 - d_rod^2) in kN  # on the ring beside the rod
P_oil = Q * difference(p) in kW  # power in the oil
P_shaft = P_oil / eta in kW  # power at the pump shaft
""",
)
