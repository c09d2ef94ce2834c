"""Text to records, with a place for every value."""
