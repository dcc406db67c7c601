"""The ground: lengths, axes, the 32 mm grid, IDs, codes, errors, findings."""
