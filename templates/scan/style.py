"""The look of the pages, and the few lines of script without which they work as well."""

from pathlib import Path

_HERE = Path(__file__).parent
STYLE = _HERE.joinpath("style.css").read_text(encoding="utf-8")
SCRIPT = _HERE.joinpath("scan.js").read_text(encoding="utf-8")
"""Shows of a list of parts, while one types, only those whose ID has what is typed; makes a photo
small before it is sent."""
