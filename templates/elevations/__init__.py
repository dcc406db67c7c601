"""Elevations: each wall drawn to scale."""
