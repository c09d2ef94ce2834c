"""The pressure of a planned test by the code the item was built to, its steps and its hold.

One factor does not serve all codes: 1.3, 1.43 and 1.5 are not interchangeable, and a test with
gas is never above 1.25 times. Nothing in the line may pass a limit of its own, so the lowest
limit of any part is asked for where it is known. A page with a pressure is no permission to
test.

By hand, for 30 bar(g): water by Section VIII-1 1.3 x 30 = 39 bar(g), gas 1.1 x 30 = 33 bar(g),
the European directive 1.43 x 30 = 42.9 bar(g), ship's piping with water 1.5 x 30 = 45 bar(g),
with gas 36 to 37.5 bar(g), up in steps 18.0 21.6 25.2 28.8 32.4 36.0 bar(g).
"""

from typing import Final

from garboard.calc.method import (
    Answer,
    Contradiction,
    Grade,
    Limit,
    Parameter,
    Printed,
    Result,
    TableMethod,
)
from garboard.errors import OutsideValidity
from garboard.methods.cases.test_pressure import TEST_PRESSURE_BY_CODE
from garboard.methods.figures import NEAR, number, word
from garboard.methods.pressure_codes import BAR, CODES, FLOORS, Asked, Found
from garboard.methods.publications import published

__all__ = ["TEST_PRESSURE_BY_CODE_METHOD"]

_NO_CODE: Final = "the code is not stated, and 1.3, 1.43 and 1.5 are not interchangeable"
_GAS_MOST: Final = 1.25
"""No rule held here lets a gas test go above this many times the working pressure."""
_WITH_GAS: Final = ("asme_viii_1_pneumatic", "cfr46_pipe_pneumatic", "cfr46_lpg_cooking")
_TENTHS: Final = (0.5, 0.6, 0.7, 0.8, 0.9, 1)
"""Up to half, then by tenths, of the test pressure."""


def look_up(asked: Asked) -> Answer:
    """Work out the test of one code, and refuse it where a part in the line could not stand it."""
    code, factor = word(asked, "code", _NO_CODE), number(asked, "factor")
    if code in _WITH_GAS and factor is not None and factor > _GAS_MOST * (1 + NEAR):
        raise OutsideValidity(f"pneumatic factor above {_GAS_MOST:g}: no rule held allows it")
    found = CODES[code](asked)
    _refuse_weak_part(asked, found)
    steps = _steps(found) if found.gas else ()
    gas = ("water first; a gas test needs the certifying authority to agree in writing",)
    return Answer(
        results=found.results,
        printed={name: str(figure) for name, figure in (found.printed or {}).items()},
        words={"steps": " ".join(cell.removesuffix(" bar(g)") for _, cell, _ in steps) + " bar(g)"}
        if steps
        else {},
        columns=("step", "pressure", "source"),
        rows=(("rule", found.rule, found.source), *steps),
        notes=found.notes + (gas if found.gas else ()),
    )


def _refuse_weak_part(asked: Asked, found: Found) -> None:
    """Refuse a test that would take a part of the line over its own limit."""
    limit = number(asked, "component_limit")
    if limit is None:
        return
    planned = found.results.get("p_test", found.results.get("p_test_max"))
    if planned is not None and planned > limit * (1 + NEAR):
        raise OutsideValidity(
            f"{planned / BAR:g} bar(g) is above {asked['component_limit'].text}: "
            "a part in the line would be over its own limit"
        )


def _steps(found: Found) -> tuple[tuple[str, str, str], ...]:
    """The pressures to stop at on the way up, to the planned pressure or to the lower end."""
    top = found.results.get("p_test") or found.results["p_test_min"]
    return tuple(
        (f"{share:.0%}", f"{share * top / BAR:.1f} bar(g)", found.source) for share in _TENTHS
    )


TEST_PRESSURE_BY_CODE_METHOD: Final = TableMethod(
    name="test_pressure_by_code",
    title="Test pressure by code",
    purpose="Show which code a planned test follows, its pressure, its steps and its hold, and "
    "that nothing in the line is over its own limit.",
    grade=Grade.A,
    parameters=(
        Parameter(
            "code",
            "code the item was built or is inspected to",
            words=tuple(CODES),
            missing=_NO_CODE,
        ),
        Parameter("mawp", "maximum allowable working pressure", "bar(g)"),
        Parameter("stress_ratio", "allowable stress cold over hot"),
        Parameter("loading_ratio", "loading and temperature ratio of the directive"),
        Parameter("component_limit", "lowest limit of any part in the line", "bar(g)"),
        Parameter("head", "service head of a fuel tank", "m"),
        Parameter("service", "line service", words=(*FLOORS, "class_i_compressed_air", "other")),
        Parameter("p_test", "test pressure planned", "bar(g)"),
        Parameter("factor", "a factor asked for by the author"),
        Parameter(
            "fluid",
            "liquid in the tank: fresh water, 998.2 kg/m3",
            default="fresh_water",
            words=("fresh_water",),
        ),
    ),
    results=(
        Result("p_test", "test pressure", "bar(g)"),
        Result("p_test_min", "lower end of the band", "bar(g)"),
        Result("p_test_max", "upper end of the band", "bar(g)"),
        Result("p_test_psi", "the same in the US column, where the rule prints one", "psi(g)"),
        Result("standpipe_m", "standpipe of a fuel tank, metric column", "m"),
        Result("standpipe_ft", "standpipe of a fuel tank, US column", "ft"),
        Result("hold", "least time at the test pressure", "min"),
        Result("steps", "pressures to stop at on the way up, shown as rows"),
    ),
    limits=(
        Limit("mawp > 0 bar(g)", "the maximum allowable working pressure is missing"),
        Limit("stress_ratio >= 1", "allowable stress, cold over hot, is not below 1"),
        Limit("loading_ratio >= 1", "the loading ratio is not below 1"),
        Limit("head >= 0 m", "a head is not negative"),
    ),
    valid=(
        "the factor belongs to the code and edition the item was built to; say the edition of a "
        "vessel, because the factor changed between editions",
        "brittle fracture and water temperature are not checked here",
        "a pneumatic factor above 1.25, or a pressure above the limit of any part, is refused",
    ),
    sources=published(
        "46cfr56.97-35",
        "46cfr56.97-40",
        "46cfr182.435",
        "46cfr58.16-19",
        "asme-viii-1",
        "ped-annex-i",
        "definition",
    ),
    caution="Water first. A gas test needs the certifying authority to agree in writing, and "
    "nobody in the space.",
    deferral="Class, flag or the certifying authority; a marine inspector witnesses where the "
    "rule says so.",
    do_not=(
        "give go or no-go for a gas test",
        "print a pneumatic pressure above 1.25 times",
        "take one factor for all codes",
    ),
    proofs=TEST_PRESSURE_BY_CODE,
    contradictions=(
        Contradiction(
            topic="how far air piping may be tested with gas",
            printed=(
                Printed("150 percent of the working pressure, for 4 h", "a naval training manual"),
                Printed("120 to 125 percent", "46 CFR 56.97-35"),
            ),
            effect="stored energy far above what any rule held here allows",
            handbook="refuses a gas test above 1.25 times",
            sources=("46cfr56.97-35",),
        ),
    ),
    look_up=look_up,
)
