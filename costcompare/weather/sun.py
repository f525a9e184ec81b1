"""Sun on the four walls and the roof, and what of it passes through window glass.

Beam by the angle of incidence, diffuse by the sky model of Perez et al. (1990), "Modeling
daylight availability and irradiance components from direct and global irradiance", Solar
Energy 44(5), 271-289, as pvlib computes it; light from the ground by an even albedo.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import NamedTuple

import numpy as np
import pandas as pd
from pvlib import atmosphere, iam, irradiance, solarposition

from costcompare.weather.table import Weather

ORDER = ("north", "east", "south", "west")
"""What the columns of every wall array face."""

AZIMUTHS = (0.0, 90.0, 180.0, 270.0)
"""[degrees clockwise from north]"""

GROUND_ALBEDO = 0.2
"""Share of the sun that the ground throws back; common practice for grass and soil, no snow."""

GLASS_INDEX = 1.526
"""Refractive index of window glass; Duffie and Beckman, Solar Engineering of Thermal
Processes (from memory)."""

GLASS_EXTINCTION = 30.0
"""[1/m] of ordinary clear glass: between 4 (water white) and 32 (greenish edge), Duffie and
Beckman (from memory)."""

GLASS_THICKNESS = 0.003
"""[m] of one pane, common practice"""


class SunPosition(NamedTuple):
    """Where the sun stands in each hour, at the middle of the part with the sun up."""

    zenith: np.ndarray
    """Seen from the ground, with refraction [degrees]"""
    azimuth: np.ndarray
    """[degrees clockwise from north]"""
    share_up: np.ndarray
    """Share of the hour in which the sun is up"""


@dataclass(frozen=True)
class Sun:
    """Hourly sun on a building; wall arrays are (8760, 4) in the order of :data:`ORDER`."""

    walls: np.ndarray
    """All sun on an upright wall [W/m2], shape (8760, 4)"""
    roof: np.ndarray
    """All sun on a level roof [W/m2], shape (8760,)"""
    beam: np.ndarray
    """The part of ``walls`` straight from the sun [W/m2]"""
    sky: np.ndarray
    """The part of ``walls`` from the sky [W/m2]"""
    ground: np.ndarray
    """The part of ``walls`` from the ground [W/m2], the same for all four, shape (8760,)"""
    incidence: np.ndarray
    """Angle between the sun and the outward normal of the wall [degrees], shape (8760, 4)"""


def sun_position(
    hours: pd.DatetimeIndex, *, latitude: float, longitude: float, elevation: float
) -> SunPosition:
    """The sun at mid-hour; where it rises or sets within the hour, midway while it is up.

    Without the second half of that rule an hour with sunrise at its end would take its
    light from a sun below the horizon.
    """
    stamps = pd.DatetimeIndex(hours.append(hours[-1:] + pd.Timedelta(hours=1)))
    place = (latitude, longitude, elevation)
    height = solarposition.get_solarposition(stamps, *place)["apparent_elevation"].to_numpy()
    # The end of an hour is the next stamp. Where 29 February is left out the stamp after
    # 28 February 23:00 is a day late, which changes the sun's height by a fraction of a degree.
    begin, end = height[:-1], height[1:]
    rises = (begin < 0.0) & (end >= 0.0)
    sets = (begin >= 0.0) & (end < 0.0)
    crossing = np.divide(begin, begin - end, out=np.zeros_like(begin), where=rises | sets)
    middle = np.where(rises, 0.5 * (1.0 + crossing), np.where(sets, 0.5 * crossing, 0.5))
    share = np.where(
        rises, 1.0 - crossing, np.where(sets, crossing, np.where(begin >= 0.0, 1.0, 0.0))
    )
    moments = hours + pd.to_timedelta(np.round(middle * 3600.0), unit="s")
    there = solarposition.get_solarposition(moments, *place)
    return SunPosition(
        zenith=there["apparent_zenith"].to_numpy(),
        azimuth=there["azimuth"].to_numpy(),
        share_up=share,
    )


def sun_on(weather: Weather, *, albedo: float = GROUND_ALBEDO) -> Sun:
    """Sun on upright walls facing the four ways and on a level roof.

    Light of hours whose sun is below the horizon all hour (twilight) comes evenly from the
    whole sky. Nothing is negative.
    """
    hours = pd.DatetimeIndex(weather.table.index)
    ghi, dni, dhi = (weather.column(name) for name in ("ghi_w_m2", "dni_w_m2", "dhi_w_m2"))
    position = sun_position(
        hours,
        latitude=weather.latitude,
        longitude=weather.longitude,
        elevation=weather.elevation,
    )
    is_up = position.zenith < 90.0
    extra = irradiance.get_extra_radiation(hours).to_numpy()
    airmass = atmosphere.get_relative_airmass(position.zenith)
    beam, sky, incidence = (np.zeros((len(hours), len(ORDER))) for _ in range(3))
    for column, azimuth in enumerate(AZIMUTHS):
        angle = irradiance.aoi(90.0, azimuth, position.zenith, position.azimuth)
        incidence[:, column] = angle
        beam[:, column] = np.where(is_up, dni * np.maximum(np.cos(np.radians(angle)), 0.0), 0.0)
        perez = irradiance.perez(
            90.0, azimuth, dhi, dni, extra, position.zenith, position.azimuth, airmass
        )
        sky[:, column] = np.where(is_up & np.isfinite(perez), perez, 0.5 * dhi)
    ground = 0.5 * albedo * ghi
    return Sun(
        walls=beam + sky + ground[:, None],
        roof=ghi.copy(),
        beam=beam,
        sky=sky,
        ground=ground,
        incidence=incidence,
    )


def glass_response(incidence: np.ndarray, panes: int) -> np.ndarray:
    """Share of the beam that passes at an angle [degrees], against straight on.

    One pane by Fresnel and Bouguer (``pvlib.iam.physical``), more panes as its power: the
    light thrown to and fro between panes and the inward part of what they absorb are left
    out, so this is an approximation. Zero from 90 degrees on.
    """
    if panes not in (1, 2, 3):
        raise ValueError(f"panes must be 1, 2 or 3 (given: {panes})")
    one = iam.physical(incidence, n=GLASS_INDEX, K=GLASS_EXTINCTION, L=GLASS_THICKNESS)
    return np.asarray(np.clip(np.nan_to_num(one), 0.0, 1.0) ** panes, dtype=float)


@cache
def diffuse_response(panes: int) -> float:
    """Response of the glass to light that comes evenly from all of a hemisphere.

    The integral of response(a) sin(2a) over the angle a from 0 to 90 degrees. It holds for
    the even half hemispheres of sky and ground before an upright window as well, because a
    half turn about the normal leaves the angle as it is.
    """
    steps = 900
    angle = (np.arange(steps) + 0.5) * (90.0 / steps)
    weight = np.sin(np.radians(2.0 * angle))
    return float(np.sum(glass_response(angle, panes) * weight) / np.sum(weight))


def through_glass(sun: Sun, panes: int) -> np.ndarray:
    """Sun on windows in the four walls weighted by the glass's angular response [W/m2].

    Shape (8760, 4). Heat let in = solar heat gain coefficient x area x this.
    """
    diffuse = diffuse_response(panes)
    beam = sun.beam * glass_response(sun.incidence, panes)
    return np.asarray(beam + diffuse * (sun.sky + sun.ground[:, None]), dtype=float)
