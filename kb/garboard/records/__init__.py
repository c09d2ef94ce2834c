"""What is recorded: frozen dataclasses, one a kind, and KINDS written by hand."""
