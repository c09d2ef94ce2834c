"""The drawing of a system: its graph placed, routed and labelled on sheets, and the sheets as SVG.

Start with `sheet.py`: what stands on a sheet, as plain data between placing (`lay_out_sheets`) and drawing.
"""
