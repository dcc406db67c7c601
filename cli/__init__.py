"""The command `jigsheet`: read, call, write."""
