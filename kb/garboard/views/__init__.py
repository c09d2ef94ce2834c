"""Plain page data: what stands on each page and in which order, without a word of HTML."""
