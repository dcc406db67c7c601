"""The golden box laid out: a drawer over a left-hung door, for tests of what is printed."""

from jigs.box.parts import Layout
from jigs.given.catalogue import generic_hinges, generic_pulls, generic_slides
from jigs.given.job import BoxSpec, FrontSpec, Grid, Job, Material, Reveal, Use
from jigs.layout.layout import lay_out


def small_layout(box: str = "B1", name: str = "Lock-keeper's scullery") -> Layout:
    """Give it with inches as the job's unit."""
    hinge, slide, pull = "cup35-full", "undermount-533", "bar-160"
    return lay_out(
        Job(
            name=name,
            units="in",
            material=Material(side=18.3, front=19.05),
            reveal=Reveal(),
            increment=None,
            grid=Grid(),
            use=Use(hinge=hinge, slide=slide, drawer_pull=pull, door_pull=pull),
            hinges={hinge: generic_hinges()[hinge]},
            slides={slide: generic_slides()[slide]},
            pulls={pull: generic_pulls()[pull]},
            boxes=(
                BoxSpec(
                    id=box,
                    kind="base",
                    width=457.2,
                    height=774.7,
                    depth=584.2,
                    above_floor=101.6,
                    wall="north",
                    fronts=(
                        FrontSpec(id=f"{box}-1", kind="drawer", height=152.4),
                        FrontSpec(id=f"{box}-2", kind="door", hinged="left"),
                    ),
                ),
            ),
        )
    )
