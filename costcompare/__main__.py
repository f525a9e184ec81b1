"""``python -m costcompare`` is the ``costcompare`` command."""

from costcompare.cli import run

run()
