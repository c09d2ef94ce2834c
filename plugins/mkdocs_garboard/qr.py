"""A text as a QR code (ISO/IEC 18004): drawn in the page, so that it needs no file and no network.

Error level M: 15 per cent of it may be dirty or torn. The quiet zone of four modules is part of the
drawing, and it is light on every screen, because a reader looks for dark on light.
"""

from functools import cache

import segno
from markupsafe import Markup

__all__ = ["code_of"]

LEVEL = "m"
QUIET = 4
"""Modules of white around it, as the standard asks for."""


@cache
def code_of(text: str) -> Markup:
    """The SVG of a QR code, with what it says as its text alternative."""
    code = segno.make(text, error=LEVEL, micro=False, boost_error=False)
    across = code.symbol_size(border=QUIET)[0]
    rows = "".join(_row(y, row) for y, row in enumerate(code.matrix, QUIET))
    return Markup(
        '<svg class="qr" viewBox="0 0 {0} {0}" role="img" aria-label="QR code: {1}" data-modules="{0}"'
        ' shape-rendering="crispEdges"><rect width="{0}" height="{0}"/><path d="{2}"/></svg>'
    ).format(across, text, rows)


def _row(y: int, row: bytearray | tuple[int, ...]) -> str:
    """The dark runs of one row of modules, as strokes one module thick along its middle."""
    drawn, done, start = "", 0, None
    for x, dark in enumerate((*row, 0), QUIET):
        if dark and start is None:
            start = x
        elif not dark and start is not None:
            drawn += f"m{start - done} 0" if drawn else f"M{start} {y}.5"
            drawn += f"h{x - start}"
            done, start = x, None
    return drawn
