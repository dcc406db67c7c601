"""The files of sheets that are a folder of drawings: their pages, or bare faces at full size."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from templates.binding.jobsheets import Sheets


def sheet_files(sheets: "Sheets", form: str) -> Iterator[tuple[str, bytes]]:
    """Give name and content of each file: the pages (`svg`), or bare faces (`outlines`, `dxf`)."""
    if form == "dxf":
        from templates.cards.outlines import face_dxf, face_name

        for view in sheets.views:
            yield f"{face_name(view)}.dxf", face_dxf(view)
        return

    from templates.cards.outlines import face_name, outline_page
    from templates.writers.svg import write_svg

    if form == "outlines":
        for view in sheets.views:
            yield f"{face_name(view)}.svg", write_svg(outline_page(view)).encode()
        return
    for number, sheet in enumerate(sheets, start=1):
        if sheet.cards:
            views = [placed.card.view for placed in sheet.cards]
            name = "+".join(dict.fromkeys(view.part for view in views))
            if views[0].served.parts:
                name += f"-and-{len(views[0].served.parts) - 1}-alike"
        else:
            name = "first-page" if number == 1 else "pass-marks"
        yield f"{number:03d}-{name}.svg", write_svg(sheet.page).encode()
