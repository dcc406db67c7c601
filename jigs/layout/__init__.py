"""Where plans and checks meet: plan, check, hold, finish.

Boxes are laid out one by one; `pullaims` says before that which pulls line up from box to box.
"""
