"""The cut list: for people, for a spreadsheet, and as data.

All three list the same pieces: box by box with its drawer boxes, then what belongs to the walls.
Cut sizes are what the saw is set to, finished sizes have the edge band on.
"""

import json
from collections.abc import Sequence
from typing import Any

from jigs.box.bypart import OpenCuts
from jigs.box.drawerbox import AnyDrawer
from jigs.cutlist.cutlist import PartsList, drawers_of
from jigs.cutlist.piece import Groove, Piece
from jigs.cutlist.totals import Banding, BoardTotal, Trap, add_banding, add_boards, find_trap
from templates.lists.cells import csv_text, in_mm, number
from templates.words.cautions import cautions_of
from templates.words.findings import problems_data
from templates.words.openwords import open_cell, open_data
from templates.words.partswords import BUILT_NOTE, HELD_NOTE, assumed_in
from templates.words.piecenotes import note_words

COLUMNS = (
    "part", "kind", "box", "wall", "front", "count", "length_mm", "width_mm",
    "finished_length_mm", "finished_width_mm", "thickness_mm", "board", "grain", "band",
    "band_thickness_mm", "pocket_mm", "pocket_top_mm", "groove_at_mm", "groove_width_mm",
    "groove_depth_mm", "note", "code", "open", "assumed",
)  # fmt: skip
"""The columns of the CSV list; several places in one cell are parted by blanks."""


def parts_json(parts: PartsList) -> str:
    """Give all pieces with their totals as JSON text, numbers to 0.0001 mm."""
    job, cuts = parts.layout.job, OpenCuts(parts.layout)
    data = {
        "schema": 1,
        "job": job.name,
        "units": job.units,
        "parts": [
            {
                **_piece_data(piece, code),
                "open": open_data(cuts.of(piece.id)),
                "assumed": list(assumed_in(piece, job)),
            }
            for piece, code in parts.coded()
        ],
        "banding": [_banding_data(band) for band in add_banding(parts.pieces)],
        "boards": [_board_data(board) for board in add_boards(parts.pieces, job.units)],
        "thickness_trap": _trap_data(find_trap(job, parts.cut_boxes)),
        "left_out": list(parts.left_out),
        "built": list(parts.built),
        "drawer_boxes": [_drawer_data(drawer) for drawer in drawers_of(parts)],
        "cautions": list(cautions_of(box.kind for box in parts.layout.boxes)),
        "problems": problems_data(parts.layout.problems, parts.layout.job.shown),
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def parts_csv(parts: PartsList) -> str:
    """Give all pieces as CSV text, one a line, and a line without sizes for what is not cut; no
    cell is ever taken for a formula."""
    cuts, job = OpenCuts(parts.layout), parts.layout.job
    rows: list[dict[str, Any]] = [
        {
            **_in_cells(_piece_data(piece, code)),
            "open": open_cell(cuts.of(piece.id)),
            "assumed": "; ".join(assumed_in(piece, job)),
        }
        for piece, code in parts.coded()
    ]
    for kind, names, note in (
        ("built", parts.built, BUILT_NOTE),
        ("held-back", parts.left_out, HELD_NOTE),
    ):
        rows += [{"part": name, "kind": kind, "count": 0, "note": note} for name in names]
    return csv_text(COLUMNS, ([row.get(column) for column in COLUMNS] for row in rows))


def _in_cells(data: dict[str, Any]) -> dict[str, Any]:
    """Give a piece's data by the columns of the CSV list."""
    return {
        **data,
        "part": data["id"],
        "band": " ".join(data["band"]),
        "band_thickness_mm": data["band_mm"],
        "pocket_mm": _in_one_cell(data["pocket_mm"]),
        "pocket_top_mm": _in_one_cell(data["pocket_top_mm"] or ()),
        **{f"groove_{key}": value for key, value in (data["groove"] or {}).items()},
    }


def _in_one_cell(values: Sequence[float]) -> str:
    return " ".join(f"{value:.10g}" for value in values)


def _numbers(values: Sequence[float]) -> list[float]:
    return [number(value) for value in values]


def _piece_data(piece: Piece, code: str) -> dict[str, Any]:
    return {
        "id": piece.id,
        "kind": piece.kind,
        "box": piece.box,
        "wall": piece.wall or None,
        "front": piece.front,
        **in_mm(length=piece.length, width=piece.width),
        "finished_length_mm": number(piece.finished_length),
        "finished_width_mm": number(piece.finished_width),
        "thickness_mm": number(piece.thickness),
        "board": piece.stuff,
        "count": piece.count,
        "band": list(piece.banded),
        "band_mm": number(piece.band.thickness) if piece.band else None,
        "grain": piece.grain,
        "pocket_mm": _numbers(piece.pockets),
        "pocket_top_mm": None if piece.pockets_top is None else _numbers(piece.pockets_top),
        "groove": _groove_data(piece.groove),
        "note": note_words(piece.notes) or None,
        "code": code,
    }


def _groove_data(groove: Groove | None) -> dict[str, float | None] | None:
    if groove is None:
        return None
    return in_mm(at=groove.at, width=groove.width, depth=groove.depth)


def _banding_data(band: Banding) -> dict[str, Any]:
    return {
        **in_mm(board=band.board, band=band.band),
        "edges": band.edges,
        **in_mm(length=band.length, to_buy=band.to_buy),
    }


def _drawer_data(drawer: AnyDrawer) -> dict[str, Any]:
    return {
        "id": drawer.id,
        **in_mm(width=drawer.width, height=drawer.height, length=drawer.length),
        "slide": drawer.slide,
        "slide_length_mm": number(drawer.slide_length),
    }


def _board_data(board: BoardTotal) -> dict[str, Any]:
    return {
        "board": board.stuff,
        "thickness_mm": number(board.thickness),
        "pieces": board.pieces,
        "area_m2": number(board.area),
        "sheets_at_least": board.sheets,
    }


def _trap_data(trap: Trap | None) -> dict[str, Any] | None:
    if trap is None:
        return None
    return {
        "box": trap.box,
        **in_mm(true=trap.true, nominal=trap.nominal),
        "nominal_guessed": trap.guessed,
        **in_mm(bottom=trap.bottom, width=trap.width, comes_to=trap.comes_to, lost=trap.lost),
    }
