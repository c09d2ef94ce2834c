"""The language of a line: what may be written, and what each slip is told."""

import pytest

from tests.calc.desk import FIRST_LINE, desk

GIVEN = "a = 6\nb = 2\nV = 500 L\np = 30 bar(g)\n"


@pytest.mark.parametrize(
    ("expression", "value"),
    [
        ("a + b * 3", 12.0),
        ("(a + b) * 3", 24.0),
        ("a - b - 1", 3.0),
        ("a / b / 3", 1.0),
        ("a / (b / 3)", 9.0),
        ("2 * a^2", 72.0),
        ("-2^2", -4.0),
        ("(-2)^2", 4.0),
        ("2^-1", 0.5),
        ("a*b", 12.0),
        ("a/b", 3.0),
        ("a+b", 8.0),
        ("- a", -6.0),
        ("a - -b", 8.0),
        ("a * -b", -12.0),
        ("a if b < 3 else b", 6.0),
        ("a if b > 3 else b", 2.0),
        ("a if b > 3 else b if a > 7 else 1", 1.0),
        ("1 if a >= 6 else 0", 1.0),
        ("sqrt(16)", 4.0),
        ("floor(2.7) + ceil(2.2) + round(2.5)", 8.0),
        ("floor(-2.5)", -3.0),
        ("round(-2.5)", -2.0),
        ("abs(b - a)", 4.0),
        ("min(3, 1, 2)", 1.0),
        ("max(3, 1, 2)", 3.0),
        ("log(exp(2))", 2.0),
        ("log10(1000)", 3.0),
        ("sin(90 deg)", 1.0),
        ("cos(pi)", -1.0),
        ("tan(45 deg)", 1.0),
        ("interpolate(15, 10, 1, 20, 3)", 2.0),
        ("interpolate(10, 10, 1, 20, 3, 30, 9)", 1.0),
        ("interpolate(30, 10, 1, 20, 3, 30, 9)", 9.0),
        ("1.2e-3 * 1e3", 1.2),
        ("10 %", 0.1),
        ("a * 50 %", 3.0),
        ("floor(0.6 / 0.2)", 3.0),
        ("ceil(0.3 / 0.1)", 3.0),
        ("floor(4.35 * 100)", 435.0),
    ],
)
def test_expressions_are_worked_out_as_written(expression: str, value: float) -> None:
    assert desk(f"{GIVEN}r = {expression}").si("r") == pytest.approx(value, rel=1e-14, abs=1e-15)


