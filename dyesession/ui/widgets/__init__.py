"""The parts of the Stove: each draws one part of the view it is handed, and posts what was touched."""
