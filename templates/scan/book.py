"""The same pages as one file that needs no network: for a telephone away from the workshop.

A link to a part shows that part alone, the home page where none is asked for. What all pictures of
a wall have in common stands in the file once.
"""

from templates.scan.frame import SCRIPT, STYLE, document
from templates.scan.homepage import UNNAMED, home_body
from templates.scan.host import Host
from templates.scan.markup import Html, join, tag
from templates.scan.partpage import part_body
from templates.scan.scan import Scan

PAGES = """
main > article { display: none; }
main > article:target { display: block; }
main > article:target ~ .start { display: none; }
.shared { position: absolute; width: 0; height: 0; }
@media print { main > article { display: block; break-before: page; } }
"""
"""Which page is seen: of all only the one that the address names."""
HOME = "#"


def book(scan: Scan) -> str:
    """Make all pages of a job as one HTML document; the same job gives the same text."""
    host = Host(href=_anchor, home=HOME, book=True)
    standings = scan.standings({})
    pages = [
        tag(
            "article",
            tag("p", tag("a", "All walls", href=HOME, class_="home")),
            tag("div", part_body(scan, part.id, standings[part.id], host), class_="page"),
            id=_anchor(part.id)[1:],
        )
        for part in scan.tracked
    ]
    search = tag("label", "Find a part", tag("input", type="search", name="q", autocomplete="off"))
    start = tag("div", home_body(scan, standings, host), class_="page")
    home = tag("div", tag("div", search, role="search"), start, class_="start")
    walls = tag("svg", *(wall.whole() for wall in scan.walls), class_="shared", aria_hidden="true")
    return document(
        scan.layout.job.name or UNNAMED,
        join((tag("style", Html(STYLE + PAGES)), tag("link", rel="icon", href="data:,"))),
        join((walls, tag("main", *pages, home), tag("script", Html(SCRIPT)))),
    )


def _anchor(part: str) -> str:
    return f"#{part}"
