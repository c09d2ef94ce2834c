"""What every method must say of itself, and what it must never say."""

import subprocess
import sys
from pathlib import Path

import pytest

from garboard.calc.method import Expect, FormulaMethod, Method
from garboard.calc.quantity import read_quantity
from garboard.calc.units import read_unit
from garboard.errors import Where
from garboard.methods import METHODS
from garboard.methods.publications import PUBLISHED

METHODS_FOLDER = Path(__file__).parents[2] / "kb" / "garboard" / "methods"
READ = {"original", "secondary", "remembered", "constructed"}
BASES = {"published", "table", "rule", "consistency", "constructed"}

every_method = pytest.mark.parametrize("method", METHODS.values(), ids=METHODS)
FORMULAS = [method for method in METHODS.values() if isinstance(method, FormulaMethod)]
every_formula = pytest.mark.parametrize("method", FORMULAS, ids=lambda method: str(method.name))


@every_method
def test_a_method_says_everything_that_its_page_must_show(method: Method) -> None:
    said = (method.title, method.purpose, method.caution, method.deferral)

    assert all(said)
    assert method.parameters
    assert method.results
    assert method.limits
    assert method.valid
    assert method.sources
    assert method.do_not
    assert method.proofs


def test_methods_are_listed_under_their_own_names() -> None:
    assert [method.name for method in METHODS.values()] == list(METHODS)


@every_method
def test_every_unit_of_a_declaration_is_a_unit_of_the_language(method: Method) -> None:
    units = [parameter.unit for parameter in method.parameters]
    units += [result.unit for result in method.results]

    assert [read_unit(unit).text for unit in units] == units


@every_method
def test_no_name_is_declared_twice(method: Method) -> None:
    parameters = [parameter.name for parameter in method.parameters]
    results = [result.name for result in method.results]

    assert len(set(parameters)) == len(parameters)
    assert len(set(results)) == len(results)


@every_formula
def test_a_formula_works_out_every_result_in_its_declared_unit(method: FormulaMethod) -> None:
    shown = {}
    for line in method.body.splitlines():
        statement, _, _ = line.partition("#")
        name, _, expression = statement.partition(" = ")
        _, _, unit = expression.strip().rpartition(" in ")
        shown[name] = unit if " in " in expression else ""

    assert {result.name: shown[result.name] for result in method.results} == {
        result.name: result.unit for result in method.results
    }


@every_formula
def test_every_line_of_a_formula_says_what_it_is(method: FormulaMethod) -> None:
    assert [line for line in method.body.splitlines() if "  # " not in line] == []


@every_method
def test_a_proof_calls_what_is_declared_and_names_a_source_of_its_method(method: Method) -> None:
    parameters = {parameter.name for parameter in method.parameters}
    results = {result.name for result in method.results}
    sources = {source.name for source in method.sources}
    for proof in method.proofs:
        assert set(proof.call) - {"site.atmosphere"} <= parameters, proof.name
        assert proof.result in results, proof.name
        assert proof.source in sources, proof.name
        assert proof.seen in READ, proof.name
        assert proof.basis in BASES, proof.name
        assert proof.value, proof.name


@every_method
def test_a_proof_says_how_its_source_was_read_as_the_source_does(method: Method) -> None:
    remembered = {"unit-gal-imp", "ampere-12-105-engine"}
    for proof in method.proofs:
        if proof.name not in remembered:
            assert proof.seen == PUBLISHED[proof.source].seen or proof.source == (
                "gerr-boat-systems"
            ), proof.name


@every_method
def test_the_names_of_proofs_are_their_own(method: Method) -> None:
    names = [proof.name for other in METHODS.values() for proof in other.proofs]

    assert [proof.name for proof in method.proofs if names.count(proof.name) > 1] == []


@every_method
def test_a_method_refuses_something_and_a_proof_shows_it(method: Method) -> None:
    assert any(proof.expect is Expect.REFUSE for proof in method.proofs)


@every_method
def test_a_wrong_answer_says_which_mistake_gives_it(method: Method) -> None:
    for proof in method.proofs:
        for value, mistake in proof.must_not_give:
            assert read_quantity(value, Where("")).shown == value
            assert mistake


def test_every_publication_is_used_by_a_method() -> None:
    used = {source.name for method in METHODS.values() for source in method.sources}

    assert set(PUBLISHED) - used == set()


def test_every_publication_says_edition_clause_and_how_it_was_read() -> None:
    for publication in PUBLISHED.values():
        assert publication.title
        assert publication.edition
        assert publication.clause
        assert publication.seen in READ


def test_no_method_says_that_a_rule_is_met() -> None:
    never = "com" + "pliant"
    said = [path for path in METHODS_FOLDER.rglob("*.py") if never in path.read_text("utf-8")]

    assert said == []


def test_reading_the_methods_does_not_load_the_units_library() -> None:
    program = "import sys, garboard.methods; print('pint' in sys.modules)"

    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )

    assert done.stdout.strip() == "False"
