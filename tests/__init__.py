"""Tests of the package; a package itself, so that no installed one of its name comes first."""
