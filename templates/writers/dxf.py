"""The DXF writer: a face of a part or a plate in, the bytes of one drawing out (DXF R2010, in mm).

Of a face, the part's lower left corner, as the driller sees the face, is the origin. A layer is an
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

from msgspec import Struct

from jigs.ground.geometry import Polygon

NARROW = 0.7
"""Width of letters, as a part of what it is by itself."""


class DxfText(Struct, frozen=True, kw_only=True):
    """A line of text: where its base line begins, or its middle is; mm. `angle` in degrees."""

    layer: str
    x: float
    y: float
    text: str
    height: float
    angle: int = 0
    middle: bool = False


class Drawing(Struct, frozen=True, kw_only=True):
    """What is drawn, mm, each thing on a layer of its own name."""

    lines: tuple[tuple[str, Polygon], ...]
    """Layer and points; closed from three points on."""
    circles: tuple[tuple[str, float, float, float], ...]
    """Layer, centre, diameter."""
    texts: tuple[DxfText, ...]


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
    """Write a drawing."""
    # Imported here: the library is slow to load.
    with _without_fonts():
        import ezdxf
    from ezdxf import units
    from ezdxf.enums import TextEntityAlignment

    # Dates and random identifiers would make each run's file another one.
    ezdxf.options.write_fixed_meta_data_for_testing = True
    drawing = ezdxf.new("R2010", units=units.MM)
    space = drawing.modelspace()
    used = [layer for layer, _ in drawn.lines]
    used += [layer for layer, *_ in drawn.circles]
    used += [words.layer for words in drawn.texts]
    for layer in dict.fromkeys(used):
        drawing.layers.add(layer)
    for layer, line in drawn.lines:
        space.add_lwpolyline(line, close=len(line) > 2, dxfattribs={"layer": layer})
    for layer, x, y, diameter in drawn.circles:
        space.add_circle((x, y), diameter / 2, dxfattribs={"layer": layer})
    for words in drawn.texts:
        # As narrow as the printed face, whatever letters the reader has.
        placed = {"layer": words.layer, "rotation": words.angle, "width": NARROW}
        text = space.add_text(words.text, height=words.height, dxfattribs=placed)
        align = TextEntityAlignment.CENTER if words.middle else TextEntityAlignment.LEFT
        text.set_placement((words.x, words.y), align=align)
    # Else those that are missing are added in the order of a set, another in each run.
    for kind in sorted({entity.dxftype() for entity in drawing.entitydb.values()}):
        drawing.classes.add_class(kind)
    file = io.StringIO()
    drawing.write(file)
    return file.getvalue().encode(drawing.output_encoding, errors="dxfreplace")
