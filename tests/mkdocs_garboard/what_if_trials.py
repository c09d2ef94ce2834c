"""Calculations to open: every part of the language, every function, casts, criteria, limits, methods.

Each says between which numbers its opened inputs are typed and with how many decimals, so that some
of what is typed lies where there is no answer.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from garboard.calc.fault import CalcFault, Line
from garboard.calc.language import read_statement
from garboard.calc.method import Expect, FormulaMethod, Method, Proof
from garboard.calc.network import Network, evaluate
from garboard.calc.syntax import Assignment, Number
from garboard.errors import Where
from garboard.methods import METHODS
from tests.calc.desk import fence, given
from tests.calc.sample_methods import METHODS as SAMPLES

SITE = {"site.atmosphere": "1013 mbar(a) +/- 40 mbar", "site.T_room": "25 degC +/- 10 K"}
Span = tuple[float, float, int]
"""From, to, and how many decimals are typed."""


@dataclass(frozen=True)
class Trial:
    """One calculation with what is typed into it."""

    name: str
    text: str
    spans: Mapping[str, Span]
    site: Mapping[str, str] = field(default_factory=dict)
    methods: Mapping[str, Method] = field(default_factory=dict)
    above: str = ""
    """A fence that this one uses and that uses it."""

    def worked(self, typed: Mapping[str, str] | None = None) -> Network:
        """It worked out, with other numbers in place of its own where some are typed."""
        lines = self.text.strip().split("\n")
        for name, number in (typed or {}).items():
            at = next(i for i, line in enumerate(lines) if line.startswith(f"{name} = "))
            head, _, rest = lines[at].partition(" = ")
            own, space, unit = rest.partition(" ")
            counted = own.isdecimal() and not unit[:1].isalpha()
            lines[at] = f"{head} = {number.removesuffix('.0') if counted else number}{space}{unit}"
        fences = [fence("desk", "\n".join(lines), options=f"; what-if {' '.join(self.spans)}")]
        if self.above:
            fences.append(fence("above", self.above))
        known = {address: given(address, text) for address, text in self.site.items()}
        return evaluate(fences, known, self.methods)


def small(name: str, text: str, /, **spans: Span) -> Trial:
    """A calculation that needs nothing from outside."""
    return Trial(name, text, spans)


TWELVE = "\n".join(f"b{n} = {n}.5 +/- 0.{n % 9 + 1}" for n in range(11))
OWN = (
    small("sums", "a = 3 +/- 0.5\nb = 2 +/- 10 %\nx = a + b - 1.5 * a / b", a=(-9, 9, 2), b=(-2, 9, 1)),
    small("signs", "a = 3\nx = -a + 2\ny = -(a - 1) * -2", a=(0, 50, 3)),
    small("powers", "a = 3 +/- 0.1\nb = 2\nx = a^3\ny = a^0.5\nz = a^b\nw = 2^a", a=(0, 9, 2), b=(0, 4, 2)),
    small("square", "v = 4 m/s +/- 5 %\nx = v^2 in m2/s2\ny = 0.5 * 1025 kg/m3 * v^2 in kPa(d)", v=(0, 30, 2)),
    small("root", "a = 9 +/- 0.5\nx = sqrt(a - 5)\ny = x * 2\nrequire y >= 2", a=(0, 20, 2)),
    small("exponential", "a = 3 +/- 0.2\nx = exp(a)\ny = log(a - 1)\nz = log10(a)", a=(0, 900, 1)),
    small("angles", "a = 30 deg +/- 1 deg\nx = sin(a) + 2\ny = cos(a) + 2\nz = tan(a / 4) + 2", a=(0, 300, 1)),
    small("wholes", "a = 7 +/- 0.4\nb = 0.2\nx = floor(a / b)\ny = ceil(a / b)\nz = round(a / b)", a=(0, 9, 1), b=(0, 1, 1)),
    small("extremes", "a = 7 +/- 2\nb = 3 +/- 1\nx = min(a, b, 5)\ny = max(a, b, 5)\nz = abs(a - b)", a=(0, 9, 1), b=(0, 9, 1)),
    small("table", "a = 15 +/- 1\nx = interpolate(a, 10, 1, 20, 3, 40, 2)", a=(5, 45, 1)),
    small("moving table", "a = 15\nb = 20 +/- 3\nx = interpolate(a, 10, 1, b, 3, 40, 2)", a=(5, 45, 1), b=(5, 45, 0)),
    small("choice", "a = 1\nb = 5\nx = a if a < b else 1 / (b - 3)\ny = x + 1", a=(0, 9, 0), b=(0, 9, 0)),
    small("branch not taken", "a = 1\nx = 1 / (a - 2)\ny = x if a > 3 else 7\nz = 1 / (a - 4) if a > 4 else 2", a=(0, 9, 0)),
    small("uneven branch", "a = 3 +/- 1\nx = a * 2 if a >= 3 else 1\nrequire x >= 2", a=(1, 5, 1)),
    Trial("casts", "p = 3 bar(g) +/- 0.1 bar\nq = 5 bar(a)\nx = absolute(p)\ny = gauge(q)\nz = difference(p) + 1 bar(d)\nr = x / q",
          {"p": (-2, 30, 2), "q": (0, 30, 2)}, SITE),
    small("thermometer", "t = 20 degC +/- 2 K\nx = t in K(a)\ny = t - 5 degC\nz = 1 / absolute(t)\nrequire t <= 40 degC", t=(-300, 90, 1)),
    small("kelvin", "t = 300 K(a) +/- 1 %\nx = t in degC\ny = t / 273.15 K(a)\nrequire x < 50 degC", t=(-5, 500, 1)),
    Trial("free air", "p = 30 bar(g) +/- 0.5 bar\nV = 500 L\nx = free_air(V, p, site.T_room) in m3(n)\nn = floor(x / 0.9 m3(n))\nrequire n >= 6",
          {"p": (-1, 50, 1), "V": (0, 900, 0)}, SITE),
    Trial("flow of air", "q = 2 m3/min +/- 3 %\nt = 30 degC\nx = free_air(q, 7 bar(g), t) in m3(n)/h", {"q": (0, 9, 2), "t": (-9, 60, 1)}, SITE),
    small("at most", "p = 30 bar(g)\nm = 1.1 * p in bar(g)\nrequire m <= 33 bar(g)\nrequire m < 33 bar(g)", p=(29.9, 30.1, 1)),
    small("at least", "a = 0.3\nb = 0.1\nx = b * 3\nrequire x >= a\nrequire x > a\nrequire a >= x\nrequire a > x", a=(0, 0.9, 1), b=(0, 0.3, 1)),
    small("to nothing", "a = 3 +/- 1\nrequire a >= 0\nrequire a - 3 <= 0", a=(0, 9, 0)),
    small("both sides", "a = 3 +/- 0.2\nb = 2 +/- 5 %\nx = a * b\ny = a + b\nrequire x >= y\nrequire 2 * x >= y", a=(0, 9, 2), b=(0, 9, 2)),
    small("twelve", f"a = 3 +/- 0.5\n{TWELVE}\nx = a * ({' + '.join(f'b{n}' for n in range(11))})\nrequire x >= 200", a=(0, 9, 1)),
    small("thirteen", f"a = 3 +/- 0.5\n{TWELVE}\nb11 = 4 +/- 1\nx = a * ({' + '.join(f'b{n}' for n in range(12))})\ny = a * b1\nrequire x >= 200", a=(0, 9, 1)),
    small("range unknown", "a = 9 +/- 5\nb = 2\nx = sqrt(a - 5) + b\nrequire x >= 1", a=(0, 20, 1), b=(0, 3, 1)),
    small("share", "d = 50 % \nc = 110 A.h +/- 3 %\nx = c * d / 8 A in h", d=(-5, 120, 0), c=(0, 200, 0)),
    small("turns", "n = 900 rpm +/- 2 %\nx = n * 60 s / (1 rev)\ny = pi * x", n=(0, 3000, 0)),
    small("large and small", "a = 2\nx = a * 123456789\ny = a / 98765432\nz = a * 1e-12 / 3", a=(0, 900, 3)),
    small("alias", "a = 30 bar(g) +/- 0.5 bar\nx = a\ny = x", a=(0, 60, 2)),
    small("hump", "a = 7 +/- 1\nx = a * (6 - a)\ny = (a - 3)^2\nrequire x >= 1\nrequire y >= 0.5", a=(0, 9, 1)),
    small("counts", "a = 6\nx = a * 2 + 1\nrequire x >= 9", a=(0, 9, 1)),
    Trial("from above", "a = 3 m +/- 0.1 m\nx = above.b * 2", {"a": (0, 9, 2)}, above="b = desk.a / 3 + 1 m\n"),
    Trial("method with alarms", "p = 30 bar(g) +/- 0.5 bar\nx = starts_left(V = 500 L, p_now = p, p_min = 10 bar(g), v_start = 0.8 m3(n))\ny = x.starts + 1\nrequire x.starts >= 6",
          {"p": (5, 45, 1)}, SITE, SAMPLES),
    Trial("method with one result", "p = 5 bar(g) +/- 0.1 bar\nx = pressure_ratio(p_1 = 1.013 bar(a), p_2 = p)\ny = x^0.3", {"p": (-1, 9, 2)}, SITE, SAMPLES),
)  # fmt: skip


def quantity(text: str) -> Number | None:
    """An argument that is one number, which a reader can change."""
    line = Line(f"a = {text}", Where("case"))
    try:
        statement = read_statement(line, len(line.text), ())
    except CalcFault:
        return None
    value = statement.value if isinstance(statement, Assignment) else None
    return value if isinstance(value, Number) else None


def of_proof(method: FormulaMethod, proof: Proof) -> Trial | None:
    """A published case of a method, with every number of it open."""
    handed = {name: text for name, text in proof.call.items() if not name.startswith("site.")}
    open_ = {name: found for name, text in handed.items() if (found := quantity(text))}
    if not open_ or len({*open_}) > 6:
        return None
    lines = [f"i_{name} = {handed[name]}" for name in open_]
    call = ", ".join(
        f"{name} = {f'i_{name}' if name in open_ else text}" for name, text in handed.items()
    )
    spans = {
        f"i_{name}": (float(one.number) * 0.6, float(one.number) * 1.4 or 1.0, 4)
        for name, one in open_.items()
    }
    text = "\n".join([*lines, f"found = {method.name}({call})"])
    return Trial(f"{method.name}: {proof.name}", text, spans, SITE, {method.name: method})


def of_methods() -> Iterator[Trial]:
    """Two published cases of every bundled formula method."""
    for method in METHODS.values():
        if isinstance(method, FormulaMethod):
            cases = (of_proof(method, one) for one in method.proofs if one.expect is Expect.VALUE)
            yield from [one for one in cases if one][:2]


TRIALS = (*OWN, *of_methods())
