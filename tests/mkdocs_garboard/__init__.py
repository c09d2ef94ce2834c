"""Tests of the MkDocs adapter."""
