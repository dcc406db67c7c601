"""One box planned: its fronts, columns, drawers, rollouts, shelves, and what is drilled."""
