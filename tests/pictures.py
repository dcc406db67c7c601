"""The pictures of the README and its pages, drawn anew from the demo.

`python -m tests.pictures` draws them.
"""

import subprocess
import tempfile
from pathlib import Path

import pypdfium2
from msgspec.structs import replace
from PIL import Image

from cli.jobs import read_in_hand
from jigs.bench.stations import plan_stations
from jigs.bench.storystick import find_sticks
from jigs.box.parts import Layout
from jigs.cutlist.cutlist import cut_list
from jigs.ground.sheetsizes import SheetSize
from jigs.layout.layout import lay_out
from templates.binding.calibration import calibration_page
from templates.binding.jobsheets import make_sheets
from templates.elevations.elevation import draw_elevations
from templates.labels.cuptag import find_tagged, tag_pages
from templates.labels.labellist import list_labels
from templates.labels.stocks import STOCKS
from templates.page.marks import Mark, Page, Text
from templates.page.paper import PAPERS
from templates.page.raster import Raster
from templates.scan.frame import STYLE, document, header
from templates.scan.markup import Html, join, tag
from templates.scan.partpage import part_body
from templates.stations.stationset import make_stations
from templates.strips.storystick import stick_pages
from templates.writers.pdf import write_pdf
from tests.pages import README, ours, printed_by
from tests.templates.labelpages import label_pages
from tests.templates.scan.shown import SERVED, done, show

ROOT = Path(__file__).parents[1]
FOLDER = ROOT / "templates" / "pictures"
DOTS_PER_INCH = 72
TAG_DOTS = 130
"""Tags are small: their symbols would be a blur."""
SHEETS = {
    "door-back": ("B3-2L", "back"),
    "drawer-front": ("B1-1", "back"),
    "box-side": ("B1-SIDE-L", "inside"),
}
"""Picture, part, and the face whose first sheet is shown."""
STATIONS = {"station-cups": "cups-left", "station-fronts": "fronts-on-boxes"}
"""Picture, and the station whose first page is shown."""

Box = tuple[float, float, float, float]
"""What is shown of a page, mm: left, upper, right and lower edge from its left and upper edge."""
WALK: dict[str, tuple[str, str, tuple[Box, ...]]] = {
    "walk-wall": ("pack/elevations.pdf", "NORTH WALL", ((60, 28, 200, 150),)),
    "walk-bars": (
        "pack/stations.pdf", "Lay any bank card here", ((0, 0, 198, 109), (0, 252, 198, 267)),
    ),
    "walk-card": ("pack/stations.pdf", "hinge edge on your RIGHT", ((0, 0, 198, 180),)),
    "walk-fold": (
        "pack/stations.pdf", "EVERY CARD, AT EVERY STATION",
        ((138, 10, 198, 40), (138, 46, 181, 76), (138, 74, 182, 104), (138, 113, 198, 151)),
    ),
    "walk-first": ("first.pdf", "DOOR B1-2", ((6, 107, 198, 147),)),
    "walk-label": ("labels.pdf", "B1-2", ((4, 12.7, 105.6, 63.5),)),
}  # fmt: skip
"""Pictures of the README's walk: the file that its commands have made, words on the page that is
shown, and what of it: narrow pieces side by side, wide ones below each other."""
WALK_DOTS = 104
NARROW = 70.0

PHONE = "B3-2L"
"""The part whose page is shown."""
SCREEN = "390,1230"
BROWSER = (
    "chromium-headless-shell", "--headless", "--no-sandbox", "--hide-scrollbars",
    "--force-device-scale-factor=1.3",
)  # fmt: skip

PIECES = (
    "B2-SIDE-L", "B2-BOTTOM", "B2-BACK", "B2-1-BOX-BACK", "T1-FIXED-1", "B5-PANEL-R",
    "NORTH-FILLER-L", "NORTH-TOE-1-FRONT", "S2-ROLLOUT-1-SIDE",
)  # fmt: skip
"""Parts on the picture of pieces' labels."""


def draw_pictures() -> dict[str, Page]:
    """Give the pages that are shown, by the names of their pictures."""
    layout = lay_out(read_in_hand(ROOT / "templates" / "demo" / "job.toml"))
    pages = {
        name: next(
            sheet.page
            for sheet in make_sheets(layout, PAPERS["common"], only=[part])
            if any(placed.card.view.face == face for placed in sheet.cards)
        )
        for name, (part, face) in SHEETS.items()
    }
    doors = make_sheets(layout, PAPERS["common"], only=["B1-2", "B3-2L"])
    pages["same"] = next(
        sheet.page for sheet in doors if any(len(placed.card.parts) > 1 for placed in sheet.cards)
    )
    strip = make_sheets(layout, PAPERS["common"], only=["B1-2"], strip=True)
    pages["strip"] = [sheet.page for sheet in strip if sheet.cards][2]
    pages["elevation"] = next(draw_elevations(layout, PAPERS["common"])).page
    pages["calibrate"] = calibration_page(PAPERS["common"])
    drawers = [stick for stick in find_sticks(layout) if "B2-SIDE-L" in stick.boards]
    pages["stick"] = next(stick_pages(drawers, layout.job.name, PAPERS["common"]))
    pieces, stock = cut_list(layout), STOCKS["letter-2x5"]
    stations = plan_stations(layout)
    laid = make_stations(layout, stations, PAPERS["common"])
    for name, shown in STATIONS.items():
        (one,) = (station for station in stations if station.name == shown)
        pages[name] = laid.numbered(one)[0][1].page
    fronts = list_labels(layout, pieces, stations, kinds="fronts")
    pages["labels"] = label_pages(layout, fronts, stock)[0]
    of_pieces = list_labels(layout, pieces, stations, only=PIECES)
    pages["piece-labels"] = label_pages(layout, of_pieces, stock)[0]
    pages["cup-tags"] = _tags(layout)
    return pages


