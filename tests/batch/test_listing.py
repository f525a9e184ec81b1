"""The homes of a list or of a folder, and what is wrong with them."""

from __future__ import annotations

from pathlib import Path

import pytest

from costcompare.batch import listing
from costcompare.case.new import new_case
from costcompare.errors import InputError


def test_a_row_changes_the_case_behind_the_list(homes: Path, like: Path) -> None:
    found = list(listing(homes, like))
    assert [home.home for home in found] == ["Ash Lane 4", "Birch Road 9", "Cedar, the blue one"]
    documents = [home.document for home in found]
    assert all(document is not None for document in documents)
    assert [d["house"]["built"] for d in documents if d] == [1961, 1985, 2004]
    assert documents[1] is not None
    assert documents[1]["house"]["floor_area"] == "1900 ft2"  # a bare number takes its unit
    assert "floor_insulation" not in documents[1]["house"]  # an empty cell says nothing
    assert documents[0] is not None
    assert documents[0]["title"] == "Ash Lane 4"
    assert len(documents[0]["options"]) == 2


def test_bills_of_the_case_behind_the_list_are_those_of_another_home(
    homes: Path, like: Path
) -> None:
    bill = "\n[[bills]]\nfrom = 2026-01-01\nto = 2026-02-01\nkwh = 4000\n"
    like.write_text(like.read_text(encoding="utf-8") + bill, encoding="utf-8")
    documents = [home.document for home in listing(homes, like)]
    assert all(document is not None and "bills" not in document for document in documents)
    homes.write_text("home,bills.file\nAsh Lane 4,ash.csv\nBirch Road 9,\n", encoding="utf-8")
    ash, birch = (home.document for home in listing(homes, like))
    assert ash is not None
    assert birch is not None
    assert ash["bills"] == {"file": "ash.csv"}
    assert "bills" not in birch


def test_a_list_can_be_gone_through_again(homes: Path, like: Path) -> None:
    found = listing(homes, like)
    assert found.count == 3
    assert list(found) == list(found)


def test_a_key_hangs_on_the_home_and_on_the_program(homes: Path, like: Path) -> None:
    first, second, _ = listing(homes, like)
    assert first.key("1") == next(iter(listing(homes, like))).key("1")
    assert len({first.key("1"), second.key("1"), first.key("2")}) == 3


def test_a_key_hangs_on_what_the_weather_file_holds(tmp_path: Path) -> None:
    text = new_case().replace("[house]", '[weather]\nsource = "file"\nfile = "w.csv"\n\n[house]')
    folder = tmp_path / "cases"
    folder.mkdir()
    (folder / "a.toml").write_text(text, encoding="utf-8")
    (folder / "w.csv").write_text("1", encoding="utf-8")
    (home,) = listing(folder, None)
    before = home.key("1")
    (folder / "w.csv").write_text("2", encoding="utf-8")
    assert home.key("1") != before


def test_every_fault_of_the_columns_is_told_at_once(tmp_path: Path, like: Path) -> None:
    wrong = tmp_path / "wrong.csv"
    wrong.write_text("name,bilt,built,built\n", encoding="utf-8")
    with pytest.raises(InputError) as told:
        listing(wrong, like)
    said = "\n".join(fault.sentence() for fault in told.value.faults)
    assert "must have a column home" in said
    assert "has a column twice (given: built)" in said
    assert '(given: bilt). Write "built".' in said
    assert "has no row below its columns" in said


def test_a_list_needs_a_case_with_options(homes: Path, tmp_path: Path) -> None:
    with pytest.raises(InputError, match="a list needs a case"):
        listing(homes, None)
    bare = tmp_path / "bare.toml"
    bare.write_text(new_case(), encoding="utf-8")
    with pytest.raises(InputError, match="has no options"):
        listing(homes, bare)


@pytest.mark.parametrize("content", [b"\xff\xfe\x00h\x00o", b""])
def test_a_broken_list_is_told_of(content: bytes, tmp_path: Path, like: Path) -> None:
    broken = tmp_path / "broken.csv"
    broken.write_bytes(content)
    with pytest.raises(InputError, match=r"broken\.csv"):
        listing(broken, like)


def test_a_row_with_too_many_cells_stays_out_alone(tmp_path: Path, like: Path) -> None:
    rows = tmp_path / "rows.csv"
    rows.write_text("home,built\nA,1970,more\nB,1971\n", encoding="utf-8")
    first, second = listing(rows, like)
    assert first.document is None
    assert "rows.csv, row 2: has more cells than columns" in first.faults[0]
    assert second.document is not None


def test_a_folder_holds_its_cases_by_name(tmp_path: Path) -> None:
    for name in ("b", "a"):
        (tmp_path / f"{name}.toml").write_text(new_case(), encoding="utf-8")
    (tmp_path / "c.toml").write_text("this is not TOML", encoding="utf-8")
    found = list(listing(tmp_path, None))
    assert [home.home for home in found] == ["a", "b", "c"]
    assert "is not TOML" in found[2].faults[0]
    with pytest.raises(InputError, match="holds no case file"):
        listing(tmp_path.parent / tmp_path.name / "..", None)
    with pytest.raises(InputError, match="goes with a list"):
        listing(tmp_path, tmp_path / "a.toml")
