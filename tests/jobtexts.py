"""A job of boxes for tests of printed sheets: hardware stated, so that nothing is assumed."""

HEAD = """\
schema = 1
name = "Trial"
units = "mm"
[material]
side = 18.3
front = 19.05
front_kind = "hardwood"
front_density = 720
back = 6
band = 0.6
drawer_side = 15.9
[reveal]
side = 1.6
top = 3.2
bottom = 1.6
between = 3.2
[use]
hinge = "mine"
slide = "runner"
drawer_pull = "bar"
door_pull = "bar"
[hinge.mine]
like = "cup35-full"
constant = 15
plates = [0, 3]
tabs = [5]
cup_depth = 13
fixing_spacing = 45
fixing_inboard = 9.5
confirmed = "measured"
[slide.runner]
like = "undermount-533"
width_less = 42
depth_allowance = 16
drawer_shorter = 0
fixing_at = [37, 165]
carry_at = [261, 357]
fixing_height = 33
drawer_rise = 14
confirmed = "measured"
[pull.bar]
centers = 160
door_inset = 50.8
door_corner = 63.5
drawer = "center"
tall_height = 1000
two_from = 762
screws = "front"
confirmed = "measured"
"""


def box_text(name: str, kind: str, *fronts: str, more: str = "") -> str:
    """Write a golden box with these fronts, each the body of its table."""
    rows = "".join(f"[[box.front]]\n{front}\n" for front in fronts)
    up = 1370 if kind == "wall" else 100
    return (
        f'[[box]]\nid = "{name}"\nkind = "{kind}"\nwall = "north"\nwidth = 457.2\n'
        f"height = 774.7\ndepth = 584.2\nabove_floor = {up}\n{more}\n{rows}"
    )
