"""Tests of a delivery: its list, its matching, its taking in hand."""
