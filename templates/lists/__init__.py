"""Lists: holes, parts and orders as text, CSV, JSON and workbooks."""
