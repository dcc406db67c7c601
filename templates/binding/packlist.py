"""What a pack holds, as data: the job, the tool's version, the code of each part, and the digest
of each file, by which the tool knows its own files again."""

from collections.abc import Iterable, Mapping

from jigs import __version__
from jigs.box.parts import Layout
from templates.labels.labelwords import LabelWords


def contents_data(
    layout: Layout, labels: Iterable[LabelWords], digests: Mapping[str, str]
) -> dict[str, object]:
    """Give the contents; `digests`: the SHA-256 of each file (FIPS 180-4). A part that is held
    back has no code, as on its label."""
    return {
        "schema": 1,
        "jigsheet": __version__,
        "job": layout.job.name,
        "units": layout.job.units,
        "read_from": [source.name for source in layout.job.sources],
        "parts": {label.part: label.code or None for label in labels},
        "files": dict(digests),
    }
