"""What lists say, as digests: two of a job that are alike say the same, word for word."""

from hashlib import sha256

from msgspec.json import encode
from msgspec.structs import replace

from jigs.box.parts import Layout
from jigs.cutlist.cutlist import Cut, choose_parts
from jigs.order.buying import Order
from templates.lists.ordertables import order_listing
from templates.lists.partstables import parts_listing
from templates.lists.worklist import plan_listing
from templates.lists.workview import Paged, WorkView

LENGTH = 16
"""Digits that are kept of a digest; two lists that differ agree in them by no chance."""


def list_digests(layout: Layout, cut: Cut, order: Order, work: WorkView) -> dict[str, str]:
    """Give, by the file of a pack that prints it, what its cut list and its order say, and what its
    plan does but for the pages of other files."""
    bare = replace(work, paged=Paged())
    files = {
        "plan.pdf": (plan_listing(bare),),
        "lists.pdf": (
            parts_listing(choose_parts(layout, cut)), order_listing(order, layout.job),
        ),
    }  # fmt: skip
    return {name: sha256(encode(lists)).hexdigest()[:LENGTH] for name, lists in files.items()}
