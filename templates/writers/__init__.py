"""Pages of marks in, bytes out."""
