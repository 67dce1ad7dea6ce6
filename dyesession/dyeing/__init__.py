"""The trade's science as pure functions of plain numbers: baths, fibre, heat, water, weighing.

Knows nothing of recipes, files, screens or the time of day. Every file names where its figures come from.
"""
