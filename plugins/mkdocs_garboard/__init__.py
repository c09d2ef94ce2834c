"""The adapter."""
