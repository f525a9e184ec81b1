"""Cautions about the work itself."""

from __future__ import annotations

from .homes import HEATERS, cautions_of, heat_pump, improve


def test_every_proposal_is_work_for_licensed_trades() -> None:
    caution = cautions_of(HEATERS)["Licensed trades and local codes"]
    assert caution.because == "work on the house is proposed with “Heaters”"
    assert "an estimate" in caution.text
    assert "Licensed trades and local codes" not in cautions_of()


def test_a_manufactured_home_that_is_worked_on() -> None:
    place = {"foundation": "manufactured home"}
    found = cautions_of(heat_pump(), ducted=False, house=place)
    assert "“Pump”" in found["Manufactured home"].because
    warmer = improve(thermostat__day="70 F")
    assert "Manufactured home" not in cautions_of(warmer, ducted=False, house=place)
    assert "Manufactured home" not in cautions_of(heat_pump(), ducted=False)


def test_incentives_that_are_not_confirmed() -> None:
    def offered(*states: str) -> list[dict[str, str]]:
        return [
            {"name": f"rebate {n}", "amount": "500 $", "status": s} for n, s in enumerate(states)
        ]

    open_ones = {"incentives": offered("applied for", "confirmed", "unknown")}
    because = cautions_of(HEATERS, money=open_ones)["Incentives"].because
    assert "“rebate 0” (applied for) and “rebate 2” (unknown)" in because
    assert "rebate 1" not in because
    assert "Incentives" not in cautions_of(HEATERS, money={"incentives": offered("confirmed")})
