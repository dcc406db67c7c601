"""The cut list: every piece of board a kitchen is built from, with its true size and its place."""
