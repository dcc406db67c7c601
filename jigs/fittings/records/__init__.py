"""Generic hardware records as data; `jigs.fittings.catalogue` reads them."""
