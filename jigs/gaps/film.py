"""The film of paint: what it adds at each edge of a front that had its size before.

>>> film_of(Paint(method="sprayed", sizes="before"))
(0.1, 0.15)
>>> film_of(Paint(method="sprayed", sizes="after"))
(0.0, 0.0)
"""

from jigs.given.build import Method, Paint

FILM: dict[Method, tuple[float, float]] = {"sprayed": (0.10, 0.15), "brushed": (0.15, 0.30)}
"""What a finished film adds at an edge, least and most; mm (common practice, no source)."""
USUAL_COATS = 2
"""The coats of such a film; of more or fewer it is so much thicker or thinner (our own choice)."""


def film_of(paint: Paint) -> tuple[float, float] | None:
    """Give what the film adds at each edge of a front, least and most, mm; None where the job does
    not say how it is painted, or when it is measured."""
    if paint.sizes == "after":
        return 0.0, 0.0
    if paint.sizes is None or paint.method is None:
        return None
    low, high = FILM[paint.method]
    share = paint.coats / USUAL_COATS
    return low * share, high * share