@pytest.mark.parametrize(
    ("line", "column", "says", "cure"),
    [
        ("r = a == b", 7, "`==`", "one = sets a name"),
        ("r = a**2", 6, "`**`", "a^2"),
        ("r = a // b", 7, "`//`", "floor(a / b)"),
        ("r += 1", 3, "`+=`", "name = expression"),
        ("r := 1", 3, "`:=`", "name = expression"),
        ("require a != b", 11, "`!=`", "<, <=, > or >="),
        ("require a => b", 11, "`=>`", ">="),
        ("require a && b", 11, "`&&`", "one require line"),
        ("require a < b < 9", 15, "a second comparison stands at `<`", "two values at a time"),
        ("require a", 10, "a comparison is missing", "<, <=, > or >="),
        ("require a = b", 11, "a single = compares nothing", "<, <=, > or >="),
        ("require a > 1 and b > 1", 15, "`and`", "one require line"),
        ("require a > b in L", 15, "`in`", "units of the same kind"),
        ("r = a < b", 7, "`<`", "if x < y else"),
        ("r = (a < b)", 8, "`<`", "if x < y else"),
        ("r = a-b", 5, "`a-b` is one name here", "to subtract write a - b"),
        ("r = a -b", 5, "the minus in `a -b`", "write a - b"),
        ("r = a- b", 5, "the minus in `a-`", "both sides"),
        ("r = 2-3", 5, "the minus in `2-3`", "write 2 - 3"),
        ("r = 5 m-1", 7, "the minus in `m-1`", "m^-1"),
        ("r = (a)-(b)", 7, "the minus", "both sides"),
        ("r = V.real", 5, "`V.real` asks for a part of one value", "write V"),
        ("r = V[0]", 5, "`V[`", "name of its own"),
        ("r = [1, 2]", 5, "a list stands outside a method", "argument of a method"),
        ('r = "text"', 5, '`"`', "what it is goes behind #"),
        ("r = 'text'", 5, "`'`", "what it is goes behind #"),
        ("r = {1}", 5, "`{`", "round brackets"),
        ("r = a; s = b", 6, "`;`", "line of its own"),
        ("r = a : b", 7, "`:`", "in UNIT"),
        ("r = a \\", 7, "`\\`", "one line"),
        ("r = a % b", 7, "`%`", "3 %"),
        ("r = a ! b", 7, "`!`", "compares"),
        ("r = a @ b", 7, "`@`", "use names"),
        ("r = lambda x", 12, "`x` does not belong here", "between two values"),
        ("r = a lambda", 7, "`lambda` does not belong here", "line of its own"),
        ("r = a not b", 7, "`not` does not belong here", "comparison round"),
        ("r = a b", 7, "`b` does not belong here", "between two values"),
        ("r = (a) (b)", 9, "`(` does not belong here", "between two values"),
        ("r = a (b)", 5, "no function or method is called `a`", "put * between"),
        ("r = 2 (b)", 7, "`(` does not belong here", "between two values"),
        ("r = (a", 7, "`)` is missing at the end of the line", "close the bracket"),
        ("r = a)", 6, "`)` does not belong here", "closing bracket away"),
        ("r = ()", 6, "a value is missing before `)`", "write a name"),
        ("r = a +", 8, "a value is missing at the end", "write a name"),
        ("r = + a", 5, "a plus before a value says nothing", "leave it out"),
        ("r = * a", 5, "a value is missing before `*`", "write a name"),
        ("r =", 4, "a value is missing at the end", "write a name"),
        ("r = a = b", 7, "`=` does not belong here", "one name a line"),
        ("r", 1, "`r` starts no statement", "name = expression"),
        ("= 3", 1, "`=` starts no statement", "name = expression"),
        ("3 = r", 1, "`3` starts no statement", "name = expression"),
        ("if = 3", 1, "`if` starts no statement", "name = expression"),
        ("in = 3", 1, "an inch is written inch", "name = expression"),
        ("import os", 1, "`import` starts no statement", "name = expression"),
        ("r s = 3", 1, "`r` starts no statement", "name = expression"),
        ("r = 2 ^ 3 ^ 2", 5, "powers in a row", "with brackets"),
        ("r = 5 m ^ 2", 5, "`5 m ^` can be read in two ways", "5 m^2"),
        ("r = a if b else 1", 12, "a comparison is missing before `else`", "<, <=, > or >="),
        ("r = a if b > 1", 15, "`else` is missing", "if left <= right else"),
        ("r = sqrt(a, b)", 5, "`sqrt(a, b)` has 2 values", "give sqrt 1"),
        ("r = min(a)", 5, "`min(a)` has 1 values", "at least 2"),
        ("r = sqrt(x = a)", 10, "a named argument", "in their order"),
        ("r = max(a b)", 11, "`,` is missing before `b`", "comma"),
        ("r = max(1,2)", 9, "`1,2` has a comma inside a number", "comma and a space"),
        ("r = a, b", 6, "`,` does not belong here", "decimal point"),
        ("r = a in m3 (n)", 7, "`in` does not belong here", "no space inside the unit"),
        ("r = a in", 7, "`in` does not belong here", "no space inside the unit"),
        ("r = 3 in", 7, "`in` does not belong here", "inch is written inch"),
        ("r = 3 m + 1 m +/- 2 m", 15, "a tolerance belongs to a quantity", "line of its own"),
        ("r = 2 * 3 m +/- 1 m", 13, "a tolerance belongs to a quantity", "line of its own"),
        ("r = a +/- 1", 7, "a tolerance belongs to a quantity", "line of its own"),
        ("r = (3 m +/- 1 m)", 10, "a tolerance belongs to a quantity", "line of its own"),
        ("r = 10 bar (g)", 5, "`g` follows the unit", "10 bar(g)"),
        ("r = a \u2212 b", 7, "`\u2212` U+2212", "keyboard"),
        ("r = a \u00d7 b", 7, "`\u00d7` U+00D7", "write *"),
        ("require a \u2265 b", 11, "`\u2265` U+2265", "write >="),
        ("r = \u0430", 5, "`\u0430` U+0430", "may only look like"),
        ("r = a\u00a0+ b", 6, "U+00A0", "retype the space"),
        ("r = a # ok \u202e", 12, "a hidden sign U+202E", "delete it"),
        ("r = a\x07", 6, "a hidden sign U+0007", "delete it"),
    ],
)  # fmt: skip
def test_each_slip_is_told_at_its_sign_with_its_own_cure(
    line: str, column: int, says: str, cure: str
) -> None:
    found = desk(GIVEN + line).fault

    assert (found.where.line, found.where.column) == (FIRST_LINE + 4, column)
    assert says in found.text
    assert cure in found.help
    assert found.code == "unreadable-line"


