"""The same examples at every run, and none kept in the folder."""

from hypothesis import settings

settings.register_profile("house", database=None, deadline=None, derandomize=True)
settings.load_profile("house")
