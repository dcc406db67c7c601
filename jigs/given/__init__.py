"""What was said: the job as it was read, and its parts as values; nothing is computed here."""
