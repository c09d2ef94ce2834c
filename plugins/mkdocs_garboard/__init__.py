"""The MkDocs adapter of garboard: pages of the handbook drawn, linked, found and checked.

It decides nothing about boats. What is on a page comes from the core as plain data; here it gets a
face: our own theme, our own search, photos made small, and a check of the finished site.
"""
