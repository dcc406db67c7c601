"""Long templates: strips in pieces, faces whole on long paper, story sticks.

A strip is found and parted by `strip`, drawn by `strippiece`, laid on pages by `strippage`. On
large paper a face is one card (`wholecard`), on a page that `longpage` cuts to length.
"""
