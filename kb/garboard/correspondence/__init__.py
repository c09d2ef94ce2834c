"""What goes out to reviewers, and what comes back from them."""
