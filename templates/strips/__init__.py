"""Long templates: strips in pieces, faces whole on long paper, story sticks.

A strip is found and parted by `strip`, drawn by `strippiece`, laid on pages by `strippage`. On
large paper a face is one card (`wholecard`). `storystick` lays a stick on pages, strip by strip
(`stickstrip`).
"""
