"""Issued editions: frozen, laid out again, compared, proved."""
