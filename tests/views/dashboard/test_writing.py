"""Every amount on the page stands in the money of its case, whoever asks for it."""

from __future__ import annotations

from typing import Any

import pytest
from dash import Dash
from flask.testing import FlaskClient

from costcompare.case import example_path, read_document
from costcompare.comparison import AS_WANTED
from costcompare.views.dashboard import make_app, workbench
from costcompare.views.dashboard.onlookers import CONTRACTOR
from costcompare.views.dashboard.visit.intake import taken_in

LOCAL = "http://127.0.0.1:8050"
ANSWERED_BY_SERVER = {"worked.data", "document.data", "sweep-on.data", "range-on.data"}


@pytest.fixture(scope="module")
def document() -> dict[str, Any]:
    read = read_document(example_path("demo"))
    found: dict[str, Any] = taken_in(read, read)
    found["tariff"]["currency"] = "CHF"
    found["options"] = found["options"][:2]
    found["money"]["incentives"] = []
    return found


def filled(places: list[dict[str, str]], document: dict[str, Any]) -> list[dict[str, Any]]:
    option = document["options"][0]["name"]
    held = {
        "worked.data": {"key": "", "document": document},
        "document.data": document,
        "choice.value": option,
        "view.data": CONTRACTOR,
        "running-warmth.value": AS_WANTED,
        "money-warmth.value": AS_WANTED,
    }
    return [{**place, "value": held.get(f"{place['id']}.{place['property']}")} for place in places]


def outputs_of(output: str) -> list[dict[str, str]]:
    names = [one.rsplit(".", 1) for one in output.strip(".").split("...")]
    return [{"id": one, "property": prop.split("@")[0]} for one, prop in names]


def answers(app: Dash, client: FlaskClient, document: dict[str, Any]) -> dict[str, str]:
    """What the server fills into the page, by the output of each callback."""
    found = {}
    for callback in client.get("/_dash-dependencies", base_url=LOCAL).get_json():
        inputs = [f"{one['id']}.{one['property']}" for one in callback["inputs"]]
        if callback.get("clientside_function") or not ANSWERED_BY_SERVER & set(inputs):
            continue
        outputs = outputs_of(callback["output"])
        asked = {
            "output": callback["output"],
            "outputs": outputs if callback["output"].startswith("..") else outputs[0],
            "inputs": filled(callback["inputs"], document),
            "state": filled(callback["state"], document),
            "changedPropIds": inputs[:1],
        }
        going_on = "sweep-on.data" in inputs or "range-on.data" in inputs
        text = ""
        while not text or (going_on and "-answer" not in text and "-table-tree" not in text):
            answer = client.post("/_dash-update-component", json=asked, base_url=LOCAL)
            text = answer.get_data(as_text=True)
            assert answer.status_code == 200, text
        found[callback["output"]] = text
    assert len(app.callback_map) > len(found) > 7
    return found


def test_no_amount_stands_in_dollars_where_the_case_has_other_money(
    document: dict[str, Any], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(workbench, "MEMBERS", 2)
    app = make_app(document)
    found = answers(app, app.server.test_client(), document)
    documents = [output for output in found if "worked.data" in output]
    assert len(documents) == 1, "the case itself goes back as it came"
    together = "".join(text for output, text in found.items() if output not in documents)
    for place in ("bill-answer", "running-answer", "money-answer", "setting-table", "range-answer"):
        (text,) = [text for output, text in found.items() if place in output]
        assert "CHF" in text, place
    assert "$" not in together
    assert "CHF/kWh" in together or "CHF\\u002fkWh" in together, "among the facts"


def test_the_form_asks_in_the_money_of_the_case(document: dict[str, Any]) -> None:
    client = make_app(document).server.test_client()
    answer = client.post("/visit/form", json={"document": document}, base_url=LOCAL)
    text = answer.get_data(as_text=True)
    assert "Fixed charge, CHF/month" in text
    assert "Fixed charge, $/month" not in text
