"""What is made of a finished site beside its pages: files that each stand on their own."""

from collections.abc import Callable
from pathlib import Path

from mkdocs_garboard.binder import write_binders
from mkdocs_garboard.manual import Manual
from mkdocs_garboard.single_file import write_single_file

__all__ = ["OUTPUTS", "Output", "write_outputs"]

Output = Callable[[Manual, Path], None]
"""Takes the handbook on its way and the folder of the finished site, and writes into that folder."""

OUTPUTS: tuple[Output, ...] = (write_single_file, write_binders)


def write_outputs(manual: Manual, site: Path) -> None:
    """Write every output.

    Args:
        manual: The handbook as it was drawn.
        site: The finished site.
    """
    for write in OUTPUTS:
        write(manual, site)
