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
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from jigs.ground.geometry import Polygon


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawing:
    """What is drawn, mm; each thing but the outline and the texts has a layer of its own name."""

    outline: Polygon
    circles: tuple[tuple[str, float, float, float], ...]
    """Layer, centre, diameter."""
    lines: tuple[tuple[str, Polygon], ...]
    """Layer and points; closed from three points on."""
    texts: tuple[tuple[float, float, str], ...]
    """Where each begins, and its words."""
    text_height: float


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


def write_dxf(drawn: Drawing) -> bytes:
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
    space.add_lwpolyline(drawn.outline, close=True, dxfattribs={"layer": "OUTLINE"})
    for layer, x, y, diameter in drawn.circles:
        if layer not in drawing.layers:
            drawing.layers.add(layer)
        space.add_circle((x, y), diameter / 2, dxfattribs={"layer": layer})
    for layer, line in drawn.lines:
        drawing.layers.add(layer)
        space.add_lwpolyline(line, close=len(line) > 2, dxfattribs={"layer": layer})
    for x, y, words in drawn.texts:
        placed = {"layer": "TEXT", "insert": (x, y)}
        space.add_text(words, height=drawn.text_height, dxfattribs=placed)
    # Else those that are missing are added in the order of a set, another in each run.
    for kind in sorted({entity.dxftype() for entity in drawing.entitydb.values()}):
        drawing.classes.add_class(kind)
    text = io.StringIO()
    drawing.write(text)
    return text.getvalue().encode(drawing.output_encoding, errors="dxfreplace")