def _tags(layout: Layout) -> Page:
    """Give a few cup tags of both shapes side by side."""
    strip = SheetSize(name="strip", width=160.0, height=36.0)
    marks: list[Mark] = []
    for name, left, doors in (("cup-tag", 1.0, slice(0, 3)), ("cup-tag-round", 87.0, slice(3, 5))):
        one = STOCKS[name]
        stock = replace(one, sheet=strip, left=left, top=(36 - one.height) / 2, columns=3, rows=1)
        tagged = find_tagged(layout, stock)[0][doors]
        (page,) = tag_pages(layout, tagged, stock, Raster())
        marks += [
            mark
            for mark in page.marks  # without the page's heading
            if not (isinstance(mark, Text) and mark.text.startswith(("CUP TAGS", "Cut on")))
        ]
    return Page(width=strip.width, height=strip.height, marks=tuple(marks))


def draw_screens() -> dict[str, str]:
    """Give the pages of a telephone that are shown, each as one document, by their names."""
    shown = show(lay_out(read_in_hand(ROOT / "templates" / "demo" / "job.toml")))
    standing = done(shown.standings[PHONE], "arrived")
    body = tag("main", part_body(shown.scan, PHONE, standing, SERVED))
    style = join((tag("style", Html(STYLE)),))
    return {"phone": document(PHONE, style, join((header(SERVED), body)))}


def shoot(page: str, file: Path) -> None:
    """Take a picture of a page as a telephone shows it, by a browser without a window."""
    with tempfile.TemporaryDirectory() as folder:
        source, shot = Path(folder, "page.html"), Path(folder, "shot.png")
        source.write_text(page, encoding="utf-8")
        subprocess.run(
            (*BROWSER, f"--screenshot={shot}", f"--window-size={SCREEN}", source.as_uri()),
            check=True, capture_output=True, timeout=60,
        )  # fmt: skip
        with Image.open(shot) as picture:
            picture.convert("RGB").quantize(24).save(file, optimize=True)


def walk_to(folder: Path) -> None:
    """Run the README's commands in a folder."""
    for line, output in ours(README.read_text(encoding="utf-8")):
        printed_by(line, output, folder)


def page_of(folder: Path, file: str, words: str) -> pypdfium2.PdfPage:
    """Give the first page of a file there that has some words."""
    document = pypdfium2.PdfDocument(folder / file)
    return next(page for page in document if words in page.get_textpage().get_text_range())


def walk() -> dict[str, Image.Image]:
    """Give what is shown of the pages that the README's commands make."""
    shown = {}
    with tempfile.TemporaryDirectory() as folder:
        walk_to(Path(folder))
        for name, (file, words, boxes) in WALK.items():
            page = page_of(Path(folder), file, words)
            picture = page.render(scale=WALK_DOTS / 72, grayscale=True).to_pil()
            dot = WALK_DOTS / 25.4
            shown[name] = _joined(
                [picture.crop(tuple(round(edge * dot) for edge in box)) for box in boxes],
                beside=all(right - left < NARROW for left, _, right, _ in boxes),
            )
    return shown


def _joined(pieces: list[Image.Image], *, beside: bool) -> Image.Image:
    """Put pieces of a page side by side, or below each other, a little apart."""
    gap = 8
    wide, high = [each.width + gap for each in pieces], [each.height + gap for each in pieces]
    size = (sum(wide), max(high)) if beside else (max(wide), sum(high))
    whole = Image.new("L", (size[0] - gap, size[1] - gap), 255)
    for at, piece in enumerate(pieces):
        whole.paste(piece, (sum(wide[:at]), 0) if beside else (0, sum(high[:at])))
    return whole


def main() -> None:
    """Write each page as a small grey picture, each screen as it is seen."""
    FOLDER.mkdir(exist_ok=True)
    for name, page in draw_pictures().items():
        (sheet,) = pypdfium2.PdfDocument(write_pdf([page], title=name))
        dots = TAG_DOTS if name == "cup-tags" else DOTS_PER_INCH
        picture = sheet.render(scale=dots / 72, grayscale=True).to_pil()
        picture.quantize(16).save(FOLDER / f"{name}.png", optimize=True)
    for name, screen in draw_screens().items():
        shoot(screen, FOLDER / f"{name}.png")
    for name, picture in walk().items():
        picture.quantize(16).save(FOLDER / f"{name}.png", optimize=True)


if __name__ == "__main__":
    main()
