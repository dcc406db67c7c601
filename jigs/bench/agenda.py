"""What is to be done now: the parts put together by their next step, in the order of the work.

Whatever is bored is one list: who stands at the drill goes from station to station.
"""

from collections.abc import Iterable

from msgspec import Struct

from jigs.bench.standing import Standing, Step
from jigs.ground.grouped import grouped


class Due(Struct, frozen=True, kw_only=True):
    """The parts whose next step is the same."""

    step: Step
    """Of what is bored, that of the first part."""
    ready: tuple[str, ...]
    waiting: tuple[str, ...]
    """Those that wait for other parts, or are held back."""

    @property
    def key(self) -> str:
        """What the list is asked for by."""
        return list_key(self.step)


def list_key(step: Step) -> str:
    """Give what the list of a step is asked for by."""
    return step.kind if step.kind == "bored" else step.key


def due(standings: Iterable[Standing]) -> tuple[Due, ...]:
    """Put the parts of a job together by their next step."""
    standings = tuple(standings)
    order: dict[str, int] = {}
    for standing in standings:
        for place, step in enumerate(standing.steps):
            order[list_key(step)] = max(order.get(list_key(step), 0), place)
    lists = grouped(
        (list_key(standing.next), (standing.next, standing))
        for standing in standings
        if standing.next is not None
    )
    return tuple(
        Due(
            step=lists[key][0][0],
            ready=tuple(standing.part for _, standing in lists[key] if not standing.waits),
            waiting=tuple(standing.part for _, standing in lists[key] if standing.waits),
        )
        for key in sorted(lists, key=lambda key: order[key])
    )
