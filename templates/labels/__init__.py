"""Labels: one for each part, on sheets described by geometry."""
