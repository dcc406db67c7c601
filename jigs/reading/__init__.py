"""Reading what the person wrote: job files and front lists become a `Job`, all faults at once."""
