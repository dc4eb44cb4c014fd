"""Further layouts of text PDFs."""

LAYOUTS = ()
