"""The build of the boxes in the job file: `[build]`. What it leaves open is as usual."""

from jigs.given.build import MAKINGS, Build
from jigs.ground.believable import Range
from jigs.reading.faceframe import refuse_frame_keys
from jigs.reading.kindranges import BOARD, RAIL, SPARE, THIN_BOARD
from jigs.reading.tomltables import Table

MOST_NAILERS = 4


def read_build(table: Table | None) -> Build:
    """Read how the boxes are built."""
    usual = Build()
    if table is None:
        return usual

    refuse_frame_keys(table)

    def size(key: str, standard: float, within: Range) -> float:
        value = table.length(key, within)
        return standard if value is None else value

    build = Build(
        sold_as=table.length("sold_as", BOARD),
        groove=size("groove", usual.groove, Range(3, 20)),
        back_play=size("back_play", usual.back_play, Range(0.3, 6, zero=True)),
        stretcher=size("stretcher", usual.stretcher, RAIL),
        nailer=size("nailer", usual.nailer, RAIL),
        nailers=table.whole("nailers", usual=MOST_NAILERS, most=MOST_NAILERS),
        shelf_play=size("shelf_play", usual.shelf_play, Range(0.5, 10, zero=True)),
        shelf_back=size("shelf_back", usual.shelf_back, SPARE),
        toe_back=size("toe_back", usual.toe_back, Range(20, 150, zero=True)),
        sleepers=size("sleepers", usual.sleepers, Range(200, 1200)),
        scribe=size("scribe", usual.scribe, SPARE),
        panel_scribe=size("panel_scribe", usual.panel_scribe, SPARE),
        bumper=size("bumper", usual.bumper, Range(0.5, 6, zero=True)),
        drawer_bottom=size("drawer_bottom", usual.drawer_bottom, THIN_BOARD),
        drawer_groove=size("drawer_groove", usual.drawer_groove, Range(2, 15)),
        drawer_boxes=table.choice("drawer_boxes", MAKINGS),
    )
    table.close()
    return build
