"""Values that are alike, kept once: of a thousand drawers most have the same holes, and of the
findings most the same figures. Values are frozen, so that one does for all of them.

>>> shared = Shared()
>>> first, second = ((12.0, 96.0),), ((12.0, 96.0),)
>>> shared.one(first) is shared.one(second)
True
"""

from collections.abc import Hashable
from typing import TypeVar, cast

from msgspec import Struct
from msgspec.structs import replace

AlikeT = TypeVar("AlikeT", bound=Hashable)
StructT = TypeVar("StructT", bound=Struct)


class Shared:
    """The values met so far, each once."""

    def __init__(self) -> None:
        self._kept: dict[Hashable, Hashable] = {}

    def one(self, value: AlikeT) -> AlikeT:
        """Give the value that is kept of those equal to this one."""
        return cast("AlikeT", self._kept.setdefault(value, value))

    def fields(self, value: StructT, *names: str) -> StructT:
        """Give a value of whose fields those of these names are shared."""
        return replace(value, **{name: self.one(getattr(value, name)) for name in names})
