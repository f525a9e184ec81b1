"""How a command ends: done, refused with every reason, or failed without a traceback."""

from __future__ import annotations

import pytest
import typer
from typer.testing import CliRunner, Result

from costcompare.cli.frame import TRACE, command
from costcompare.errors import CaseError, Fault, SimulationError


def ending_with(error: Exception) -> Result:
    """The end of a command whose work raises that error."""
    app = typer.Typer()

    @command(app, "work", "costcompare work")
    def work() -> None:
        """Work."""
        raise error

    return CliRunner().invoke(app, [])


def test_wrong_input_is_two_with_every_reason() -> None:
    faults = [
        Fault("rooms.hall.floor_area", "must be more than 0 ft2", "-3 ft2", '"380 ft2"'),
        Fault("tariff.tax", "must lie between 0 % and 100 %"),
    ]
    result = ending_with(CaseError(faults))
    assert result.exit_code == 2
    assert result.stdout == ""
    assert result.stderr.splitlines() == [
        "2 things are wrong:",
        '  rooms.hall.floor_area: must be more than 0 ft2 (given: -3 ft2). Write "380 ft2".',
        "  tariff.tax: must lie between 0 % and 100 %.",
    ]


def test_one_fault_is_one_thing() -> None:
    result = ending_with(CaseError([Fault("format", "must be 1")]))
    assert result.stderr.splitlines()[0] == "One thing is wrong:"


def test_a_model_without_an_answer_is_one() -> None:
    result = ending_with(SimulationError("No balance was found in hour 4,012."))
    assert result.exit_code == 1
    assert result.stderr == "costcompare could not finish. No balance was found in hour 4,012.\n"


def test_a_fault_of_the_program_is_told_without_a_traceback(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.delenv(TRACE, raising=False)
    result = ending_with(ZeroDivisionError("division by zero"))
    assert result.exit_code == 1
    assert result.stdout == ""
    assert "ZeroDivisionError: division by zero" in result.stderr
    assert f"{TRACE}=1" in result.stderr
    assert "Traceback" not in result.stderr


def test_a_developer_can_ask_where_it_happened(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(TRACE, "1")
    assert isinstance(ending_with(ZeroDivisionError()).exception, ZeroDivisionError)
