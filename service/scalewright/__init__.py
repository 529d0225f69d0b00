"""Scalewright: what scale a fretted board really has, and what follows from it."""

__version__ = "0.1.0"
