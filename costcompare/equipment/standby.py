"""What a machine takes beside its compressor: controls, crankcase heater, pan heater."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.equipment.machine import Machine, celsius

Array = NDArray[np.float64]

CRANKCASE_BELOW = celsius(55.0)
"""[degC] outdoors below which a crankcase heater warms a machine that stands still (judgement)"""
PAN_BELOW = 3.0
"""[degC] outdoors at and below which a pan heater runs with defrost (a published control
example)"""
PAN_SHARE = 0.25
"""Share of a heating hour in which it runs: a defrost and ten minutes after it (the minutes
from the same example, one defrost an hour by judgement)"""


def standby_power(
    unit: Machine, still: NDArray[np.bool_], heating: NDArray[np.bool_], outdoor: Array
) -> Array:
    """Standby power [W] by hour.

    ``still`` where the compressor does not run, ``heating`` where it heats, ``outdoor`` [degC].
    """
    crankcase = np.where(still & (outdoor < CRANKCASE_BELOW), unit.crankcase_power, 0.0)
    pan = np.where(heating & (outdoor <= PAN_BELOW), PAN_SHARE * unit.pan_power, 0.0)
    result: Array = unit.off_power + crankcase + pan
    return result
