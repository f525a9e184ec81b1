"""The tests: one folder a part of the package, published/ for outside checks."""
