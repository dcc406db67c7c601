"""Cards: the parts of a sheet that are laid on the wood.

`setout` chooses what a card is set on, `cardplan` finds a place for everything, `cardborder`,
`flap` (what stands beyond an edge) and `carddraw` draw it, `lettering` writes the distances;
`outlines` draws a face bare.
"""
