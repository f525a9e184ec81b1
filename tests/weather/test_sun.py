"""Sun on walls, roof and glass."""

from __future__ import annotations

import numpy as np
import pandas as pd
import pytest

from costcompare.weather.sun import (
    ORDER,
    Sun,
    diffuse_response,
    glass_response,
    sun_on,
    sun_position,
    through_glass,
)
from costcompare.weather.table import HOURS, Weather, checked, hours_of_year


def weather_with(frame: pd.DataFrame, latitude: float = 48.8) -> Weather:
    return checked(
        frame,
        latitude=latitude,
        longitude=-122.5,
        elevation=45.0,
        source="file",
        station="made.csv",
    )


@pytest.fixture
def clear_sun(plain_frame: pd.DataFrame) -> Sun:
    return sun_on(weather_with(plain_frame))


def test_shapes_and_no_negative_or_missing_value(clear_sun: Sun) -> None:
    assert clear_sun.walls.shape == (HOURS, len(ORDER))
    assert clear_sun.roof.shape == (HOURS,)
    assert np.isfinite(clear_sun.walls).all()
    assert clear_sun.walls.min() >= 0.0


def test_no_wall_gets_more_than_the_sun_and_sky_can_give(clear_sun: Sun) -> None:
    # 400 straight on, 100 of sky bundled towards the sun at most a few times, 30 of ground
    assert clear_sun.beam.max() <= 400.0
    assert clear_sun.walls.max() < 400.0 + 3.0 * 100.0 + 30.0


def test_parts_add_up(clear_sun: Sun) -> None:
    parts = clear_sun.beam + clear_sun.sky + clear_sun.ground[:, None]
    np.testing.assert_allclose(clear_sun.walls, parts)


def test_dark_hours_have_no_sun(plain_frame: pd.DataFrame, clear_sun: Sun) -> None:
    dark = (plain_frame["ghi_w_m2"] == 0.0).to_numpy()
    assert clear_sun.walls[dark].max() == 0.0
    assert clear_sun.roof[dark].max() == 0.0


def test_morning_sun_is_in_the_east_and_winter_noon_sun_in_the_south(clear_sun: Sun) -> None:
    hours = hours_of_year(2027, -8.0)
    at = {name: column for column, name in enumerate(ORDER)}
    june_morning = hours.get_loc("2027-06-21 08:00")
    assert clear_sun.beam[june_morning, at["east"]] > 250.0
    assert clear_sun.beam[june_morning, at["west"]] == 0.0
    noon = hours.get_loc("2027-12-21 12:00")
    # by hand: height at noon 90 - 48.8 - 23.4 = 17.8 degrees, cos 17.8 = 0.952
    assert clear_sun.beam[noon, at["south"]] == pytest.approx(400.0 * 0.952, rel=0.02)
    assert clear_sun.beam[noon, at["north"]] == 0.0


def test_south_of_the_equator_the_north_wall_has_the_winter_sun(plain_frame: pd.DataFrame) -> None:
    sun = sun_on(weather_with(plain_frame, latitude=-40.0))
    north, south = ORDER.index("north"), ORDER.index("south")
    assert sun.beam[:, north].sum() > 3.0 * sun.beam[:, south].sum()


def test_twilight_comes_evenly_from_the_sky(plain_frame: pd.DataFrame) -> None:
    frame = plain_frame.copy()
    frame[["ghi_w_m2", "dni_w_m2", "dhi_w_m2"]] = 0.0
    frame.iloc[0, frame.columns.get_indexer(["ghi_w_m2", "dni_w_m2", "dhi_w_m2"])] = (8, 900, 8)
    sun = sun_on(weather_with(frame))  # midnight in January: no beam, whatever the table says
    np.testing.assert_allclose(sun.walls[0], 0.5 * 8.0 + 0.5 * 0.2 * 8.0)


def test_an_hour_with_sunrise_has_the_sun_above_the_horizon() -> None:
    hours = hours_of_year(2027, -8.0)
    position = sun_position(hours, latitude=48.8, longitude=-122.5, elevation=45.0)
    edge = (position.share_up > 0.0) & (position.share_up < 1.0)
    assert edge.sum() == 2 * 365
    assert position.zenith[edge].max() < 90.0
    assert position.share_up.sum() == pytest.approx(HOURS / 2, rel=0.03)  # half of a year is day


@pytest.mark.parametrize("panes", [1, 2, 3])
def test_glass_passes_all_straight_on_and_nothing_along_it(panes: int) -> None:
    angle = np.arange(0.0, 181.0, 1.0)
    response = glass_response(angle, panes)
    assert response[0] == pytest.approx(1.0)
    assert response[90:].max() < 1e-9
    assert (np.diff(response[:91]) <= 1e-12).all()


def test_more_panes_pass_less() -> None:
    diffuse = [diffuse_response(panes) for panes in (1, 2, 3)]
    assert diffuse == sorted(diffuse, reverse=True)
    assert diffuse[0] < 1.0
    assert diffuse[2] > 0.7


def test_through_glass_is_less_than_on_the_wall(clear_sun: Sun) -> None:
    passed = through_glass(clear_sun, 2)
    assert passed.shape == clear_sun.walls.shape
    assert (passed <= clear_sun.walls).all()
    assert passed.sum() > 0.75 * clear_sun.walls.sum()


def test_only_one_to_three_panes() -> None:
    with pytest.raises(ValueError, match="panes must be 1, 2 or 3"):
        glass_response(np.zeros(1), 4)
