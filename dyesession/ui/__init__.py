"""The Textual screens: they draw what they are handed and say what was pressed; they compute nothing."""
