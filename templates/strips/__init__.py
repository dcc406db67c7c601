"""Long templates: strips in pieces, faces whole on long paper, story sticks."""
