"""Circuits before and after, in sentences for a licensed electrician."""

from __future__ import annotations

from costcompare.sizing import Circuit, Electricity
from costcompare.views import numbers
from costcompare.views.wording.naming import capital, plural


def panel_answer(electricity: Electricity) -> str:
    """What goes, what comes, and the highest hours."""
    before = numbers.kilowatts(electricity.peak_before_kw)
    after = numbers.kilowatts(electricity.peak_after_kw)
    peak = (
        f"The highest hour of the year goes from {before} with today’s system kept as warm to "
        f"{after}; these are means over an hour of all electricity in the home, moments lie higher."
    )
    if not electricity.freed and not electricity.added:
        return f"No heating circuit goes or comes. {peak}"
    go = _circuits(electricity.freed_circuit_amps)
    come = _circuits(electricity.added_circuit_amps)
    return f"{capital(go)} go, {come} come (240 V). {peak}"


def _circuits(amps: float) -> str:
    return f"circuits for {numbers.amperes(amps)}" if amps > 0.0 else "no circuits"


def circuit_answer(circuit: Circuit, *, comes: bool) -> str:
    """One circuit that comes or goes."""
    verb = "comes" if comes else "goes"
    if circuit.amps is not None:
        return (
            f"{capital(circuit.machine)} {verb}: {numbers.amperes(circuit.amps)} at 240 V, "
            f"{numbers.amperes(circuit.circuit_amps)} with the 125 % of a continuous load, "
            f"on {_parts(circuit)} ({circuit.known}: {circuit.source})."
        )
    low, high = circuit.breaker_low_amps, circuit.breaker_high_amps
    assert low is not None
    assert high is not None
    breaker = f"{low:g} A" if low == high else f"{low:g} to {high:g} A"
    return (
        f"{capital(circuit.machine)} {verb}: reckon with "
        f"{numbers.amperes(circuit.circuit_amps)} and a breaker of {breaker} "
        f"({circuit.known}; the nameplate decides)."
    )


def _parts(circuit: Circuit) -> str:
    if circuit.parts == 1:
        return "one circuit"
    return (
        f"at least {circuit.parts} {plural(circuit.parts, 'circuit', 'circuits')} of at most 60 A"
    )
