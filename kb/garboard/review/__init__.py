"""Whether what is written may be relied on: the review state of a page, in words with the reason."""
