"""Three hundred records are read well under two seconds."""

import time
from collections.abc import Callable, Mapping
from pathlib import Path

from garboard.reading.folder import read_folder

EXAMPLES = Path(__file__).parent / "examples"


def test_three_hundred_records_are_read_well_under_two_seconds(
    write_content: Callable[[Mapping[str, str | bytes]], Path],
) -> None:
    texts = [(path.stem, path.read_text("utf-8")) for path in sorted(EXAMPLES.glob("*.md"))]
    files = {
        f"log/2031/{number:03}.md": text.replace(f"id: {ident}", f"id: {ident[:6]}{number:03}")
        for number in range(306)
        for ident, text in [texts[number % len(texts)]]
    }
    system = (EXAMPLES / "system.yml").read_text("utf-8")
    folder = write_content(files | {"systems/starting-air/system.yml": system})
    read_folder(folder)  # the first time loads the units

    start = time.process_time()
    content = read_folder(folder)
    seconds = time.process_time() - start

    assert len(content.records) == 306
    assert content.diagnostics == ()
    assert seconds < 1.5
