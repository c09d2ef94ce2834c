"""Our own theme: a drawing sheet with a title block, not a website."""
