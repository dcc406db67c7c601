"""Long templates: strips in pieces, faces whole on long paper, story sticks.

A strip is found and parted by `strip`, laid on pages by `strippiece`, which gives each piece its
edge, its scale and its joins. On large paper a face is one card (`wholecard`). Either is a long
card, filled by `longcard` with the code and the words of all cards. `storystick` lays a stick on
pages, strip by strip (`stickstrip`).
"""
