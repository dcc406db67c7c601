"""`jigsheet book`: the scan pages of all parts as one file."""

from cli.jobs import Asked
from cli.manners import command
from cli.options import output_option, with_job
from cli.output import write_text
from cli.terminal import mention


@command(
    ("All pages in a file, to be put on a phone", "book kitchen.toml -o kitchen.html"),
)
@with_job
@output_option("book.html")
def book(asked: Asked, output: str) -> None:
    """Write the pages of all parts into one file for a phone.

    It is HTML and needs no network. Each part: where it goes, which way up, its steps, its holes
    with their distances.
    """
    from templates.scan.book import book as make_book
    from templates.scan.scan import Scan
    from templates.words.textlines import counted

    layout = asked.lay_out(output)
    scan = Scan(layout)
    text = make_book(scan)
    write_text(output, text, sources=layout.job.sources)
    if output != "-":
        size = len(text.encode()) / 1e6
        mention(
            f"{output}: {counted(len(scan.tracked), 'part')}, {size:.1f} MB. It needs no network."
        )
    asked.end(layout)
