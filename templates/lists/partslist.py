"""The cut list: for people, for a spreadsheet, and as data.

All three list the same pieces: box by box with its drawer boxes, then what belongs to the walls.
Cut sizes are what the saw is set to, finished sizes have the edge band on.
"""

import json
from collections.abc import Sequence
from typing import Any

from jigs.box.drawerbox import DrawerBox, Rollout
from jigs.checks.provenance import OpenCuts
from jigs.cutlist.piece import Groove, Piece
from jigs.cutlist.totals import Banding, BoardTotal, Trap, add_banding, add_boards, find_trap
from jigs.given.cautions import cautions_of
from jigs.order.partslist import PartsList, assumed_in, drawers_of
from templates.lists.cells import csv_text, in_mm, number, safe_cell
from templates.words.findings import problems_data
from templates.words.openwords import open_cell, open_data

COLUMNS = (
    "part", "kind", "box", "wall", "front", "count", "length_mm", "width_mm",
    "finished_length_mm", "finished_width_mm", "thickness_mm", "board", "grain", "band",
    "band_thickness_mm", "pocket_mm", "pocket_top_mm", "groove_at_mm", "groove_width_mm",
    "groove_depth_mm", "note", "code", "open", "assumed",
)  # fmt: skip
"""The columns of the CSV list; several places in one cell are parted by blanks."""

BUILT_NOTE = "built already: its own pieces are not cut again"
HELD_NOTE = "left out, because its front or it is held back"


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
        "problems": problems_data(parts.layout.problems),
    }
    return json.dumps(data, indent=1, ensure_ascii=False) + "\n"


def parts_csv(parts: PartsList) -> str:
    """Give all pieces as CSV text, one a line, and a line without sizes for what is not cut; no
    cell is ever taken for a formula."""
    cuts = OpenCuts(parts.layout)
    job = parts.layout.job
    rows = [
        (
            *_row(piece, code),
            open_cell(cuts.of(piece.id)),
            safe_cell("; ".join(assumed_in(piece, job))),
        )
        for piece, code in parts.coded()
    ]
    rows += [_not_cut(name, "built", BUILT_NOTE) for name in parts.built]
    rows += [_not_cut(name, "held-back", HELD_NOTE) for name in parts.left_out]
    return csv_text(COLUMNS, rows)


def _not_cut(name: str, kind: str, note: str) -> tuple[object, ...]:
    """Give a row for what has no piece here, its count 0."""
    said = {"part": safe_cell(name), "kind": kind, "count": 0, "note": note}
    return tuple(said.get(column) for column in COLUMNS)


def _row(piece: Piece, code: str) -> tuple[object, ...]:
    """Give a piece as a row of the CSV list, in the order of COLUMNS."""
    groove = piece.groove
    return (
        safe_cell(piece.id),
        piece.kind,
        safe_cell(piece.box or ""),
        safe_cell(piece.wall),
        safe_cell(piece.front or ""),
        piece.count,
        number(piece.length),
        number(piece.width),
        number(piece.finished_length),
        number(piece.finished_width),
        number(piece.thickness),
        piece.stuff,
        piece.grain or "",
        " ".join(piece.banded),
        number(piece.band.thickness) if piece.band else None,
        _in_one_cell(piece.pockets),
        _in_one_cell(piece.pockets_top or ()),
        number(groove.at) if groove else None,
        number(groove.width) if groove else None,
        number(groove.depth) if groove else None,
        safe_cell(piece.note),
        code,
    )


def _in_one_cell(values: Sequence[float]) -> str:
    return " ".join(f"{number(value):.10g}" for value in values)


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
        "note": piece.note or None,
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


def _drawer_data(drawer: DrawerBox | Rollout) -> dict[str, Any]:
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
