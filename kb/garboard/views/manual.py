"""The manual inside the handbook: what each rule says, what each method does and where it is proven."""

from collections.abc import Iterable, Iterator, Mapping
from types import ModuleType

from garboard.book import Book
from garboard.calc.method import FormulaMethod, Method
from garboard.errors import Diagnostic
from garboard.methods.proof import ProofResult
from garboard.views.draft import Draft
from garboard.views.inline import cell
from garboard.views.page import Bullets, Cell, Column, Facts, Heading, Link, Paragraph, Row, Table

__all__ = ["method_drafts", "rule_drafts", "standing_draft"]

HONEST_LIMITS = (
    "A clean build means: no contradiction was found in what was entered. What was not entered was not"
    " checked. It is no approval: {} decide."
)


def rule_drafts(book: Book, rules: Iterable[ModuleType]) -> Iterator[Draft]:
    """A page for each rule, made from its docstring, and a list of them."""
    index = Draft(book, "manual/rules", "Rules that are checked", "manual")
    rows = []
    for rule in rules:
        draft = Draft(book, f"manual/rules/{rule.CODE}", rule.CODE, "rule")
        paragraphs = [
            part.replace("\n", " ") for part in (rule.__doc__ or "").strip().split("\n\n")
        ]
        draft.add(*(Paragraph((part,)) for part in paragraphs))
        waivable = "yes, while it stands" if rule.WAIVABLE else "no"
        facts: list[tuple[str, Cell]] = [
            ("severity", (str(rule.SEVERITY),)),
            ("binds from", (rule.BINDS_FROM,)),
            ("a concession may waive it", (waivable,)),
        ]
        draft.add(Facts(tuple(facts)))
        rows.append(
            Row(
                (
                    (Link(draft.key, rule.CODE),),
                    (str(rule.SEVERITY),),
                    (rule.BINDS_FROM,),
                    (paragraphs[0],),
                ),
                rule.CODE,
            )
        )
        yield draft
    columns = tuple(Column(title) for title in ("code", "severity", "binds from", "fires when"))
    index.add(
        Paragraph((HONEST_LIMITS.format(_deciders(book)),)), Table("Rules", columns, tuple(rows))
    )
    yield index


def _deciders(book: Book) -> str:
    names = book.content.vessel.defers_to or (
        "flag",
        "class",
        "surveyor",
        "local codes",
        "licensed trades",
    )
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]


def standing_draft(book: Book, found: Iterable[Diagnostic]) -> Draft:
    """Everything that stands against the record, gravest first."""
    draft = Draft(book, "manual/standing", "What stands against the record", "report")
    draft.add(Paragraph((HONEST_LIMITS.format(_deciders(book)),)))
    rows = tuple(
        Row(
            (
                (str(item.severity),),
                cell(book, item.about),
                cell(book, item.text),
                cell(book, item.help),
                (str(item.where),),
                (Link(f"manual/rules/{item.code}", item.code),),
            )
        )
        for item in sorted(found, key=lambda one: (one.severity.rank, one.where))
    )
    columns = tuple(
        Column(title) for title in ("severity", "about", "what is", "help", "place", "rule")
    )
    draft.add(Table("Gravest first", columns, rows, "nothing"))
    return draft


def method_drafts(
    book: Book, methods: Mapping[str, Method], proofs: Iterable[ProofResult]
) -> Iterator[Draft]:
    """A page for each bundled method: formula, limits, sources, and its proof table."""
    results = list(proofs)
    index = Draft(book, "methods/index", "Bundled methods", "manual")
    rows = []
    for name, method in methods.items():
        yield _method(book, method, [one for one in results if one.method.name == name])
        rows.append(
            Row(((Link(f"methods/{name}", name),), (method.purpose,), (str(method.grade),)), name)
        )
    index.add(
        Paragraph(
            (
                "Each is run against published figures at every build. Outside its limits it refuses.",
            )
        ),
        Table(
            "Methods", tuple(Column(title) for title in ("name", "purpose", "grade")), tuple(rows)
        ),
    )
    yield index


def _method(book: Book, method: Method, proofs: list[ProofResult]) -> Draft:
    draft = Draft(book, f"methods/{method.name}", method.title, "method")
    draft.ident = method.name
    draft.calculated = True
    draft.add(Paragraph((method.purpose,)), Paragraph((f"Caution: {method.caution}",)))
    if isinstance(method, FormulaMethod):
        draft.add(
            Heading("Formula"), Bullets(tuple((line,) for line in method.body.strip().splitlines()))
        )
    parameters = tuple(
        Row(
            (
                (one.name,),
                (one.meaning,),
                (one.unit or ", ".join(one.words) or "number",),
                (one.default or "",),
            )
        )
        for one in method.parameters
    )
    titles = ("name", "meaning", "unit or words", "if left out")
    draft.add(Table("What it is given", tuple(Column(title) for title in titles), parameters))
    results = tuple(
        Row(((one.name,), (one.meaning,), (one.unit or "number",))) for one in method.results
    )
    draft.add(
        Table(
            "What it gives", tuple(Column(title) for title in ("name", "meaning", "unit")), results
        )
    )
    limits = tuple((f"{one.holds}: {one.reason}",) for one in method.limits)
    draft.add(Heading("Where it holds"), Bullets((*limits, *((words,) for words in method.valid))))
    draft.add(
        Heading("What it must not be used for"), Bullets(tuple((words,) for words in method.do_not))
    )
    sources = tuple(
        Row(((one.name,), (one.title,), (one.edition,), (one.clause,), (one.seen,)), one.name)
        for one in method.sources
    )
    columns = tuple(Column(title) for title in ("source", "title", "edition", "clause", "read"))
    draft.add(_proof_table(proofs), Table("Sources", columns, sources))
    draft.add(Paragraph((f"Who decides: {method.deferral}",)))
    return draft


def _proof_table(proofs: list[ProofResult]) -> Table:
    rows = tuple(
        Row(
            (
                (one.proof.name,),
                (one.published,),
                (one.ours,),
                (f"{one.difference:.2g} %" if one.difference is not None else "none",),
                (f"{one.outcome}; {one.why}" if one.why else str(one.outcome),),
                (f"{one.proof.source}, {one.proof.seen}, {one.proof.basis}",),
            )
        )
        for one in proofs
    )
    titles = ("case", "published", "ours", "difference", "stands", "from")
    return Table("Proof, run at this build", tuple(Column(title) for title in titles), rows)