@pytest.mark.parametrize(
    ("line", "column", "says"),
    [
        ("sqrt = 3", 1, "`sqrt` is a word of this language"),
        ("pi = 3", 1, "`pi` is a word of this language"),
        ("a-b = 3", 1, "`a-b` cannot be set"),
        ("x.y = 3", 1, "`x.y` cannot be set"),
        ("_x = 3", 1, "`_x` cannot be set"),
        ("x" * 41 + " = 3", 1, "has 41 signs"),
        ("a = 3", 1, "`a` is set already in line 10"),
        ("r = aa", 5, "`aa` is set nowhere in this fence"),
        ("r = sqr(4)", 5, "no function or method is called `sqr`"),
        ("r = math.sqrt(4)", 5, "no function or method is called `math.sqrt`"),
    ],
)
def test_names_have_their_own_faults(line: str, column: int, says: str) -> None:
    found = desk(GIVEN + line).fault

    assert (found.where.line, found.where.column) == (FIRST_LINE + 4, column)
    assert says in found.text
    assert found.family == "NAME"


def test_an_unknown_name_gets_the_nearest_known_one() -> None:
    found = desk("p_max = 30 bar(g)\nr = p_mx + 1 bar(d)").fault

    assert found.help == "did you mean p_max?"


@pytest.mark.parametrize(
    ("expression", "column", "says"),
    [
        ("a / (b - 2)", 5, "`a / (b - 2)` divides by zero: `(b - 2)` is 0"),
        ("1 + a / (b - 2)", 9, "`a / (b - 2)` divides by zero"),
        ("sqrt(b - a)", 5, "`sqrt(b - a)` is no real number"),
        ("log(b - 2)", 5, "`log(b - 2)` is no real number"),
        ("log10(b - a)", 5, "`log10(b - a)` is no real number"),
        ("(b - a)^0.5", 5, "`(b - a)^0.5` is no real number"),
        ("(b - 2)^-1", 5, "`(b - 2)^-1` is no real number"),
        ("exp(exp(exp(a)))", 5, "`exp(exp(exp(a)))` is too large"),
        ("((1e12^a)^a)^a", 5, "`((1e12^a)^a)` is too large"),
        ("interpolate(b, 3, 1, 4, 2)", 5, "not continued past its ends"),
        ("interpolate(a, 3, 1, 2, 2)", 5, "the points of the table do not rise"),
        ("a / (b - 2) if a > 1 else 2", 5, "`a / (b - 2)` divides by zero"),
        ("1 if a / (b - 2) > 1 else 2", 10, "`a / (b - 2)` divides by zero"),
    ],
)
def test_what_cannot_be_worked_out_is_told_at_its_innermost_part(
    expression: str, column: int, says: str
) -> None:
    found = desk(f"{GIVEN}r = {expression}").fault

    assert found.family == "RANGE"
    assert found.where.column == column
    assert says in found.text


