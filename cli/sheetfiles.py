"""The files of sheets that are a folder of drawings: their pages, or bare faces at full size."""

from collections.abc import Iterable, Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from templates.binding.jobsheets import Sheets
    from templates.faces.faceview import FaceView


def face_files(views: "Iterable[FaceView]", form: str) -> Iterator[tuple[str, bytes]]:
    """Give name and content of a file for each bare face, as `outlines` or `dxf`."""
    from templates.cards.outlines import face_dxf, face_name, outline_page
    from templates.writers.svg import write_svg

    for view in views:
        if form == "dxf":
            yield f"{face_name(view)}.dxf", face_dxf(view)
        else:
            yield f"{face_name(view)}.svg", write_svg(outline_page(view)).encode()


def page_files(sheets: "Sheets") -> Iterator[tuple[str, bytes]]:
    """Give name and content of an SVG file for each page."""
    from templates.writers.svg import write_svg

    for number, sheet in enumerate(sheets, start=1):
        name = "+".join(sheet.parts) or ("first-page" if number == 1 else "words")
        yield f"{number:03d}-{name}.svg", write_svg(sheet.page).encode()
