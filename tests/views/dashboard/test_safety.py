"""What the server answers, refuses and tells browsers, without any browser."""

from __future__ import annotations

import json

import pytest
from flask.testing import FlaskClient

from costcompare.views.dashboard import make_app

LOCAL = "http://127.0.0.1:8050"


@pytest.fixture(scope="module")
def client() -> FlaskClient:
    return make_app().server.test_client()


def test_it_says_that_it_is_well(client: FlaskClient) -> None:
    answer = client.get("/healthz", base_url=LOCAL)
    assert (answer.status_code, answer.text) == (200, "OK")


def test_the_page_has_a_language_and_a_name(client: FlaskClient) -> None:
    page = client.get("/", base_url=LOCAL)
    assert '<html lang="en">' in page.text
    assert "<title>costcompare: what a home’s heating costs</title>" in page.text
    assert "http://" not in page.text
    assert "https://" not in page.text


@pytest.mark.parametrize("path", ["/", "/healthz", "/_dash-layout", "/assets/page.css"])
def test_everything_is_closed_to_other_places(client: FlaskClient, path: str) -> None:
    headers = client.get(path, base_url=LOCAL, buffered=True).headers
    policy = headers["Content-Security-Policy"]
    assert "default-src 'self'" in policy
    assert "frame-ancestors 'none'" in policy
    assert "unsafe-eval" not in policy
    assert "'unsafe-inline'" not in policy.split("script-src")[1].split(";")[0]
    assert headers["X-Content-Type-Options"] == "nosniff"
    assert headers["Referrer-Policy"] == "no-referrer"


def test_another_host_name_is_refused(client: FlaskClient) -> None:
    assert client.get("/", base_url="http://evil.example").status_code == 400
    shared = make_app(hosts=("kitchen-laptop",)).server.test_client()
    assert shared.get("/", base_url="http://kitchen-laptop:8050").status_code == 200


def test_another_site_may_not_send_anything(client: FlaskClient) -> None:
    for origin, status in (("http://evil.example", 403), (LOCAL, 200)):
        answer = client.get("/", base_url=LOCAL, headers={"Origin": origin})
        assert answer.status_code == status


def test_what_does_not_exist_is_not_found(client: FlaskClient) -> None:
    for path in ("/assets/../app.py", "/_dash-component-suites/os/path.py"):
        assert client.get(path, base_url=LOCAL).status_code == 404
    unknown = {"output": "nothing.children", "outputs": {"id": "nothing", "property": "children"}}
    answer = client.post("/_dash-update-component", base_url=LOCAL, json=unknown)
    assert answer.status_code == 404


def test_a_huge_request_is_refused(client: FlaskClient) -> None:
    answer = client.post(
        "/_dash-update-component",
        base_url=LOCAL,
        data="x" * (3 * 1024 * 1024),
        content_type="application/json",
    )
    assert answer.status_code == 413


def test_the_page_without_a_visitor_holds_nothing_of_the_case(client: FlaskClient) -> None:
    layout = client.get("/_dash-layout", base_url=LOCAL).text
    json.loads(layout)
    for word in ("invented", "furnace", "crawlspace", "$/kWh"):
        assert word not in layout


def test_no_other_door_is_open(client: FlaskClient) -> None:
    rules = {str(rule) for rule in client.application.url_map.iter_rules()}
    assert not [rule for rule in rules if "mcp" in rule]
