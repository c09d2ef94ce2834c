"""One handbook on its way to MkDocs: which pages there are, and how each of them is drawn."""

from importlib.resources import files

from garboard.handbook import Handbook
from garboard.views.contents import Entry, Section
from garboard.views.page import Copy, Page
from garboard.views.values_data import CSV, JSON, values_csv, values_json
from mkdocs_garboard.furniture import Furniture, Surroundings
from mkdocs_garboard.html import Sheet, templates
from mkdocs_garboard.links import Links
from mkdocs_garboard.pages import CONTENTS, FIND, added, uri_of
from mkdocs_garboard.photos import Photos
from mkdocs_garboard.prose import Fault, ProseWriter
from mkdocs_garboard.scripts import SCRIPTS, script
from mkdocs_garboard.search import INDEX, index_script
from mkdocs_garboard.which_copy import clock, which

__all__ = ["STYLE", "Manual"]

STYLE = "assets/garboard.css"
A_TO_Z = "registers/a-to-z"
LISTS = (
    (A_TO_Z, "From A to Z"),
    ("registers/numbers", "Numbers"),
    ("registers/places", "Places"),
    ("registers/glossary", "Words"),
    ("registers/symptoms", "What the crew notices"),
)
"""What the Find page offers to look through, under which words."""


class Manual:
    """The pages of one build, by the name MkDocs knows them by."""

    def __init__(
        self, handbook: Handbook, photos: Photos, *, own_face: bool, serving: bool
    ) -> None:
        self.faults: list[Fault] = []
        """What pages lost while they were drawn, each said once."""
        self.more = added(handbook, find=own_face, outputs=own_face and not serving)
        """Pages that are not the handbook's own: the contents, the page to find things."""
        self.pages = {uri_of(page): page for page in (*handbook.pages, *self.more)}
        self._handbook = handbook
        self._own_face = own_face
        self._links = Links(handbook, self.more)
        self._prose = ProseWriter(self._links, photos, self._tell)
        self._furniture = Furniture(handbook, self._links, strict=not serving)

    @property
    def handbook(self) -> Handbook:
        """What is drawn."""
        return self._handbook

    @property
    def entries(self) -> tuple[Entry, ...]:
        """Everything that can be found."""
        return self._handbook.entries

    @property
    def looked_up(self) -> tuple[tuple[str, str], ...]:
        """What nobody may look for in vain, each after what sort of name it is."""
        return self._handbook.looked_up

    def files(self) -> dict[str, str]:
        """What MkDocs is given: pages without a word in them, numbers, joined scripts, the Find list.

        A theme that is not ours brings its own search; it gets our style for the sheets, and a few
        lines for what it keeps readers out of by little.
        """
        made = dict.fromkeys(self.pages, "")
        numbers, copy = self._handbook.numbers, self._handbook.copy
        made[JSON] = values_json(numbers, self._handbook.vessel, copy)
        made[CSV] = values_csv(numbers, copy)
        made |= self._handbook.labels
        if self._own_face:
            whole = {uri: script(name) for uri, name in SCRIPTS.items()}
            return {**made, **whole, INDEX: index_script(self.entries)}
        ours = files("mkdocs_garboard")
        style, more = ours / "theme" / STYLE, ours / "templates/other_theme.css"
        return {**made, STYLE: style.read_text("utf-8") + more.read_text("utf-8")}

    def draw(self, page: Page) -> str:
        """The body of a page."""
        if page.key == FIND and page in self.more:
            return self._find(page)
        return str(Sheet(page, self._prose, self._handbook.vessel, self._tell).html())

    def around(self, page: Page) -> Surroundings:
        """What our own theme puts around a page."""
        return self._furniture.around(page)

    @property
    def vessel(self) -> str:
        """Her name."""
        return self._handbook.vessel

    @property
    def contents(self) -> tuple[Section, ...]:
        """The contents, section by section."""
        return tuple(self._handbook.contents)

    @property
    def copy(self) -> Copy:
        """Which copy of the handbook this is."""
        return self._handbook.copy

    def _find(self, page: Page) -> str:
        return (
            templates()
            .get_template("find.html")
            .render(
                vessel=self._handbook.vessel,
                copy=self.copy,
                clock=clock(self.copy),
                which=which(self.copy),
                index=self._links.to(A_TO_Z, page.path),
                lists=[
                    (title, way) for key, title in LISTS if (way := self._links.to(key, page.path))
                ],
                contents=self._links.way(page.path, CONTENTS),
            )
        )

    def _tell(self, fault: Fault) -> None:
        if fault not in self.faults:
            self.faults.append(fault)
