"""The DXF writer: one face of a part in, the bytes of one drawing out (DXF R2010, in mm).

The part's lower left corner, as the driller sees the face, is the origin. A layer is an
operation: `CUP_35_D13` are cups of 35 mm, 13 mm deep; `PULL_5_THROUGH` goes right through. What
lies on the face and is not machined has layers too: `FRAME` (inner edges of stiles and rails),
`DRAWER_BOX`, `BEVEL` (the edge). The same face gives the same bytes.
"""

import contextlib
import io
import os
from collections.abc import Iterator
from pathlib import Path
from tempfile import TemporaryDirectory

from jigs.ground.geometry import Hole
from templates.cards.faces import FaceView
from templates.cards.outlines import TEXT, figure, lines_on, operation, words_beside


def layer_name(hole: Hole) -> str:
    """Name a hole's layer: operation, diameter, depth in mm."""
    depth = "THROUGH" if hole.depth is None else f"D{figure(hole.depth)}"
    return f"{operation(hole).upper().replace('-', '_')}_{figure(hole.diameter)}_{depth}"


@contextlib.contextmanager
def _without_fonts() -> Iterator[None]:
    """Let the library find an empty list of fonts as it is loaded. It would search the machine
    for them and keep the list in the user's cache; no text is measured here."""
    cache = "XDG_CACHE_HOME"
    before = os.environ.get(cache)
    with TemporaryDirectory(prefix="jigsheet-") as folder:
        known = Path(folder) / "ezdxf" / "font_manager_cache.json"
        known.parent.mkdir()
        known.write_text('{"version": 0, "font-faces": []}', encoding="utf-8")
        os.environ[cache] = folder
        try:
            yield
        finally:
            if before is None:
                del os.environ[cache]
            else:
                os.environ[cache] = before


def write_dxf(view: FaceView) -> bytes:
    """Write one face: OUTLINE, a circle for each hole, the lines on it, TEXT outside the part."""
    # Imported here: the library is slow to load.
    with _without_fonts():
        import ezdxf
    from ezdxf import units

    # Dates and random identifiers would make each run's file another one.
    ezdxf.options.write_fixed_meta_data_for_testing = True
    drawing = ezdxf.new("R2010", units=units.MM)
    space = drawing.modelspace()
    for layer in ("OUTLINE", "TEXT"):
        drawing.layers.add(layer)
    w, h = view.width, view.height
    corners = [(0.0, 0.0), (w, 0.0), (w, h), (0.0, h)]
    space.add_lwpolyline(corners, close=True, dxfattribs={"layer": "OUTLINE"})
    for fitting in view.fittings:
        for hole in fitting.holes:
            layer = layer_name(hole)
            if layer not in drawing.layers:
                drawing.layers.add(layer)
            space.add_circle((hole.x, hole.y), hole.diameter / 2, dxfattribs={"layer": layer})
    for name, line in lines_on(view):
        layer = name.upper().replace("-", "_")
        drawing.layers.add(layer)
        space.add_lwpolyline(line, close=len(line) > 2, dxfattribs={"layer": layer})
    for x, y, words in words_beside(view):
        space.add_text(words, height=TEXT, dxfattribs={"layer": "TEXT", "insert": (x, y)})
    # Else those that are missing are added in the order of a set, another in each run.
    for kind in sorted({entity.dxftype() for entity in drawing.entitydb.values()}):
        drawing.classes.add_class(kind)
    text = io.StringIO()
    drawing.write(text)
    return text.getvalue().encode(drawing.output_encoding, errors="dxfreplace")
