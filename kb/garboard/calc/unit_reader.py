"""Take the text of a unit apart: names, powers, tags.

`.` or the raised dot multiplies, one `/` divides, and what is divided by several units stands in
brackets: `kJ/(kg.K)`. A power is written `m2`, `m^2` or raised; a negative one `s^-1`. A tag says
what a pressure or temperature is counted from, and at which state a volume of free air is stated.
"""

import re
from dataclasses import dataclass

from garboard.calc.fault import Family
from garboard.calc.kinds import Kind
from garboard.calc.unit_names import FREE_AIR, LIBRARY_NAMES, ROLES, TRAPS, Role
from garboard.names import nearest

__all__ = ["Atom", "Parts", "UnitRefusal", "read_parts"]

LONGEST = 60
DEEPEST = 5
HIGHEST_POWER = 12
RAISED_FIGURES = "⁰¹²³⁴⁵⁶⁷⁸⁹⁻"
PLAIN_FIGURES = str.maketrans(RAISED_FIGURES, "0123456789-")
PRODUCT = "·⋅."
NAME = re.compile(r"[A-Za-z_\u00b5\u03bc\u03a9\u2126][A-Za-z0-9_]*|%|\u00b0[A-Za-z]*")
POWER = re.compile(rf"\^(-?[0-9]+)|([{RAISED_FIGURES}]+)")
TAG = re.compile(r"\((\w*)\)")
DATUM_TAGS = {"g": Kind.READING, "a": Kind.ABSOLUTE, "d": Kind.PLAIN}
TAGGED_COMPOUND = re.compile(r"(kgf/cm2)\(([gad])\)")
MASS_PER_AREA = re.compile(r"(kg|g|lb)/(cm|mm|inch)\^?[2²]")
COUNTED = (Role.PRESSURE, Role.KELVIN, Role.THERMOMETER)


class UnitRefusal(Exception):  # noqa: N818 - named in words of the trade
    """A text is no unit: which part of it, why, and the cure."""

    def __init__(self, family: Family, start: int, end: int, text: str, cure: str) -> None:
        super().__init__(text)
        self.family, self.start, self.end, self.text, self.cure = family, start, end, text, cure


@dataclass(frozen=True, slots=True)
class Atom:
    """One unit name in a compound."""

    name: str
    power: int
    """Negative below the stroke."""
    tag: str = ""

    @property
    def role(self) -> Role:
        """What is special about it."""
        return ROLES.get(self.name, Role.NONE)

    @property
    def volumes_of_air(self) -> int:
        """How often it stands for a volume of free air: once, or minus once below the stroke."""
        if self.tag not in FREE_AIR:
            return 0
        return 1 if self.power > 0 else -1


@dataclass(frozen=True, slots=True)
class Parts:
    """A unit taken apart."""

    atoms: tuple[Atom, ...]
    kind: Kind
    """What a value in this unit is counted from."""


def read_parts(text: str) -> Parts:
    """Take a unit apart.

    Raises:
        UnitRefusal: It is not written as a unit, or uses a name the handbook does not know.

    >>> [(atom.name, atom.power) for atom in read_parts("kJ/(kg.K)").atoms]
    [('kJ', 1), ('kg', -1), ('K', -1)]
    """
    if len(text) > LONGEST:
        cure = "name the quantity on a line of its own, in simpler units"
        raise UnitRefusal(Family.LIMIT, 0, LONGEST, f"a unit of {len(text)} characters", cure)
    tagged = TAGGED_COMPOUND.fullmatch(text)
    reader = Reader(tagged[1] if tagged else text)
    atoms = tuple(reader.read_all())
    if tagged:
        return Parts(atoms, DATUM_TAGS[tagged[2]])
    reader.check_mass_per_area()
    if len(atoms) == 1 and atoms[0].power == 1:
        return Parts(atoms, reader.kind_of_one(atoms[0]))
    reader.check_tags_in_compound(atoms)
    return Parts(atoms, Kind.PLAIN)


