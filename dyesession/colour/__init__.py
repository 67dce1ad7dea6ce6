"""Colour as a dyer asks after it: readings, targets, differences, depth, overdyeing, mending, grey scales.

Pure functions of plain numbers; knows nothing of recipes, logs, screens or the time of day. One file,
`photo_file`, opens pictures and nothing else does. Each file names where its figures come from. All Lab are
CIELAB; a reading carries its illuminant and observer, and unlike ones are never mixed.
"""
