"""Elevations: each wall drawn to scale.

`elevation` chooses scale and places of what `jigs.room.elevation` saw, `elevationbox` draws boxes,
`frontwords` finds room for words, `chains` draws the dimensions, `elevationtitle` the frame. A
mark's `layer` and `name` become class and ID in an SVG; on paper they are not seen. `hangpage` sets
the pages of a wall before its boxes are set: `hangdraw` draws it bare, `hanglist` words it.
"""
