"""A thousand requests that nobody should send: a sentence each, and the page goes on.

Documents that are wrong in random places, answers of random letters, files that are no cases,
callbacks of random values: drawn from one seed, sent to the addresses as any program could.
"""

from __future__ import annotations

import json
import logging
import random
from collections.abc import Callable
from typing import Any

import pytest
from dash import Dash
from werkzeug.test import TestResponse

from costcompare.case import case_text, example_path, read_document
from costcompare.views.dashboard import make_app
from costcompare.views.dashboard.papers import PAPERS
from costcompare.views.dashboard.visit.deeds import DEEDS
from costcompare.views.dashboard.visit.intake import taken_in

LOCAL = "http://127.0.0.1:8050"
REQUESTS = 1000
SEED = 20270115
DEMO = taken_in(read_document(example_path("demo")), {})
ODD: tuple[Any, ...] = (
    None,
    True,
    -1,
    0,
    10**30,
    1e308,
    "",
    " ",
    "68",
    "1e999 F",
    "-40 ft2",
    "NaN",
    "'; DROP TABLE homes; --",
    "<script>alert(1)</script>",
    "{{7*7}}",
    "../../etc/passwd",
    "\u202eevil",
    "\x00\x07",
    "é" * 300,
    "=cmd()",
    [],
    [[[[[]]]]],
    {},
    {"likely": "1 ft2", "low": [], "known": "heard"},
    {"likely": {"likely": {}}},
)
"""Values that do not belong where they are put"""
KNOWN = ("seen", "measured", "guessed", "unknown", "heard", None)

Send = Callable[[str, Any], TestResponse]


@pytest.fixture(scope="module")
def app() -> Dash:
    return make_app()


def broken(chance: random.Random) -> dict[str, Any]:
    """The example's document with odd values in one to four places; one of them always a fault."""
    document: dict[str, Any] = json.loads(json.dumps(DEMO))
    document["house"]["built"] = "some time ago"  # never a home that would be worked out
    for _ in range(chance.randint(1, 4)):
        place: Any = document
        while True:
            keys = list(place) if isinstance(place, dict) else list(range(len(place)))
            if not keys:
                break
            key = chance.choice(keys)
            if isinstance(place[key], dict | list) and place[key] and chance.random() < 0.7:
                place = place[key]
                continue
            place[key] = chance.choice(ODD)
            break
    document.setdefault("hous", chance.choice(ODD))
    return document


def any_at(chance: random.Random) -> Any:
    steps = ("house", "rooms", "options", "built", "set", "name", 0, 1, -1, 10**9, "", '"', "a.b")
    length = chance.randint(0, 9)
    return chance.choice(([chance.choice(steps) for _ in range(length)], chance.choice(ODD)))


def form_request(chance: random.Random) -> tuple[str, Any]:
    edit = {
        "do": chance.choice([*DEEDS, "harm", None]),
        "at": any_at(chance),
        "text": chance.choice(ODD),
        "known": chance.choice(KNOWN),
    }
    document = chance.choice((DEMO, broken(chance), chance.choice(ODD)))
    door = chance.choice(("change", "change", "change", "form", "save"))
    asked = {"document": document, "edit": edit, "trial": chance.choice(ODD)}
    return f"/visit/{door}", chance.choice((asked, asked, asked, chance.choice(ODD)))


def file_request(chance: random.Random) -> tuple[str, Any]:
    text = case_text(DEMO)
    cut = chance.randrange(len(text))
    noise = "".join(chr(chance.randrange(1, 0x2FF)) for _ in range(chance.randint(1, 30)))
    files = (text[:cut], text[:cut] + noise + text[cut:], noise, "[" * 9000, "a." * 3000 + "b=1")
    name = str(chance.choice(ODD))
    return "/visit/open", {"name": name, "text": chance.choice((*files, chance.choice(ODD)))}


def paper_request(chance: random.Random) -> tuple[str, Any]:
    paper = chance.choice([*PAPERS, "nothing", "../report-pdf"])
    return f"/papers/{paper}", {"document": broken(chance), "option": chance.choice(ODD)}


def callback_request(chance: random.Random, app: Dash) -> tuple[str, Any]:
    output = chance.choice([*app.callback_map, "nothing.children", "", "..a.b...c.d.."])
    known = app.callback_map.get(output, {})

    def filled(given: Any) -> list[Any]:
        return [
            {**one, "value": chance.choice((chance.choice(ODD), {"document": broken(chance)}))}
            for one in given
        ]

    asked: dict[str, Any] = {
        "output": output,
        "outputs": chance.choice(ODD),
        "inputs": filled(known.get("inputs", [])),
        "state": filled(known.get("state", [])),
        "changedPropIds": chance.choice(([], ["document.data"], chance.choice(ODD))),
    }
    if chance.random() < 0.4:
        asked[chance.choice(list(asked))] = chance.choice(ODD)
    if chance.random() < 0.1:
        asked.pop(chance.choice(list(asked)))
    return "/_dash-update-component", asked


def test_a_thousand_requests_get_a_sentence_each(
    app: Dash, caplog: pytest.LogCaptureFixture
) -> None:
    chance = random.Random(SEED)  # noqa: S311 - no secret hangs on it
    client = app.server.test_client()
    makers = (
        form_request,
        form_request,
        file_request,
        paper_request,
        lambda one: callback_request(one, app),
    )
    statuses: dict[int, int] = {}
    with caplog.at_level(logging.ERROR):
        for number in range(REQUESTS):
            path, asked = makers[number % len(makers)](chance)
            answer = client.post(path, base_url=LOCAL, json=asked)
            statuses[answer.status_code] = statuses.get(answer.status_code, 0) + 1
            check(path, asked, answer)
    assert set(statuses) <= {200, 204, 400, 404, 405}, statuses
    assert client.get("/healthz", base_url=LOCAL).text == "OK"
    fine = client.post("/visit/form", base_url=LOCAL, json={"document": DEMO})
    assert fine.json["form"]["tag"] == "div"
    assert "Traceback" not in caplog.text


def check(path: str, asked: Any, answer: TestResponse) -> None:
    """What was sent is refused in words, or answered; never half of each."""
    text = answer.text
    assert answer.status_code < 500, (path, asked, text[:300])
    assert "Traceback" not in text
    assert 'File "' not in text
    if path.startswith(("/visit", "/papers")) and answer.mimetype == "application/json":
        given = answer.json
        assert given.get("form") or given.get("text") or "faults" in given
        assert ("document" in given) is ("form" in given) or path == "/visit/form"
        for fault in given.get("faults", ()):
            assert isinstance(fault, str)
            assert fault.strip()
    elif answer.status_code in (400, 404):
        assert text.strip()
