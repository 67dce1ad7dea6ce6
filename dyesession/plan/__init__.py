"""The plan: recipe, lots and kitchen in; doses, water, pots and timetable out. Knows no files or screens."""
