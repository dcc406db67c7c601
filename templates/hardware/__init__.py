"""Hardware drawn with its letters, and the bench sheet."""
