"""One sheet: its words, its pages, which cards share one."""
