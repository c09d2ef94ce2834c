"""The publications that methods rest on, by sort."""
