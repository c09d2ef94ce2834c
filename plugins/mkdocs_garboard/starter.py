"""What a handbook of one's own needs beside its content: the settings of the site."""

__all__ = ["starter_files"]

MKDOCS_YML = """\
site_name: Our Vessel
docs_dir: content
theme:
  name: garboard
plugins: [garboard]
use_directory_urls: false
"""


def starter_files() -> dict[str, str]:
    """Path to text of each file."""
    return {"mkdocs.yml": MKDOCS_YML, ".gitignore": "site/\n"}
