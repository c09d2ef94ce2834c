"""What a vessel lets go of when it bursts under test: three named gas models beside water.

No single figure is right for a gas: the isentropic one lets it cool while it pushes, Brode counts
the heat that brought it there, the isothermal one is the most it could ever do. All three are
printed with their names, and the water figure beside them, because the difference is the reason
for testing with water. What none of them knows is where the pieces go.

By hand: 50 L at 10 bar(g) under 101 kPa(a) is 1101 kPa(a). Isentropic: 1101 x 0.05 / 0.4 x
(1 - (101 / 1101)^(0.4 / 1.4)) = 137.63 x 0.4947 = 68.08 kJ. Brode: 1000 x 0.05 / 0.4 = 125 kJ.
Isothermal, under 101.325 kPa(a): 1101.3 x 0.05 x ln(10.869) = 131.4 kJ. Water in 0.5 m3 at 39 bar:
3900^2 x 0.5 / (2 x 2 201 000) = 1.728 kJ.
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
from garboard.methods.cases.stored_energy import GAS_TEST_STORED_ENERGY
from garboard.methods.publications import published

__all__ = ["GAS_TEST_STORED_ENERGY_METHOD"]

_REAL: Final = "above 45 bar gauge real gas departs from the ideal one by more than 4 percent"
_NOTHING: Final = "nothing stored: the test pressure is not above the atmosphere"
_STAND_OFF: Final = (
    "no stand-off distance is printed: the formulas ignore fragments and confinement, and differ "
    "from edition to edition"
)

_CONTRADICTIONS: Final = (
    Contradiction(
        topic="stored energy of 50 L of air at 10 bar gauge",
        printed=(
            Printed("99 kJ, called adiabatic", "a web page"),
            Printed("132 kJ, isothermal", "the same web page"),
        ),
        effect="68.08 kJ is isentropic: the adiabatic figure is 45 percent too high, the isothermal "
        "one is right",
        handbook="works each model out and prints its name with it; 99 kJ is never reproduced",
        sources=("asme-pcc-2", "energy-teaching-note"),
    ),
    Contradiction(
        topic="stored energy of 400 US gallons at 404.7 psi absolute, exponent 1.41",
        printed=(
            Printed("27 574 000 ft.lbf", "a maker's article on a chamber for gas tests"),
            Printed("4 702 000 ft.lbf", "the isentropic formula, atmosphere 14.696 psi absolute"),
        ),
        effect="a wrong power and a slipped decimal point: 5.9 times too much",
        handbook="works it out anew, and never quotes the article",
        sources=("asme-pcc-2",),
    ),
    Contradiction(
        topic="energy of a mass of TNT, two columns of one article",
        printed=(
            Printed("4 266 920 J/kg", "ASME PCC-2, 2008, Article 5.1, metric column"),
            Printed("1 488 617 ft.lbf/lb, which is 4 449 576 J/kg", "the same article, US column"),
            Printed("4.62 kJ/g", "another publication"),
        ),
        effect="the columns are 4.28 percent apart, so the equivalent depends on the units chosen",
        handbook="shows no TNT equivalent",
        sources=("asme-pcc-2",),
    ),
    Contradiction(
        topic="stand-off distance R from the scaled distance Rs",
        printed=(
            Printed("R = Rs x TNT^(1/3)", "ASME PCC-2, draft of 2005 and edition of 2008"),
            Printed("R = Rs x (2 x TNT)^(1/3)", "a later edition, as restated"),
        ),
        effect="a factor of 1.26 between editions: one of the two distances is far too short",
        handbook="prints no distance, and refuses to be asked for one",
        sources=("asme-pcc-2",),
    ),
)

GAS_TEST_STORED_ENERGY_METHOD: Final = FormulaMethod(
    name="gas_test_stored_energy",
    title="Energy stored in a pressure test",
    purpose="Make the difference between a gas test and a water test visible on every test page.",
    grade=Grade.B,
    parameters=(
        Parameter("V", "volume under test", "m3"),
        Parameter("p_test", "test reading", "bar(g)"),
        Parameter("Pa", "atmosphere", "bar(a)", default="site.atmosphere"),
        Parameter(
            "P", "test pressure counted from nothing", "bar(a)", default="difference(p_test) + Pa"
        ),
        Parameter("k", "exponent of the gas, 1.4 for air", default="1.4"),
        Parameter("dP", "test reading of the water test", "bar(d)", default="difference(p_test)"),
        Parameter("K_bulk", "how stiff water is: its bulk modulus", "GPa(d)", default="2.2 GPa(d)"),
        Parameter(
            "question",
            "what the author asks for",
            default="energy",
            words=("energy",),
            refused={
                "safe_distance": _STAND_OFF,
                "go_or_no_go": "this is energy only: whether a gas test goes ahead is for the "
                "certifying authority, in writing",
            },
        ),
    ),
    results=(
        Result("E_isentropic", "stored energy of the gas, isentropic", "kJ"),
        Result("E_brode", "stored energy of the gas, Brode", "kJ"),
        Result("E_isothermal", "stored energy of the gas, isothermal", "kJ"),
        Result("E_liquid", "stored energy of the water test", "kJ"),
        Result("times_water", "how many times the water test, isentropic"),
    ),
    limits=(
        Limit("p_test <= 45 bar(g)", _REAL),
        Limit("P <= 46.1 bar(a)", _REAL),
        Limit("P > Pa", _NOTHING),
        Limit("dP > 0 bar(d)", _NOTHING),
        Limit("Pa > 0 bar(a)", "the atmosphere is missing"),
        Limit("V > 0 m3", "the volume is missing"),
        Limit("k > 1", "no gas has an exponent of 1 or less: heat would come from nowhere"),
        Limit("k <= 1.67", "no gas has an exponent above 5/3"),
        Limit("K_bulk > 0 GPa(d)", "the stiffness of the liquid is missing"),
    ),
    valid=(
        "the vessel is full of ideal gas and lets go at once; no fragments, no walls around it",
        "test readings not above 45 bar gauge",
        "the water figure counts the water alone: no pocket of air, no stretch of the wall",
    ),
    sources=published("asme-pcc-2", "energy-teaching-note", "definition", "house-rule"),
    caution="Water first. The energy of the gas is in the room with you; a machinery space makes "
    "it worse.",
    deferral="A gas test needs the certifying authority to agree in writing.",
    do_not=(
        "print a personal stand-off distance",
        "give go or no-go",
        "print one model without its name",
    ),
    proofs=GAS_TEST_STORED_ENERGY,
    contradictions=_CONTRADICTIONS,
    body="""\
push = P - 0 bar(a) in bar(d)  # test pressure above nothing: what the gas pushes with
E_isentropic = push * V / (k - 1) * (1 - (Pa / P)^((k - 1) / k)) in kJ  # gas, isentropic
E_brode = (P - Pa) * V / (k - 1) in kJ  # gas, Brode
E_isothermal = push * V * log(P / Pa) in kJ  # gas, isothermal
E_liquid = dP^2 * V / (2 * K_bulk) in kJ  # water, pressed together
times_water = E_isentropic / E_liquid  # how many times the water test, isentropic
""",
)
