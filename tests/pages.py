"""The pages a user reads: README.md, and those that it links, beside what they describe."""

import re
from pathlib import Path

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
COMMANDS_PAGE = ROOT / "cli" / "COMMANDS.md"
PAGES = (README, COMMANDS_PAGE, ROOT / "jigs" / "JOBFILE.md")
LINK = re.compile(r"(!?)\[[^\]]+\]\(([^)\s]+)\)")


def links(page: Path) -> list[tuple[bool, str]]:
    """Give each link of a page: whether it is a picture, and where it leads."""
    return [(bool(mark), to) for mark, to in LINK.findall(page.read_text(encoding="utf-8"))]


def pictures(page: Path) -> list[Path]:
    """Give the picture files that a page shows."""
    return [(page.parent / to).resolve() for shown, to in links(page) if shown]


def anchors(page: Path) -> set[str]:
    """Give the names by which a page's headings are linked: lower case, spaces as hyphens, other
    signs left out, as the usual writers of Markdown make them."""
    heads = re.findall(r"^#+ (.*)$", _without_blocks(page), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", head.lower()).replace(" ", "-") for head in heads}


def _without_blocks(page: Path) -> str:
    return re.sub(r"(?ms)^```.*?^```$", "", page.read_text(encoding="utf-8"))
