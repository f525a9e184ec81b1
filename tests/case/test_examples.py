"""The examples are whole cases."""

import pytest

from costcompare.case import example_names, example_path, read_case


@pytest.mark.parametrize("name", example_names())
def test_an_example_reads_into_a_whole_case(name: str) -> None:
    case = read_case(example_path(name))
    assert len(case.home.rooms) >= 7
    assert len(case.options) >= 3
    assert case.today.ducts is not None
    assert sum(room.use_share for room in case.home.rooms) == pytest.approx(1.0)
    assert sum(case.today.registers.values()) == pytest.approx(1.0)
