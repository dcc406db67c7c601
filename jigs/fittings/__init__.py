"""One module a kind of fitting: hinge, plate, slide, hook, pull, fixing; generic records."""
