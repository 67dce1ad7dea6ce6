"""dyesession: work out, run and record a day of natural dyeing at a kitchen stove."""

__version__ = "0.1.0"
