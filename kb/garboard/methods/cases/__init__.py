"""The cases that each method must reproduce, beside the method and apart from its figures.

A figure is typed once in the method and once here, from the publication both times, so that a
slip in either shows at the next build.
"""
