"""A system as a graph: what a valve can do to it, how a part is made safe, what a procedure walks through.

Start with `plant.py` (what the parts and pipes are) and `search.py` (the four searches). A check is a
question to an `Enquiry`; `survey.py` asks them all.
"""
