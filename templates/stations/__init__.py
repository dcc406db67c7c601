"""Stations: a page for each setting of the drill, with its cards and all parts that it serves."""
