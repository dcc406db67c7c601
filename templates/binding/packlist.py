"""What a pack holds, as data: the job, the tool's version, the code of each part, and the digest
of each file, by which the tool knows its own files again."""

from collections.abc import Mapping

from jigs import __version__
from jigs.box.parts import Layout
from jigs.changes.keeping import made_data
from jigs.changes.made import Made


def contents_data(
    layout: Layout, codes: Mapping[str, str], made: Made, digests: Mapping[str, str]
) -> dict[str, object]:
    """Give the contents; `codes`: those on the labels, by part; `digests`: the SHA-256 of each
    file (FIPS 180-4); `made`: all that the
    job makes, by which a later state of it is told from this one. A part that is held back has no
    code, as on its label."""
    delivered = layout.job.delivered
    return {
        "schema": 1,
        "jigsheet": __version__,
        "job": layout.job.name,
        "units": layout.job.units,
        "read_from": [source.name for source in layout.job.sources],
        "delivered": delivered.file.name if delivered else None,
        "parts": {part: code or None for part, code in codes.items()},
        "files": dict(digests),
        "made": made_data(made),
    }
