"""How fast the hourly model is, against an integrator and against a plain loop, on this machine.

measuring   all figures of a benchmark
integrated  the same home by scipy's solve_ivp
plain_loop  the same hours in Python and NumPy, uncompiled
machine     what the figures depend on
"""

from costcompare.benchmark.measuring import Benchmark, Ensemble, Growth, benchmark

__all__ = ["Benchmark", "Ensemble", "Growth", "benchmark"]
