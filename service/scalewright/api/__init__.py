"""HTTP: the application, its limits, its problems and its routes."""
