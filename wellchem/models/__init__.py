"""Types that every room speaks. This room knows nothing of the rooms above it."""
