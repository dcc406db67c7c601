"""Generic hardware records as data; `jigs.given.catalogue` reads them."""
