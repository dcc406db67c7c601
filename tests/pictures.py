"""The README's pictures, drawn anew from the demo: `python -m tests.pictures`."""

from pathlib import Path

import pypdfium2

from jigs.layout import lay_out
from jigs.reading import read_job
from jigs.storystick import find_sticks
from templates.calibration import calibration_page
from templates.elevation import draw_elevations
from templates.labels import label_pages
from templates.marks import Page
from templates.paper import PAPERS
from templates.pdf import write_pdf
from templates.sheets import make_sheets
from templates.stocks import STOCKS
from templates.storystick import stick_pages

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "templates" / "pictures"
DOTS_PER_INCH = 72
SHEETS = {"door-back": ("B3-2L", 0), "drawer-front": ("B1-1", 1), "box-side": ("B1-SIDE-L", 0)}
"""Picture, part, and which of the part's sheets."""


def draw_pictures() -> dict[str, Page]:
    """Give the pages that are shown, by the names of their pictures."""
    layout = lay_out(read_job(ROOT / "templates" / "demo" / "job.toml"))
    pages = {
        name: list(make_sheets(layout, PAPERS["common"], only=[part]).pages)[1 + sheet]
        for name, (part, sheet) in SHEETS.items()
    }
    pages["elevation"] = next(draw_elevations(layout, PAPERS["common"])).page
    pages["calibrate"] = calibration_page(PAPERS["common"])
    drawers = [stick for stick in find_sticks(layout) if "B2-SIDE-L" in stick.boards]
    pages["stick"] = next(stick_pages(drawers, layout.job.name, PAPERS["common"]))
    pages["labels"] = label_pages(layout, STOCKS["letter-2x5"])[0]
    return pages


def main() -> None:
    """Write each page as a small grey picture."""
    FOLDER.mkdir(exist_ok=True)
    for name, page in draw_pictures().items():
        (sheet,) = pypdfium2.PdfDocument(write_pdf([page], title=name))
        picture = sheet.render(scale=DOTS_PER_INCH / 72, grayscale=True).to_pil()
        picture.quantize(16).save(FOLDER / f"{name}.png", optimize=True)


if __name__ == "__main__":
    main()