class Reader:
    """A place in the text of a unit."""

    def __init__(self, text: str) -> None:
        self.text = text
        self.at = 0

    def refusal(
        self, text: str, cure: str, start: int = 0, end: int = 0, family: Family = Family.UNIT
    ) -> UnitRefusal:
        """Refuse a part of the unit, by default all of it."""
        return UnitRefusal(family, start, end or len(self.text), text, cure)

    def read_all(self) -> list[Atom]:
        """Read the whole text.

        Raises:
            UnitRefusal: It ends too early or too late.
        """
        atoms = self.read_compound(1, 0)
        if self.at < len(self.text):
            raise self.sign_refusal()
        return atoms

    def read_compound(self, sign: int, depth: int) -> list[Atom]:
        """Read units joined by products, and by one stroke."""
        if depth > DEEPEST:
            raise self.refusal(
                "brackets nested too deeply", "write a simpler unit", family=Family.LIMIT
            )
        atoms: list[Atom] = []
        if self.text.startswith("1/", self.at):
            self.at += 1
        else:
            atoms += self.read_factor(sign, depth)
        divided = False
        while self.at < len(self.text) and self.text[self.at] in PRODUCT + "/":
            stroke = self.text[self.at] == "/"
            if divided:
                here = f"`{self.text}` divides by more than one unit"
                raise self.refusal(here, "put what is below the stroke in brackets: J/(kg.K)")
            self.at += 1
            divided = stroke
            atoms += self.read_factor(-sign if stroke else sign, depth)
        return atoms

    def read_factor(self, sign: int, depth: int) -> list[Atom]:
        """Read a name with its power and tag, or a bracket."""
        if self.text.startswith("(", self.at):
            self.at += 1
            atoms = self.read_compound(sign, depth + 1)
            if not self.text.startswith(")", self.at):
                raise self.refusal(f"a bracket of `{self.text}` is not closed", "close it")
            self.at += 1
            return atoms
        found = NAME.match(self.text, self.at)
        if not found:
            raise self.sign_refusal()
        start, self.at = self.at, found.end()
        name, power = self.split(found[0], start)
        written = POWER.match(self.text, self.at)
        if written:
            self.at = written.end()
            power *= self.power_of(written)
        if not 1 <= abs(power) <= HIGHEST_POWER:
            cure = "keep powers from -12 to 12, and not 0"
            raise self.refusal(f"power {power} of `{name}`", cure, start, self.at, Family.LIMIT)
        return [Atom(name, power * sign, self.read_tag(name, power, start))]

    def power_of(self, written: re.Match[str]) -> int:
        """The power as a number."""
        digits = (written[1] or written[2]).translate(PLAIN_FIGURES)
        if not re.fullmatch(r"-?[0-9]{1,2}", digits):
            cure = "write it as m^2 or s^-1"
            raise self.refusal(
                f"`{written[0]}` is no power of a unit", cure, written.start(), self.at
            )
        return int(digits)

    def split(self, word: str, start: int) -> tuple[str, int]:
        """Split a word such as `m3` into name and power; a known name goes first."""
        if word in LIBRARY_NAMES:
            return word, 1
        stem = word.rstrip("0123456789")
        digits = word[len(stem) :]
        if digits and stem in LIBRARY_NAMES and word not in TRAPS:
            return stem, int(digits[:3])
        cure = TRAPS.get(word) or TRAPS.get(stem)
        if not cure:
            near = nearest(word, LIBRARY_NAMES)
            cure = f"did you mean {near}?" if near else "take a unit from the list of units"
        raise self.refusal(f"`{word}` is no unit of this handbook", cure, start, start + len(word))

    def read_tag(self, name: str, power: int, start: int) -> str:
        """Read the tag in brackets behind a unit, if there is one."""
        found = TAG.match(self.text, self.at)
        if not found:
            return ""
        self.at = found.end()
        tag, role = found[1], ROLES.get(name, Role.NONE)
        allowed = tags_of(role, abs(power))
        if tag not in allowed:
            cure = f"its tags are {' '.join(f'({each})' for each in allowed)}"
            if role is Role.THERMOMETER and tag == "a":
                cure = f"write {name} for a reading, {name}(d) for a difference, K(a) for absolute"
            if not allowed:
                cure = "leave the tag out; pressures, temperatures and volumes of free air have one"
            raise self.refusal(f"`{name}` takes no tag `({tag})`", cure, start, self.at)
        return tag

    def sign_refusal(self) -> UnitRefusal:
        """Refuse the sign that stands here."""
        rest = self.text[self.at :]
        cure = "write units as m3/h, N.m, kJ/(kg.K), m/s^2"
        if rest.startswith("*"):
            cure = f"write the product of units with a dot: {self.text.replace('*', '.')}"
        elif rest.startswith(" "):
            cure = "write the unit with no space inside"
        elif rest.startswith("-"):
            cure = "write a negative power as s^-1, and a minus between two spaces"
        end = min(self.at + 1, len(self.text))
        text = (
            f"`{rest[0]}` has no place in the unit `{self.text}`"
            if rest
            else (f"the unit `{self.text}` stops too early")
        )
        return self.refusal(text, cure, min(self.at, max(end - 1, 0)), end)

    def check_mass_per_area(self) -> None:
        """Refuse a mass per area that is meant as a pressure."""
        if MASS_PER_AREA.fullmatch(self.text):
            force = self.text.replace("kg", "kgf").replace("lb", "lbf")
            cure = f"write {force}; for a gauge or absolute pressure kgf/cm2(g), kgf/cm2(a)"
            raise self.refusal(f"`{self.text}` is a mass on an area, not a pressure", cure)

    def kind_of_one(self, atom: Atom) -> Kind:
        """What a value in a single unit is counted from.

        Raises:
            UnitRefusal: It does not say.
        """
        name = atom.name
        if atom.role not in COUNTED:
            return Kind.PLAIN
        if atom.tag:
            return DATUM_TAGS[atom.tag]
        if atom.role is Role.THERMOMETER:
            return Kind.READING
        if atom.role is Role.KELVIN:
            cure = f"write {name}(a) for an absolute temperature, {name}(d) for a difference"
        else:
            cure = (
                f"write {name}(g) for a gauge reading, {name}(a) counted from nothing, {name}(d) "
                "for a difference; a stress is written N/mm2"
            )
        text = f"`{name}` does not say what it is counted from"
        raise self.refusal(text, cure, family=Family.DATUM)

    def check_tags_in_compound(self, atoms: tuple[Atom, ...]) -> None:
        """Refuse a gauge or absolute tag inside a compound, which is a difference by nature."""
        for atom in atoms:
            if atom.role in COUNTED and atom.tag in ("g", "a"):
                text = f"`{self.text}` holds `{atom.name}({atom.tag})`, a compound has no such tag"
                raise self.refusal(
                    text, f"write {atom.name} or {atom.name}(d) there", family=Family.DATUM
                )


def tags_of(role: Role, power: int) -> tuple[str, ...]:
    """The tags that a unit may carry."""
    if (role, power) in ((Role.LENGTH, 3), (Role.VOLUME, 1)):
        return tuple(FREE_AIR)
    if power != 1:
        return ()
    return {Role.PRESSURE: ("g", "a", "d"), Role.KELVIN: ("a", "d"), Role.THERMOMETER: ("d",)}.get(
        role, ()
    )
