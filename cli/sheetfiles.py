"""Drawings that are a folder of files: all are drawn, then written aside, then appear together."""

from collections.abc import Iterable, Iterator
from contextlib import ExitStack
from pathlib import Path
from typing import TYPE_CHECKING

from cli.output import alone_in, guard, make_folder, set_aside, told

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


def write_folder(
    target: str, files: Iterable[tuple[str, bytes]], sources: Iterable[Path]
) -> tuple[int, list[str]]:
    """Write the files into a folder; give their number, and what of their kind lay there before
    and was not written now: it may show a part as it no longer is."""
    folder = Path(target)
    make_folder(folder)
    written = dict(files)
    with told(f"'{folder}'"), alone_in(folder), ExitStack() as undo:
        aside = []
        for name, data in written.items():
            guard(str(folder / name), sources)
            aside.append(set_aside(folder / name, data))
            undo.callback(aside[-1].drop)
        for file in aside:
            file.put()
    kinds = {Path(name).suffix for name in written}
    older = sorted(
        path.name
        for path in folder.iterdir()
        if path.suffix in kinds and path.name not in written and not path.name.startswith(".")
    )
    return len(written), older
