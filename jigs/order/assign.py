"""The best assignment: as many pieces to places as there can be, and those with least cost.

Pieces come in kinds with a count, places too; only allowed pairs have a cost. It is a flow from the
pieces to the places at the least cost, which networkx finds exactly; it is loaded only here, where
a list has pieces without an ID. It reckons in whole numbers, here in millionths.

>>> assign([1, 1], [1, 1], {(0, 0): 0.0, (0, 1): 1.0, (1, 0): 0.1})
{(0, 1): 1, (1, 0): 1}
"""

from collections.abc import Mapping, Sequence

Pair = tuple[int, int]

LIST, JOB = -1, -2
"""Where the flow begins and ends. Its nodes are numbers: the order of words in a set differs from
run to run, and with it which of two equal assignments is found."""


def assign(
    pieces: Sequence[int], places: Sequence[int], costs: Mapping[Pair, float]
) -> dict[Pair, int]:
    """Give how many pieces of each kind go to each kind of place."""
    if not costs:
        return {}
    import networkx as nx

    net = nx.DiGraph()
    for (piece, place), cost in sorted(costs.items()):
        net.add_edge(LIST, 2 * piece, capacity=pieces[piece])
        net.add_edge(2 * piece, 2 * place + 1, weight=round(cost * 1e6))
        net.add_edge(2 * place + 1, JOB, capacity=places[place])
    flow = nx.max_flow_min_cost(net, LIST, JOB)
    taken = {pair: flow[2 * pair[0]][2 * pair[1] + 1] for pair in sorted(costs)}
    return {pair: count for pair, count in taken.items() if count}
