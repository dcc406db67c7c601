"""The room: where boxes stand along the walls, and what is seen of them.

Boxes are laid out one by one. `pullaims` says before that which pulls line up; `elevation` sees
the walls of what is laid out; whether all has room there, `jigs.checks.room` and `neighbours` ask.
How a wall is set says `hanging`: its order, and what each box gets then; its lines and its sums
are in `wallmeasures`.
"""
