"""Whole documents in their order: the drilling sheets of a job, first page, contents."""
