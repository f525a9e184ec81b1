"""The plan of the rooms as it goes onto the page."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import example_names, example_path, read_document
from costcompare.comparison import AS_WANTED
from costcompare.views import numbers
from costcompare.views.dashboard.filling_plan import plan_part
from costcompare.views.dashboard.pieces import texts
from costcompare.views.dashboard.workbench import Workbench, Worked
from costcompare.views.wording.naming import choosable


@pytest.fixture(scope="module", params=example_names())
def worked(request: pytest.FixtureRequest) -> Worked:
    document: dict[str, Any] = read_document(example_path(request.param))
    return Workbench(document).worked(document)


def test_every_room_is_drawn_twice_with_the_figures_of_the_result(worked: Worked) -> None:
    name = choosable(worked.comparison)[0]
    part = plan_part(worked, name)
    assert isinstance(part["plan"], dict)
    now, after = part["plan"]["inside"]
    for tree, choice in (
        (now, worked.comparison.today),
        (after, worked.comparison.choice(name, AS_WANTED)),
    ):
        shown = texts(tree)
        for room in choice.rooms:
            at = shown.index(room.name[:1].upper() + room.name[1:])
            assert shown[at + 1] == numbers.degrees(room.minimum_temperature_degf)
            cold = f"{numbers.count(room.cold_hours)} h cold" if room.wanted_hours else "not used"
            assert shown[at + 2] == cold
            assert cold in str(part["plan_figure"])
    assert "not a survey" in str(part["plan_note"])
