"""The craft: spacing, measurement and string physics, in millimetres, newtons, g/m, hertz and cents."""
