"""What speed costs and saves, as ratios of both sides in one run; never an assertion of the test suite."""
