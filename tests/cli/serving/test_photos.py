"""Photos are drawn anew: upright, small, without what a telephone writes into them."""

import io
import struct
import subprocess
import sys
import zlib
from pathlib import Path

import pytest
from PIL import Image

from cli.serving.photos import SIDE, PhotoError, draw_again

GPS, ORIENTATION, ARTIST = 0x8825, 0x0112, 0x013B
"""Tags of Exif (CIPA DC-008, from memory)."""


def photo(size: tuple[int, int] = (60, 40), form: str = "JPEG", **how: object) -> bytes:
    """Draw a photo, its left half red, its right half blue."""
    image = Image.new("RGB", size, (200, 0, 0))
    image.paste((0, 0, 200), (size[0] // 2, 0, *size))
    out = io.BytesIO()
    image.save(out, form, **how)
    return out.getvalue()


def png_of(width: int, height: int) -> bytes:
    """Write a PNG that says it has so many pixels, and has hardly any bytes."""

    def chunk(name: bytes, data: bytes) -> bytes:
        check = struct.pack(">I", zlib.crc32(name + data))
        return struct.pack(">I", len(data)) + name + data + check

    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"".join((
        b"\x89PNG\r\n\x1a\n", chunk(b"IHDR", head), chunk(b"IDAT", zlib.compress(bytes(99))),
        chunk(b"IEND", b""),
    ))  # fmt: skip


def test_what_a_telephone_writes_into_a_photo_is_gone() -> None:
    """Place, camera, comment and packet of metadata; a comment survives all but being taken out."""
    exif = Image.Exif()
    exif[ARTIST] = "Somebody's telephone"
    exif.get_ifd(GPS)[2] = (54.0, 19.0, 30.0)
    sent = photo(exif=exif, comment=b"Somebody's house", xmp=b"<x:xmpmeta>Somebody</x:xmpmeta>")
    for word in (b"Somebody", b"xmpmeta", b"Exif"):
        assert word in sent
        assert word not in draw_again(sent)
    kept = Image.open(io.BytesIO(draw_again(sent)))
    assert not kept.getexif()
    assert kept.info.keys() <= {"jfif", "jfif_version", "jfif_unit", "jfif_density"}


def test_a_photo_taken_upright_stands_upright() -> None:
    """Orientation 6 says: turn it a quarter to the right (Exif, from memory); the left half, red,
    comes to the top."""
    exif = Image.Exif()
    exif[ORIENTATION] = 6
    kept = Image.open(io.BytesIO(draw_again(photo(exif=exif)))).convert("RGB")
    assert kept.size == (40, 60)
    red, _, blue = kept.getpixel((20, 5))  # type: ignore[misc]
    assert red > 150 > 50 > blue


@pytest.mark.parametrize("form", ["JPEG", "PNG"])
def test_what_is_kept_is_small_whatever_was_sent(form: str) -> None:
    """Its longer side has 1600 pixels at most; a small one is not blown up."""
    kept = Image.open(io.BytesIO(draw_again(photo((2400, 1200), form))))
    assert (kept.format, kept.size) == ("JPEG", (SIDE, SIDE // 2))
    assert Image.open(io.BytesIO(draw_again(photo(form=form)))).size == (60, 40)


LARGE = """
import io, sys
from pathlib import Path
from PIL import Image
from cli.serving.photos import draw_again
kept = Image.open(io.BytesIO(draw_again(Path(sys.argv[1]).read_bytes())))
peak = Path("/proc/self/status").read_text().partition("VmHWM:")[2].split()[0]
print(int(peak) // 1024, *kept.size)
"""


@pytest.mark.slow
def test_the_largest_photos_take_little_memory(tmp_path: Path) -> None:
    """108 million pixels decoded whole would take 324 MB and more; a JPEG is decoded at an eighth
    of its size."""
    file = tmp_path / "large.jpg"
    Image.new("L", (12_000, 9_000)).save(file, "JPEG")
    done = subprocess.run(
        [sys.executable, "-c", LARGE, str(file)], capture_output=True, text=True, check=True,
        cwd=Path(__file__).parents[3],
    )  # fmt: skip
    peak, across, down = map(int, done.stdout.split())
    assert (across, down) == (SIDE, SIDE * 3 // 4)
    assert peak < 150, "MB at most; VmHWM of proc(5)"


@pytest.mark.parametrize("mode", ["RGBA", "P", "L", "LA", "1", "I;16"])
def test_every_kind_of_png_becomes_a_photo(mode: str) -> None:
    """With a clear ground, a palette, in greys, in black and white."""
    out = io.BytesIO()
    Image.new(mode, (30, 20)).save(out, "PNG")
    assert Image.open(io.BytesIO(draw_again(out.getvalue()))).mode == "RGB"


def test_a_small_file_of_many_pixels_is_refused_unopened() -> None:
    """169 million pixels in some 100 bytes would take half a gigabyte."""
    with pytest.raises(PhotoError, match="13000 x 13000 pixels; at most 25 million"):
        draw_again(png_of(13_000, 13_000))


@pytest.mark.parametrize(
    "sent",
    [
        b"",
        b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
        b"<!doctype html><script>alert(1)</script>",
        photo(form="GIF"),
        photo(form="WEBP"),
        photo(form="TIFF"),
    ],
    ids=["empty", "svg", "html", "gif", "webp", "tiff"],
)  # fmt: skip
def test_what_is_no_photo_is_refused(sent: bytes) -> None:
    """Whatever it is called: what counts is what it is."""
    with pytest.raises(PhotoError, match="JPEG and PNG are taken"):
        draw_again(sent)


@pytest.mark.parametrize("form", ["JPEG", "PNG"])
def test_a_photo_cut_short_is_refused(form: str) -> None:
    """The connection broke, or somebody means harm: nothing is kept of it."""
    whole = photo((400, 300), form)
    for length in (30, len(whole) // 2):
        with pytest.raises(PhotoError):
            draw_again(whole[:length])


def test_a_page_hidden_behind_a_photo_is_not_kept() -> None:
    """What was sent is never handed on: what follows the picture is left out."""
    assert b"<script>" not in draw_again(photo() + b"<script>alert(1)</script>")
