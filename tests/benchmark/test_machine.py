"""The machine says what it is; its peak is a speed."""

from __future__ import annotations

from costcompare.benchmark.machine import computer, memory_mb, peak_flops


def test_the_machine_is_named() -> None:
    one = computer()
    assert one.processor
    assert one.cores >= 1


def test_memory_never_exceeds_its_peak() -> None:
    resident, peak = memory_mb()
    assert not resident > peak * 1.01


def test_peak_is_a_speed() -> None:
    assert peak_flops() > 1e8
