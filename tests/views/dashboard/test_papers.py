"""What is left behind on the table, as the page hands it out."""

from __future__ import annotations

import html
from typing import Any

import pytest
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from costcompare.case import example_path, read_document
from costcompare.views.dashboard import make_app, workbench
from costcompare.views.dashboard.papers import BUTTONS, PAPERS
from costcompare.views.dashboard.visit.intake import taken_in
from costcompare.views.dashboard.workbench import Workbench
from costcompare.views.wording.sureness import range_answer

LOCAL = "http://127.0.0.1:8050"
DEMO = read_document(example_path("demo"))


@pytest.fixture(scope="module")
def client() -> FlaskClient:
    return make_app().server.test_client()


def ask(client: FlaskClient, paper: str, **changes: Any) -> TestResponse:
    body = {"document": {**taken_in(DEMO, DEMO), **changes}, "option": DEMO["options"][3]["name"]}
    return client.post(f"/papers/{paper}", base_url=LOCAL, json=body)


@pytest.mark.parametrize("paper", PAPERS)
def test_every_paper_is_a_file_with_a_safe_name(client: FlaskClient, paper: str) -> None:
    answer = ask(client, paper, title='../Home; "x"')
    assert answer.status_code == 200
    ending, kind, _maker = PAPERS[paper]
    assert answer.mimetype == kind
    assert answer.headers["Content-Disposition"] == f'attachment; filename="home-x-{ending}"'
    assert len(answer.data) > 2000
    assert answer.data.startswith(b"%PDF") is ending.endswith(".pdf")
    assert {key for key, _ in BUTTONS} == set(PAPERS)


def test_a_report_holds_ranges_once_they_are_there(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(workbench, "MEMBERS", 4)
    bench = Workbench({**DEMO, "options": DEMO["options"][:1], "money": {}})
    worked = bench.worked(bench.opened)
    _ending, _kind, made = PAPERS["report-html"]
    name = worked.comparison.choices[-1].name
    without = made(bench, worked, name)
    assert "without a range" in without
    assert "8 of 10" not in without
    share, whole = 0.0, None
    while whole is None:
        share, whole = bench.ranges_on(worked)
    assert share == 1.0
    ranged = made(bench, worked, name)
    assert "without a range" not in ranged
    assert html.escape(range_answer(whole), quote=False) in ranged


def test_what_cannot_be_made_is_said_in_words(client: FlaskClient) -> None:
    for paper in ("card", "contractor"):
        answer = ask(client, paper, options=[], money={})
        assert "add one first" in answer.json["faults"][0]
    assert ask(client, "report-pdf", house={}).json["faults"]
    assert ask(client, "nothing").status_code == 404
    assert client.post("/papers/card", base_url=LOCAL, json=[]).status_code == 400
