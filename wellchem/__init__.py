"""wellchem."""
