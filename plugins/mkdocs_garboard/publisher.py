"""Draw the site of an issued edition: the same build as of any handbook, of what the core hands over."""

import logging
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import cast

from mkdocs.commands.build import build
from mkdocs.config import load_config
from mkdocs.exceptions import MkDocsException

from garboard.errors import GarboardError
from garboard.handbook import Handbook
from mkdocs_garboard.plugin import GarboardPlugin
from mkdocs_garboard.site_check import off_site

__all__ = ["draw_edition"]

PLUGIN = "garboard"


def draw_edition(
    handbook: Handbook, content: Path, site: Path, settings: Path | None
) -> tuple[str, ...]:
    """Build a site.

    Args:
        handbook: What is drawn.
        content: The folder it was read from, with its photographs.
        site: Where it goes; what is there is cleared away.
        settings: The site's `mkdocs.yml`; left out, our own looks under the vessel's name.

    Returns:
        What is wrong with the finished site, and what in it is loaded from elsewhere.

    Raises:
        GarboardError: The settings do not say that this plugin draws it, or the build fails.
    """
    fixed = {"docs_dir": str(content.resolve()), "site_dir": str(site.resolve())}
    with _quiet():
        try:
            if settings is None:
                own = content.parent / "mkdocs.yml"
                own.touch()
                config = load_config(
                    config_file=str(own),
                    site_name=f"{handbook.vessel} handbook",
                    theme={"name": PLUGIN},
                    plugins=[PLUGIN],
                    **fixed,
                )
            else:
                config = load_config(config_file=str(settings), **fixed)
            if PLUGIN not in config.plugins:
                raise GarboardError(f"{settings} does not list garboard under plugins")
            plugin = cast(GarboardPlugin, config.plugins[PLUGIN])
            plugin.given = handbook
            config.plugins.on_startup(command="build", dirty=False)
            build(config)
        except MkDocsException as stop:
            raise GarboardError(f"the site cannot be built: {stop}") from stop
    return (*plugin.faults, *(one for one in off_site(site) if one not in plugin.faults))


@contextmanager
def _quiet() -> Iterator[None]:
    """What stands against the edition was told when it was issued; here only what stops it counts."""
    logger = logging.getLogger("mkdocs")
    level = logger.level
    logger.setLevel(logging.ERROR)
    try:
        yield
    finally:
        logger.setLevel(level)
