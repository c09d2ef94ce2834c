"""The MkDocs plugin: reads the content folder through the core and hands MkDocs finished pages.

A hook translates and leaves. A working copy always builds: what stands against it is logged, and
only a STOP is logged as a warning, which is what `mkdocs build --strict` fails on.
"""

import logging
from pathlib import Path
from typing import Literal

from jinja2 import Environment
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.livereload import LiveReloadServer
from mkdocs.plugins import BasePlugin, event_priority, get_plugin_logger
from mkdocs.structure.files import Files
from mkdocs.structure.pages import Page as MkDocsPage
from mkdocs.utils.templates import TemplateContext

from garboard.errors import GarboardError, Severity
from garboard.handbook import Handbook, read
from mkdocs_garboard.index_check import in_vain
from mkdocs_garboard.manual import STYLE, Manual
from mkdocs_garboard.outputs import write_outputs
from mkdocs_garboard.pages import clashes, nav_of, published
from mkdocs_garboard.photos import Photos
from mkdocs_garboard.serving import watch_content
from mkdocs_garboard.site_check import SiteCheck
from mkdocs_garboard.which_copy import which

__all__ = ["GarboardPlugin"]

log = get_plugin_logger("garboard")
DATED = {"sitemap.xml"}
"""What the generator brings along that carries the day of the build and the address of a host."""
LEVEL = {
    Severity.STOP: logging.WARNING,
    Severity.HOLD: logging.INFO,
    Severity.WARN: logging.INFO,
    Severity.NOTE: logging.INFO,
}


class GarboardConfig(Config):
    """The plugin has no options."""


class GarboardPlugin(BasePlugin[GarboardConfig]):
    """Builds the handbook of one content folder."""

    manual: Manual
    photos: Photos
    given: Handbook | None = None
    """What is published as an edition; else the content folder is read."""
    faults: tuple[str, ...] = ()
    """What is wrong with the finished site."""
    serving = False
    own_face = False

    def on_startup(self, *, command: Literal["build", "gh-deploy", "serve"], dirty: bool) -> None:
        """Refuse half a build; staying in memory between builds is asked for by being here."""
        if dirty:
            raise PluginError("garboard builds whole sites: leave out --dirty")
        self.serving = command == "serve"

    def on_config(self, config: MkDocsConfig) -> MkDocsConfig:
        """Addresses end in .html, so that a page opens from a folder; no page carries a date."""
        config.use_directory_urls = False
        self.own_face = config.theme.name == "garboard"
        if self.own_face:
            config.theme.static_templates -= DATED
        else:
            config.extra_css = [*config.extra_css, STYLE]
        if getattr(self, "folder", None) != config.docs_dir:
            self.folder, self.photos = config.docs_dir, Photos(Path(config.docs_dir))
        return config

    @event_priority(100)
    def on_files(self, files: Files, *, config: MkDocsConfig) -> Files:
        """Read the handbook, say what stands against it, and put its pages in place of its files."""
        try:
            handbook = self.given or read(Path(config.docs_dir))
        except GarboardError as error:
            raise PluginError(str(error)) from error
        for item in handbook.diagnostics:
            log.log(LEVEL[item.severity], "%s", item)
        self.photos.forget()
        self.manual = Manual(handbook, self.photos, own_face=self.own_face, serving=self.serving)
        kept = [
            file for file in files if file.src_dir != config.docs_dir and file.src_uri not in DATED
        ]
        made = [published(config, uri, text) for uri, text in self.manual.files().items()]
        for first, second in clashes(file.dest_uri for file in [*kept, *made]):
            log.warning("%s and %s are one file on a memory stick", first, second)
        config.nav = nav_of(handbook, self.manual.more)
        return Files([*kept, *made])

    def on_page_markdown(self, markdown: str, *, page: MkDocsPage, **_: object) -> str:
        """A page knows its title and nothing else that a theme could be steered by."""
        if view := self.manual.pages.get(page.file.src_uri):
            page.meta = {"title": view.title}
        return markdown

    def on_page_content(self, html: str, *, page: MkDocsPage, **_: object) -> str:
        """The body of a page, drawn."""
        if view := self.manual.pages.get(page.file.src_uri):
            return self.manual.draw(view)
        return html

    def on_env(self, env: Environment, *, config: MkDocsConfig, files: Files) -> Environment:
        """Publish the photos that pages have asked for, and say what pages lost."""
        for uri, content in self.photos.published().items():
            files.append(published(config, uri, content))
        for fault in self.manual.faults:
            log.log(logging.WARNING if fault.code == "broken-link" else logging.INFO, "%s", fault)
        return env

    def on_page_context(
        self, context: TemplateContext, *, page: MkDocsPage, **_rest: object
    ) -> TemplateContext:
        """What our own theme puts around the page."""
        if self.own_face and (view := self.manual.pages.get(page.file.src_uri)):
            context["around"] = self.manual.around(view)  # type: ignore[typeddict-unknown-key]
        return context

    def on_template_context(self, context: TemplateContext, **_rest: object) -> TemplateContext:
        """A page that is no page of the handbook says as well which copy it belongs to."""
        context["copy"] = self.manual.copy  # type: ignore[typeddict-unknown-key]
        context["which"] = which(self.manual.copy)  # type: ignore[typeddict-unknown-key]
        return context

    def on_serve(
        self, server: LiveReloadServer, /, *, config: MkDocsConfig, **_: object
    ) -> LiveReloadServer:
        """A build keeps what it has worked out in the content folder; that is no edit."""
        watch_content(server, config.docs_dir)
        return server

    def on_post_build(self, *, config: MkDocsConfig) -> None:
        """Make what stands beside the pages, then look at what a reader will open."""
        site = Path(config.site_dir)
        if self.own_face and not self.serving:
            write_outputs(self.manual, site)
        check = SiteCheck(site, own_face=self.own_face)
        wrong = check.faults(self.manual.pages.values(), self.manual.entries)
        self.given = None  # the generator keeps this object for its next build
        self.faults = (*wrong, *in_vain(site, self.manual.looked_up))
        for fault in self.faults:
            log.warning("%s", fault)
