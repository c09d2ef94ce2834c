"""The core."""
