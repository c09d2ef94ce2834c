"""The page of a method: what it does and must not do, its formula, its sources, and its proof."""

from collections.abc import Iterable, Iterator, Mapping

from garboard.book import Book
from garboard.calc.method import Expect, FormulaMethod, Grade, Method, Parameter, Published
from garboard.methods.proof import Outcome, ProofResult
from garboard.views.draft import Draft
from garboard.views.page import (
    Block,
    Bullets,
    Cell,
    Column,
    Facts,
    Heading,
    Link,
    Paragraph,
    Row,
    Strong,
    Table,
)

__all__ = ["method_drafts"]

GRADES = {
    Grade.A: "A: official or by definition",
    Grade.B: "B: a printed result is reproduced, and something else agrees",
    Grade.C: "C: consistent with itself only; no printed result was found",
}
READ = {
    "original": "read in the original",
    "secondary": "read in a secondary source: verify before citing",
    "remembered": "remembered: verify before citing",
    "constructed": "constructed for this test",
}
EXPECTED = {Expect.ALARM: ", and its warning", Expect.REFUSE: " (a refusal)", Expect.VALUE: ""}


def method_drafts(
    book: Book, methods: Mapping[str, Method], proofs: Iterable[ProofResult]
) -> Iterator[Draft]:
    """A page for each bundled method, and a list of them.

    Args:
        book: The book.
        methods: By name.
        proofs: How their published cases came out.
    """
    results = list(proofs)
    index = Draft(book, "methods/index", "Bundled methods", "manual")
    rows = []
    for name, method in methods.items():
        own = [one for one in results if one.method.name == name]
        yield _page(book, method, own)
        link: Cell = (Link(f"methods/{name}", name),)
        proof = f"{sum(one.outcome is Outcome.REPRODUCED for one in own)} of {len(own)}"
        rows.append(Row((link, (method.purpose,), (str(method.grade),), (proof,)), name))
    titles = ("name", "purpose", "grade", "cases reproduced")
    index.add(
        Paragraph(
            (
                "Each is run against published figures at every build. Outside its limits it refuses.",
            )
        ),
        Table("Methods", tuple(Column(title) for title in titles), tuple(rows)),
        Bullets(tuple((words,) for words in GRADES.values())),
    )
    yield index


def _page(book: Book, method: Method, proofs: list[ProofResult]) -> Draft:
    draft = Draft(book, f"methods/{method.name}", method.title, "method")
    draft.ident = method.name
    draft.calculated = True
    draft.add(Paragraph((method.purpose,)), Paragraph((Strong("Caution: "), method.caution)))
    draft.add(
        Heading("What it must not be used for"), _listed(f"Do not {one}" for one in method.do_not)
    )
    limits = tuple(f"{one.holds}: {one.reason}" for one in method.limits)
    draft.add(Heading("Where it holds; past this it refuses"), _listed((*limits, *method.valid)))
    draft.add(*_formula(method), *_given_and_got(method), _proof_table(method, proofs))
    draft.add(*_contradictions(method), *_cases(proofs), _sources(method.sources))
    who: Cell = (method.deferral,)
    draft.add(Facts((("grade", (GRADES[method.grade],)), ("who decides", who))))
    return draft


def _contradictions(method: Method) -> Iterator[Block]:
    """What its publications print differently, side by side; the handbook never picks quietly."""
    if not method.contradictions:
        return
    yield Heading("Where publications contradict each other")
    for one in method.contradictions:
        rows = tuple(Row(((Strong(each.says),), (each.where,))) for each in one.printed)
        yield Table(one.topic, (Column("printed"), Column("where")), rows)
        yield Paragraph((f"Effect: {one.effect}. This handbook {one.handbook}.",))


def _listed(lines: Iterable[str]) -> Block:
    found = tuple((line,) for line in lines)
    return Bullets(found) if found else Paragraph(("Nothing is said.",))


