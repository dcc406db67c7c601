"""Photos from a telephone: what is kept is drawn anew, small, and says nothing of where and when.

What was sent is never handed on: it is decoded and written again as JPEG, without the place, the
camera and the comments that the file may carry.
"""

import io
import threading

KINDS = ("JPEG", "PNG")
"""What telephones send; each further kind is a further decoder that reads strangers' bytes."""
MOST_PIXELS = {"JPEG": 120_000_000, "PNG": 25_000_000}
"""A JPEG is decoded at a fraction of its size, a PNG whole: 25 million pixels are 100 MB."""
SIDE = 1600
"""The longer side of what is kept, pixels."""
QUALITY = 80

_one_at_a_time = threading.Lock()
"""Decoding takes 100 MB of memory: of several photos at once one waits for the other."""


class PhotoError(Exception):
    """A file that is no photo that can be kept; says why."""


def draw_again(data: bytes) -> bytes:
    """Give a photo as it is kept, JPEG. Raises PhotoError."""
    from PIL import Image, ImageOps, UnidentifiedImageError

    # Sizes are judged here, before anything is decoded, by the limits above.
    Image.MAX_IMAGE_PIXELS = None
    try:
        with _one_at_a_time, Image.open(io.BytesIO(data), formats=KINDS) as sent:
            across, down = sent.size
            most = MOST_PIXELS[sent.format or "PNG"]
            if across * down > most:
                raise PhotoError(
                    f"This photo has {across} x {down} pixels; at most {most // 1_000_000} million "
                    "are taken."
                )
            sent.draft("RGB", (SIDE, SIDE))
            upright = ImageOps.exif_transpose(sent)
            upright.thumbnail((SIDE, SIDE))
            drawn = upright.convert("RGB")
            drawn.info.clear()
            out = io.BytesIO()
            drawn.save(out, "JPEG", quality=QUALITY)
    except UnidentifiedImageError as error:
        raise PhotoError("This is no photo: JPEG and PNG are taken.") from error
    except (OSError, ValueError, SyntaxError, EOFError) as error:
        raise PhotoError("This photo is damaged or cut short; take it again.") from error
    return out.getvalue()
