"""The room: where boxes stand along the walls, and what is seen of them.

Boxes are laid out one by one. `pullaims` says before that which pulls line up; `elevation` sees
the walls of what is laid out; whether all has room there, `jigs.checks.room` and `neighbours` ask.
"""
