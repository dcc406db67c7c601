"""The build of the boxes in the job file: `[build]`. What it leaves open is as usual."""

from jigs.build import MAKINGS, Build
from jigs.reading.faceframe import refuse_frame_keys
from jigs.reading.tomltables import Table

MOST_NAILERS = 4


def read_build(table: Table | None) -> Build:
    """Read how the boxes are built."""
    usual = Build()
    if table is None:
        return usual

    refuse_frame_keys(table)

    def size(key: str, standard: float, *, zero: bool = False) -> float:
        value = table.length(key, zero=zero)
        return standard if value is None else value

    build = Build(
        sold_as=table.length("sold_as"),
        groove=size("groove", usual.groove),
        back_play=size("back_play", usual.back_play, zero=True),
        stretcher=size("stretcher", usual.stretcher),
        nailer=size("nailer", usual.nailer),
        nailers=table.whole("nailers", most=MOST_NAILERS),
        shelf_play=size("shelf_play", usual.shelf_play, zero=True),
        shelf_back=size("shelf_back", usual.shelf_back, zero=True),
        toe_back=size("toe_back", usual.toe_back, zero=True),
        sleepers=size("sleepers", usual.sleepers),
        scribe=size("scribe", usual.scribe, zero=True),
        panel_scribe=size("panel_scribe", usual.panel_scribe, zero=True),
        bumper=size("bumper", usual.bumper, zero=True),
        drawer_bottom=size("drawer_bottom", usual.drawer_bottom),
        drawer_groove=size("drawer_groove", usual.drawer_groove),
        drawer_boxes=table.choice("drawer_boxes", MAKINGS),
    )
    table.close()
    return build
