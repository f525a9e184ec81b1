"""Documents of the example home as a browser holds them."""

from __future__ import annotations

from typing import Any

import pytest

from costcompare.case import example_path, read_document
from costcompare.views.dashboard.visit.doors import Desk
from costcompare.views.dashboard.visit.intake import taken_in

Doc = dict[str, Any]


@pytest.fixture
def opened() -> Doc:
    document = read_document(example_path("demo"))
    return taken_in(document, document)


@pytest.fixture
def desk(opened: Doc) -> Desk:
    return Desk(opened, None)
