"""Elevations: each wall drawn to scale.

`elevation` chooses scale and places of what `jigs.room.elevation` saw, `elevationbox` draws boxes,
`frontwords` finds room for words, `chains` draws the dimensions, `elevationtitle` the frame. A
mark's `layer` and `name` become class and ID in an SVG; on paper they are not seen. `hangpage` sets
the pages of a wall before its boxes are set: `hangdraw` draws it bare, `hanglist` words it.

`gapchart` and `wallgaps` draw the gap budget: each wall with its gaps marked by verdict, the worst
ten with what takes from them, the chance of the whole kitchen by its reveal; `screwpage` the screws
to turn. Black alone: a verdict is told by the line's pattern and a sign beside it, so that any
printer and any eye serves.
"""
