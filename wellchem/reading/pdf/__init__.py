"""A PDF with text: from characters to words, rows and grids, by geometry (`document` is the way in)."""
