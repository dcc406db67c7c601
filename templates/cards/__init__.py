"""Cards: the parts of a sheet that are laid on the wood."""
