"""An hour of all surfaces: what they give to the air, and how they take up its answer."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from costcompare.physics.compiled import compiled_inside
from costcompare.simulation.network import NO_LOAD, Chains
from costcompare.simulation.state import Memory

Floats = NDArray[np.float64]


@compiled_inside
def surfaces_forward(chains: Chains, boundary: Floats, sun: Floats, m: Memory, dark: bool) -> None:
    """Temperatures of the faces with nothing at their unknown ends, into ``m.face``.

    Adds what the faces then give to the air and radiant nodes [W]. No sun is looked for while
    it is ``dark``, and was the hour before. Rows of modes are taken as
    slices: the compiler then sees that they can be done eight at a time.
    """
    count = chains.face_first.shape[0]
    face, given, modes = m.face, m.given, m.modes
    for k in range(chains.outer_end.shape[0]):
        given[chains.outer_end[k]] = chains.outer_value[k] * boundary[chains.outer_column[k]]
    if not dark:
        for k in range(chains.lit_end.shape[0]):
            given[chains.lit_end[k]] = chains.lit_share[k] * sun[chains.lit_room[k]]
    for c in range(count):
        at_first, at_last = given[c], given[count + c]
        face[c] = chains.face_first[c] * at_first + chains.through[c] * at_last
        face[count + c] = chains.through[c] * at_first + chains.face_last[c] * at_last
    face_last = face[count:]
    for k in range(chains.row.shape[0] - 1):
        start, stop = chains.row[k], chains.row[k + 1]
        mode, first, last = modes[start:stop], chains.first[start:stop], chains.last[start:stop]
        for c in range(mode.shape[0]):
            face[c] += first[c] * mode[c]
        for c in range(mode.shape[0]):
            face_last[c] += last[c] * mode[c]
    for node in range(m.node.shape[0]):
        by_air, by_radiation = 0.0, 0.0
        for k in range(chains.touch_row[node], chains.touch_row[node + 1]):
            temperature = face[chains.touch_end[k]]
            by_air += chains.touch_air_back[k] * temperature
            by_radiation += chains.touch_radiant_back[k] * temperature
        m.into_air[node] += by_air
        m.into_radiant[node] += by_radiation  # nothing, where a space has no radiant node


@compiled_inside
def surfaces_finish(chains: Chains, m: Memory) -> None:
    """The modes once air and radiant nodes are known."""
    count = chains.face_first.shape[0]
    drive, modes = m.drive, m.modes
    for e in range(2 * count):
        drive[e] = m.given[e]
    for node in range(m.node.shape[0]):
        air, radiant = m.node[node], m.radiant[node]
        for k in range(chains.touch_row[node], chains.touch_row[node + 1]):
            drive[chains.touch_end[k]] += (
                chains.touch_air[k] * air + chains.touch_radiant[k] * radiant
            )
    drive_last = drive[count:]
    for k in range(chains.row.shape[0] - 1):
        start, stop = chains.row[k], chains.row[k + 1]
        mode, first, last = modes[start:stop], chains.first[start:stop], chains.last[start:stop]
        decay = chains.decay[start:stop]
        for c in range(mode.shape[0]):
            mode[c] = decay[c] * mode[c] + first[c] * drive[c] + last[c] * drive_last[c]


@compiled_inside
def surface_content(chains: Chains, m: Memory) -> float:
    """Heat in the surfaces over the time step, for 0 degC [W]."""
    first, second = chains.stored, m.modes
    # Eight sums need not wait for each other.
    a, b, c, d, e, f, g, h = 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0
    eights = first.shape[0] // 8 * 8
    for k in range(0, eights, 8):
        a += first[k] * second[k]
        b += first[k + 1] * second[k + 1]
        c += first[k + 2] * second[k + 2]
        d += first[k + 3] * second[k + 3]
        e += first[k + 4] * second[k + 4]
        f += first[k + 5] * second[k + 5]
        g += first[k + 6] * second[k + 6]
        h += first[k + 7] * second[k + 7]
    for k in range(eights, first.shape[0]):
        a += first[k] * second[k]
    return ((a + b) + (c + d)) + ((e + f) + (g + h))


@compiled_inside
def faces_reached(chains: Chains, m: Memory) -> None:
    """Mean temperatures of the faces over the hour, into ``m.face``.

    Comes after :func:`surfaces_finish`, and before the next hour.
    """
    count = chains.face_first.shape[0]
    for c in range(count):
        at_first = m.drive[c] - m.given[c]
        at_last = m.drive[count + c] - m.given[count + c]
        m.face[c] += chains.face_first[c] * at_first + chains.through[c] * at_last
        m.face[count + c] += chains.through[c] * at_first + chains.face_last[c] * at_last


@compiled_inside
def surface_loads(chains: Chains, m: Memory, load: Floats) -> float:
    """Add the rooms' heat into surfaces to ``load`` by part; returns the twin's difference [W].

    The heat of a face is that from air, radiation and sun. The difference is what the rooms
    would lose more into the duct space without ducts.
    """
    difference = 0.0
    for k in range(chains.load_end.shape[0]):
        end, part = chains.load_end[k], chains.load_part[k]
        heat = m.drive[end] - chains.load_value[k] * m.face[end]
        difference += chains.load_twin[k] * heat
        if part != NO_LOAD:
            load[part] += heat * chains.load_back[k]
    return difference


@compiled_inside
def stored_and_crossed(chains: Chains, m: Memory) -> float:
    """Heat that crossed the boundaries into the surfaces, less what they stored [W].

    The twin's surfaces do not count. ``m.content`` holds what was in them before.
    """
    total: float = m.content[0] - surface_content(chains, m)
    for k in range(chains.crossing):
        end = chains.outer_end[k]
        total += m.given[end] - chains.outer_value[k] * m.face[end]
    return total