def test_the_branch_that_is_not_taken_is_not_worked_out() -> None:
    assert desk(f"{GIVEN}r = a / (b - 2) if a < 1 else 7").text("r") == "7.00"


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("r = " + "(" * 31 + "a" + ")" * 31, "nested deeper than 30 levels"),
        ("r = " + "-" + " -" * 40 + " a", "nested deeper than 30 levels"),
        ("r = " + "sqrt(" * 31 + "a" + ")" * 31, "nested deeper than 30 levels"),
        ("r = " + "1 if a > 1 else " * 31 + "1", "a line of"),
        ("r = a" + " + a" * 100, "a line of 405 signs"),
        ("r = 1234567890.1234567", "has 17 digits"),
        ("r = 1e13", "beyond 12"),
        ("r = a^13", "beyond 12"),
        ("r = V^-13", "beyond 12"),
        ("r = 1 m^13", "power 13"),
        ("r = max(" + ", ".join("a" * 60) + ")", "more than 40 arguments"),
    ],
)
def test_a_line_has_its_limits(line: str, says: str) -> None:
    found = desk(GIVEN + line).fault

    assert found.family == "LIMIT"
    assert says in found.text


def test_a_block_has_its_limits() -> None:
    many_lines = desk("\n".join(f"x{n} = 1" for n in range(121)))
    many_terms = desk("\n".join(f"x{n} = " + " + ".join("1" * 50) for n in range(19)))
    many_signs = desk("\n".join(["# " + "x" * 300] * 30))

    assert many_lines.fault.text == "the fence goes beyond 120 statements"
    assert many_lines.fault.where.line == FIRST_LINE + 120
    assert many_terms.fault.text == "the fence goes beyond 900 terms"
    assert many_signs.fault.text == "the fence goes beyond 8000 signs"


def test_a_block_at_its_limits_is_worked_out() -> None:
    found = desk("\n".join(f"x{n} = 1" for n in range(120)))

    assert found.faults == ()


def test_powers_of_what_has_a_unit_are_written_out() -> None:
    assert desk(f"{GIVEN}r = V^(1 / 3) in mm").text("r") == "794 mm"
    assert "must be written out" in desk(f"{GIVEN}r = V^a").fault.text
    assert "is a volume" in desk(f"{GIVEN}r = a^V").fault.text
    assert desk(f"{GIVEN}r = (V / (1 L))^b").text("r") == "250000"


def test_comments_and_blank_lines_are_free() -> None:
    found = desk(
        "# a remark \u2192 with \u4e2d\u6587\n\n  a = 3  # indented, and aligned\n\tb = a\n"
    )

    assert found.faults == ()
    assert found.si("b") == 3.0


def test_a_comment_says_what_it_is_and_where_it_comes_from() -> None:
    value = desk("n = 6  # six starts [IACS-UR-M61 M61.1.4, plate-R1]  [SA-TR-004]").value("n")

    assert value.label == "six starts"
    assert [(each.source, each.clause) for each in value.sources] == [
        ("IACS-UR-M61", "M61.1.4"),
        ("plate-R1", ""),
        ("SA-TR-004", ""),
    ]
    assert [each.where.column for each in value.sources if each.where] == [22, 43, 55]


def test_a_bracket_inside_a_comment_is_no_source() -> None:
    value = desk("n = 6  # length [m] of the keel").value("n")

    assert (value.label, value.sources) == ("length [m] of the keel", ())