def _formula(method: Method) -> Iterator[Block]:
    yield Heading("Formula")
    if not isinstance(method, FormulaMethod):
        yield Paragraph(
            ("None: it reads a table or a rule, and shows the rows it read beside each result.",)
        )
        return
    lines = [line.partition("#") for line in method.body.strip().splitlines()]
    rows = tuple(Row(((line.strip(),), (meaning.strip(),))) for line, _, meaning in lines)
    yield Table("Worked line by line", (Column("line"), Column("what it is")), rows)
    if method.alarms:
        yield Heading("What it warns of")
        yield _listed(f"{one.when}: {one.text}" for one in method.alarms)


def _given_and_got(method: Method) -> Iterator[Table]:
    parameters = tuple(
        Row(((one.name,), (one.meaning,), (_measure(one),), (_left_out(one),)))
        for one in method.parameters
    )
    titles = ("name", "meaning", "unit or words", "if left out")
    yield Table("What it is given", tuple(Column(title) for title in titles), parameters)
    results = tuple(
        Row(((one.name,), (one.meaning,), (one.unit or "number",))) for one in method.results
    )
    columns = tuple(Column(title) for title in ("name", "meaning", "unit"))
    yield Table("What it gives", columns, results)


def _measure(parameter: Parameter) -> str:
    said = parameter.unit or ", ".join(parameter.words) or "number"
    return f"list of {said}" if parameter.listed else said


def _left_out(parameter: Parameter) -> str:
    if parameter.default is not None:
        return f"{parameter.default} is taken"
    return parameter.missing or "what needs it is left out"


def _proof_table(method: Method, proofs: list[ProofResult]) -> Table:
    numbers = {one.name: number for number, one in enumerate(method.sources, 1)}
    rows = tuple(
        Row(
            (
                (one.proof.name,),
                (f"{one.published}{EXPECTED[one.proof.expect]}",),
                (one.ours,),
                (_difference(one),),
                (_allowed(one),),
                _verdict(one),
                (f"source {numbers.get(one.proof.source, one.proof.source)}",),
            )
        )
        for one in proofs
    )
    titles = ("case", "published", "ours", "difference", "allowed", "verdict", "from")
    return Table("Proof, run at this build", tuple(Column(title) for title in titles), rows)


def _difference(result: ProofResult) -> str:
    if result.difference is None:
        return "no numbers"
    return f"{result.difference:+.2g} %" if abs(result.difference) > 1e-7 else "0 %"


def _allowed(result: ProofResult) -> str:
    proof = result.proof
    said = [f"{100 * proof.relative:g} %"] if proof.relative else []
    said += [proof.absolute] if proof.absolute else []
    if said:
        return " or ".join(said)
    return "to the digit" if result.difference is not None else "to the letter"


def _verdict(result: ProofResult) -> Cell:
    said = str(result.outcome)
    return (said,) if not result.why else (Strong(said), f": {result.why}")


def _cases(proofs: list[ProofResult]) -> Iterator[Block]:
    """What each case is asked, what it must not give, and what else agrees."""
    if proofs:
        yield Heading("The cases in full")
        yield Bullets(tuple((_case(one),) for one in proofs))


def _case(result: ProofResult) -> str:
    proof = result.proof
    asked = ", ".join(f"{name} = {text}" for name, text in proof.call.items())
    said = [f"{proof.name}: {proof.result} for {asked}"]
    said += [f"{proof.basis}, {READ.get(proof.seen, proof.seen)}"]
    said += [f"must not give {text} ({mistake})" for text, mistake in proof.must_not_give]
    said += [f"independently {proof.independent}"] if proof.independent else []
    said += [proof.note] if proof.note else []
    return "; ".join(said)


def _sources(sources: tuple[Published, ...]) -> Table:
    rows = tuple(
        Row(
            (
                (f"{number}: {one.name}",),
                (one.title,),
                (one.edition,),
                (one.clause,),
                (READ.get(one.seen, one.seen),),
            ),
            one.name,
        )
        for number, one in enumerate(sources, 1)
    )
    columns = tuple(Column(title) for title in ("source", "title", "edition", "clause", "how read"))
    return Table("Sources", columns, rows)
