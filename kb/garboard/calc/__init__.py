"""Numbers: the calculation language, its kinds, and the network of values that it makes."""
