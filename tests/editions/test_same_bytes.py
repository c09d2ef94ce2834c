"""Two people who issue and publish the same texts get the same bytes, wherever and whenever they do."""

import subprocess
import sys
from pathlib import Path

import pytest

from tests.demo_site import THIS_TREE
from tests.editions.small_handbook import write

PROGRAM = """\
import sys
from pathlib import Path
from garboard.cli import main
from garboard.editions.publish import publish
from mkdocs_garboard.publisher import draw_edition
content, site = Path(sys.argv[1]), Path(sys.argv[2])
if main(["edition", "issue", "--by", "lead", str(content)]):
    sys.exit("not issued")
publish(content, 1, site, draw_edition)
"""
HERE = {"TZ": "Pacific/Kiritimati", "PYTHONHASHSEED": "1", "LC_ALL": "C", "COLUMNS": "40"}
THERE = {"TZ": "Pacific/Pago_Pago", "PYTHONHASHSEED": "4021", "LC_ALL": "tr_TR.UTF-8", "LANG": "nb_NO.UTF-8"}  # fmt: skip
"""A day apart, and everything that one machine has otherwise than another."""


def issued_and_published(
    place: Path, environment: dict[str, str]
) -> tuple[bytes, dict[str, bytes]]:
    """The file of the edition, and every file of its site, made in a process of its own."""
    content = write(place / "content")
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM, str(content), str(place / "sea")],
        capture_output=True,
        text=True,
        check=False,
        cwd=place,
        env={"PATH": "/usr/bin:/bin", "HOME": str(place), "PYTHONPATH": THIS_TREE} | environment,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr
    site = place / "sea"
    files = {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file()
    }
    return (content / "editions/1.json").read_bytes(), files


@pytest.mark.site
def test_an_edition_and_its_site_are_equal_byte_for_byte(tmp_path: Path) -> None:
    (tmp_path / "here").mkdir()
    (tmp_path / "over there" / "deeper").mkdir(parents=True)

    edition, site = issued_and_published(tmp_path / "here", HERE)
    again, other = issued_and_published(tmp_path / "over there" / "deeper", THERE)

    assert edition == again
    assert site.keys() == other.keys()
    assert [name for name in site if site[name] != other[name]] == []
    assert "manifest.txt" in site
