"""A pack as one page: the same words as the plain text, in the face of the handbook.

No script, nothing from anywhere else, every text escaped; it reads on a telephone, by night and on
paper.
"""

import re
from collections.abc import Iterator
from html import escape as escaped
from itertools import groupby

from garboard.correspondence.pack import Line, Pack, Part, Sort
from garboard.correspondence.size import MORE

__all__ = ["one_page"]

STYLE = """
:root{--paper:#fff;--buff:#f3ecdc;--ink:#15202b;--quiet:#454f59;--rule:#6b747d;
--mark:#a3121c;color-scheme:light dark}
@media screen and (prefers-color-scheme:dark){:root{--paper:#121212;--buff:#121212;--ink:#e8dfd0;
--quiet:#b9b0a2;--rule:#b9b0a2;--mark:#ff9330}}
*{box-sizing:border-box}
body{margin:0 auto;padding:12px;max-width:56rem;background:var(--paper);color:var(--ink);
font:17px/1.45 system-ui,-apple-system,"Segoe UI",Roboto,"Noto Sans","Liberation Sans",Arial,sans-serif;
font-variant-numeric:lining-nums tabular-nums;overflow-wrap:break-word}
header{border:2px solid var(--ink);background:var(--buff);line-height:1.3}
header p{margin:0;max-width:none;padding:3px 12px;border-top:1px solid var(--ink)}
header p:first-child{border-top:0;font-weight:bold;letter-spacing:.03em}
header .left{background:var(--ink);color:var(--paper);font-weight:bold}
h1{margin:0;padding:6px 12px;font-size:1.5rem;line-height:1.15;border-top:2px solid var(--ink);
border-bottom:1px solid var(--ink)}
section{margin:22px 0 0}
h2{font-size:1.2rem;line-height:1.25;margin:0 0 8px;padding-top:6px;border-top:2px solid var(--ink)}
h3{font-size:1.02rem;margin:16px 0 4px}
p,ul{margin:0 0 8px;max-width:66ch}
ul{padding-left:1.2em}
.brief{border:4px solid var(--ink);padding:4px 12px 8px}
.brief h2{border:0;margin:0}
dl{display:grid;grid-template-columns:minmax(7rem,14rem) 1fr;gap:2px 14px;margin:0 0 8px}
dt{color:var(--quiet)}
dd{margin:0}
.brief dl{grid-template-columns:5rem 1fr}
.tag{white-space:nowrap}
.brief dt{color:var(--ink);font-weight:bold}
blockquote{margin:0 0 8px;padding-left:12px;border-left:3px solid var(--rule);max-width:66ch}
.row{border-top:1px solid var(--rule);padding:6px 0;break-inside:avoid}
.row b{display:block}
.cells{display:grid;grid-template-columns:repeat(auto-fill,minmax(11rem,1fr));gap:4px 14px}
.cells>span{display:block}
.cells i{display:block;font-style:normal;color:var(--quiet);font-size:.85em;line-height:1.2}
.out{font-weight:bold;border:2px solid var(--ink);padding:2px 10px}
pre{font:.9rem/1.5 ui-monospace,"Noto Sans Mono","DejaVu Sans Mono",monospace;white-space:pre-wrap;
border:2px solid var(--ink);padding:10px;margin:0}
figure{margin:12px 0}
figcaption{font-weight:bold;margin:0 0 4px}
.pane{overflow-x:auto;border:1px solid var(--rule)}
.pane svg{display:block;color:var(--ink);font-family:inherit}
.pane .paper,.pane .o{fill:var(--paper)}
.pane path.paper{fill:none;stroke:var(--paper)}
.pane .mark{stroke:var(--mark)}
@media (max-width:560px){body{font-size:16px;padding:8px}dl{display:block}dt{margin-top:6px}
.cells{grid-template-columns:1fr 1fr}}
@media print{@page{size:A4;margin:16mm 14mm}body{max-width:none;padding:0;font-size:10.5pt}
h2,h3{break-after:avoid}pre{break-before:page}
.pane{border:0;overflow:visible}.pane svg{width:100%;height:auto;max-height:240mm}}
"""
TAG = re.compile(r"\b[A-Z]{2}-[A-Z]{2}-\d{3}\b")
POLICY = "default-src 'none'; style-src 'unsafe-inline'"


def escape(text: str) -> str:
    """Text as it may stand in a page; an id or tag stays in one line."""
    return TAG.sub(r'<span class="tag">\g<0></span>', escaped(text))


def one_page(pack: Pack) -> str:
    """Write a pack as one page.

    Args:
        pack: Already as short as it must be.
    """
    count = f"{len(pack.parts)} parts and a reply form at the end. You sign nothing by reading."
    head = [
        f"<p>REVIEW PACK, {escape(pack.vessel)}</p>",
        f"<h1>{escape(pack.title)}</h1>",
        *(f"<p>{escape(text)}</p>" for text in (pack.about, pack.made, count)),
        *(f'<p class="left">{escape(text)}</p>' for text in pack.left_out),
    ]
    body = "\n".join(
        row for number, part in enumerate(pack.all_parts) for row in _part(part, number)
    )
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{escaped(pack.title)}</title>\n<style>{STYLE}</style>\n</head>\n<body>\n"
        f"<header>\n{chr(10).join(head)}\n</header>\n<main>\n{body}\n</main>\n</body>\n</html>\n"
    )


def _part(part: Part, number: int) -> Iterator[str]:
    yield f"<section{'' if number else ' class=brief'}>"
    yield f"<h2>{f'{number}. ' if number else ''}{escape(part.title)}</h2>"
    for sort, lines in groupby(part.lines, key=lambda line: line.sort):
        yield from _run(sort, list(lines))
    if part.left_out:
        yield f'<p class="out">{escape(MORE.format(part.left_out))}</p>'
    yield "</section>"


def _run(sort: Sort, lines: list[Line]) -> Iterator[str]:
    """Lines of one sort that follow each other."""
    texts = [escape(line.text) for line in lines]
    match sort:
        case Sort.FORM:
            yield "<pre>" + "\n".join(escaped(line.text) for line in lines) + "</pre>"
        case Sort.POINT:
            yield "<ul>" + "".join(f"<li>{text}</li>" for text in texts) + "</ul>"
        case Sort.FACT:
            rows = (f"<dt>{escape(line.label)}</dt><dd>{escape(line.text)}</dd>" for line in lines)
            yield "<dl>" + "".join(rows) + "</dl>"
        case Sort.FIGURES:
            yield from map(_figures, lines)
        case Sort.VERBATIM:
            yield from (f"<blockquote>{text}</blockquote>" for text in texts)
        case Sort.DRAWING:
            yield from map(_drawing, lines)
        case Sort.HEADING:
            yield from (f"<h3>{text}</h3>" for text in texts)
        case Sort.STRONG:
            yield from (f"<p><strong>{text}</strong></p>" for text in texts)
        case _:
            yield from (f"<p>{text}</p>" for text in texts)


def _drawing(line: Line) -> str:
    caption = f"<figcaption>{escape(line.text)}</figcaption>"
    return f'<figure>{caption}<div class="pane" tabindex="0">{line.drawing}</div></figure>'


def _figures(line: Line) -> str:
    cells = "".join(
        f"<span><i>{escape(label)}</i> {escape(text)}</span>" for label, text in line.cells
    )
    return f'<div class="row"><b>{escape(line.text)}</b><div class="cells">{cells}</div></div>'
