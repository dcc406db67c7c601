"""Sheets of a few boxes, printed and read back once for all tests that look at them."""

import tempfile
from functools import cache
from pathlib import Path

from jigs.box.parts import Layout
from jigs.layout.layout import lay_out
from jigs.reading.jobfile import read_job_file
from templates.binding.jobsheets import make_sheets
from templates.page.paper import PAPERS
from templates.writers.pdf import write_pdf
from tests.jobtexts import HEAD
from tests.readback import PrintedPage, read_pages


@cache
def laid_out(boxes: str) -> Layout:
    """Lay some boxes out; a value that nobody changes, so kept."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "job.toml"
        path.write_text(HEAD + boxes, encoding="utf-8")
        return lay_out(read_job_file(path))


@cache
def printed(boxes: str) -> tuple[Layout, tuple[PrintedPage, ...]]:
    """Print the sheets of some boxes, and read them; kept too."""
    layout = laid_out(boxes)
    return layout, read_pages(write_pdf(make_sheets(layout, PAPERS["common"]).pages))
