"""What the form's addresses answer."""

from __future__ import annotations

import tomllib
from typing import Any

import pytest
from flask.testing import FlaskClient

from costcompare.case import case_text
from costcompare.views.dashboard import make_app
from costcompare.views.dashboard.visit.deeds import DEEDS, LONGEST_TEXT
from costcompare.views.dashboard.visit.doors import Desk, file_name, shown_name
from costcompare.views.dashboard.visit.intake import LARGEST_FILE

Doc = dict[str, Any]
LOCAL = "http://127.0.0.1:8050"


@pytest.fixture(scope="module")
def client() -> FlaskClient:
    return make_app().server.test_client()


def change(desk: Desk, document: Doc, do: str, **edit: Any) -> Doc:
    return desk.change({"document": document, "edit": {"do": do, **edit}})


def test_an_answer_comes_back_as_a_document_with_its_form(desk: Desk, opened: Doc) -> None:
    answer = change(desk, opened, "say", at=["thermostat", "day"], text="64")
    assert answer["faults"] == []
    assert answer["document"]["thermostat"]["day"] == "64 F"
    assert answer["form"]["tag"] == "div"


def test_a_wrong_answer_comes_back_in_the_readers_words(desk: Desk, opened: Doc) -> None:
    answer = change(desk, opened, "say", at=["thermostat", "day"], text="fish")
    assert answer == {
        "faults": ['Must be a temperature (F, C) (given: "fish"). Write for example "68 F".']
    }
    other = change(desk, opened, "say", at=["thermostat", "day"], text="80")
    assert other["faults"] == [
        "Cooling setting in summer, F: must be above the warmest heating setting, 80 F "
        "(given: 77 F)."
    ]


def test_a_trial_changes_nothing(desk: Desk, opened: Doc) -> None:
    edit = {"do": "say", "at": ["thermostat", "day"], "text": "64"}
    assert desk.change({"document": opened, "edit": edit, "trial": True}) == {"faults": []}


def test_what_a_case_needs_becomes_a_guess_when_nobody_knows_it(desk: Desk, opened: Doc) -> None:
    for path in ("house.built", "site.latitude", "tariff.tiers.0.price"):
        at = [int(step) if step.isdecimal() else step for step in path.split(".")]
        answer = change(desk, opened, "say", at=at, known="unknown")
        assert answer["faults"] == [], path
        assert "'known': 'guessed'" in str(answer["document"])


def test_saved_and_opened_it_is_the_same(desk: Desk, opened: Doc) -> None:
    saved = desk.save({"document": opened})
    assert saved["name"] == "the-long-house-in-the-foothills-invented.toml"
    tomllib.loads(saved["text"])
    assert desk.open({"name": saved["name"], "text": saved["text"]})["document"] == opened


def test_every_fault_of_a_file_is_said_at_once(client: FlaskClient, opened: Doc) -> None:
    wrong = case_text({**opened, "thermostat": {"day": "fish"}, "hous": {}})
    answer = client.post("/visit/open", base_url=LOCAL, json={"name": "a.toml", "text": wrong})
    assert len(answer.json["faults"]) == 2
    for text, said in (
        ("title = ", "a.toml"),
        ("a = " + "[" * 5000, "nested too deeply"),
        ("x" * (LARGEST_FILE + 1), "too large"),
        ('[weather]\nsource = "file"\nfile = "/etc/passwd"', "opens no files"),
    ):
        body = {"name": "c:\\secret\\a.toml", "text": text}
        answer = client.post("/visit/open", base_url=LOCAL, json=body)
        assert answer.status_code == 200
        assert said in " ".join(answer.json["faults"]), text[:40]
        assert "secret" not in answer.text


@pytest.mark.parametrize(
    ("door", "body", "status"),
    [
        ("nowhere", {}, 404),
        ("form", [], 400),
        ("form", {}, 200),
        ("change", {"document": {}}, 200),
        ("open", {"name": 3, "text": "a"}, 200),
        ("save", {"document": {"house": 3}}, 200),
    ],
)
def test_requests_that_make_no_sense_get_a_sentence(
    client: FlaskClient, door: str, body: object, status: int
) -> None:
    answer = client.post(f"/visit/{door}", base_url=LOCAL, json=body)
    assert answer.status_code == status
    assert answer.json["faults"]
    assert all(fault.endswith(".") for fault in answer.json["faults"])


def test_only_json_from_this_page_is_read(client: FlaskClient, opened: Doc) -> None:
    text = client.post("/visit/form", base_url=LOCAL, data="{}", content_type="text/plain")
    assert text.status_code == 400
    headers = {"Origin": "http://evil.example"}
    body = {"document": opened}
    answer = client.post("/visit/form", base_url=LOCAL, json=body, headers=headers)
    assert answer.status_code == 403


@pytest.mark.parametrize(
    "edit",
    [
        None,
        {"do": "harm"},
        {"do": "say", "at": "house"},
        {"do": "say", "at": [True]},
        {"do": "say", "at": []},
        {"do": "say", "at": ["house", "built"], "text": 7},
        {"do": "say", "at": ["house", "built"], "known": "heard"},
        {"do": "say", "at": ["house", "built"], "text": "1" * (LONGEST_TEXT + 1)},
        *(
            {"do": do, "at": ["options", 99]}
            for do in DEEDS
            if "option" in do and do != "add option"
        ),
        *({"do": do, "at": ["rooms", -1]} for do in DEEDS if do.endswith("room") and do[0] == "r"),
    ],
)
def test_an_edit_that_makes_no_sense_is_refused_in_words(
    client: FlaskClient, opened: Doc, edit: object
) -> None:
    body = {"document": opened, "edit": edit}
    answer = client.post("/visit/change", base_url=LOCAL, json=body)
    assert answer.status_code == 200
    assert answer.json["faults"]
    assert "document" not in answer.json


def test_names_of_files_are_safe() -> None:
    assert file_name({"title": "../../etc/passwd"}) == "etcpasswd"
    assert file_name({"title": "CON"}) == "home"
    assert file_name({"title": "日本"}) == "home"
    assert file_name({}) == "home"
    assert len(file_name({"title": "x" * 500})) == 60
    assert shown_name("..\\..\\=cmd.csv") == "=cmd.csv"
    assert shown_name("a/b/c.toml\n") == "c.toml"
    assert shown_name("") == "the file"
