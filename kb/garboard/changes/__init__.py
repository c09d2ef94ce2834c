"""What a change reaches: what follows from a number, where else, what differs between two books."""
