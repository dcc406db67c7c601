"""The costly mistakes of a first kitchen, each planted in small jobs, and what must come of it."""
