"""Generic hardware records as data; `jigs.catalogue` reads them."""
