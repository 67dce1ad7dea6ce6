"""One day at the stove: facts in, state out. Never knows the screen, the wall clock, or an estimate."""
