"""Homes over processes: every home once, wrong ones told of, a kill loses none."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

from costcompare.batch import HomeDone, Ledger, listing, run_homes

WRONG_ROW = "Dale Court 2,1066,1400 ft2,R-0,average\n"


def finished(homes: Path, like: Path, target: Path, processes: int) -> list[HomeDone]:
    told: list[int] = []
    ledger = Ledger.beside(target)
    with ledger:
        run_homes(
            listing(homes, like),
            ledger,
            version="1",
            processes=processes,
            told=lambda _home, number: told.append(number),
        )
    assert told == list(range(1, len(told) + 1))
    return sorted(ledger.homes(), key=lambda home: home.home)


def test_a_wrong_home_is_told_of_and_does_not_stop_the_others(
    homes: Path, like: Path, tmp_path: Path
) -> None:
    homes.write_text(homes.read_text(encoding="utf-8") + WRONG_ROW, encoding="utf-8")
    done = finished(homes, like, tmp_path / "a.csv", processes=2)
    assert [home.home for home in done if not home.faults] == [
        "Ash Lane 4",
        "Birch Road 9",
        "Cedar, the blue one",
    ]
    (wrong,) = (home for home in done if home.faults)
    assert wrong.faults[0].startswith("homes.csv, row 5, house.built: ")
    # Done homes are not worked out again, and one process gives what two gave.
    ledger = Ledger.beside(tmp_path / "a.csv")
    before = ledger.path.read_bytes()
    assert finished(homes, like, tmp_path / "a.csv", processes=1) == done
    assert ledger.path.read_bytes() == before
    assert finished(homes, like, tmp_path / "b.csv", processes=1) == done


def test_a_home_with_bills_is_fitted_to_them(like: Path, tmp_path: Path) -> None:
    folder = tmp_path / "cases"
    folder.mkdir()
    text = like.read_text(encoding="utf-8")
    bill = "\n[[bills]]\nfrom = 2026-01-01\nto = 2026-02-01\nkwh = {}\n"
    for name, more in (("plain", ""), ("dear", bill.format(6000)), ("never", bill.format(0))):
        (folder / f"{name}.toml").write_text(text + more, encoding="utf-8")
    ledger = Ledger.beside(tmp_path / "a.csv")
    with ledger:
        run_homes(listing(folder, None), ledger, version="1", processes=1, told=lambda *_: None)
    done = {home.home: home for home in ledger.homes()}
    plain, dear = done["plain"].options[0], done["dear"].options[0]
    assert (plain.fitted_bills, dear.fitted_bills) == (0, 1)
    assert dear.bill_now_usd > plain.bill_now_usd
    assert done["never"].faults


def test_a_killed_run_goes_on_and_gives_the_same_table(
    homes: Path, like: Path, tmp_path: Path
) -> None:
    rows = [f"Home {number},{1950 + number},1500,R-0,average\n" for number in range(8)]
    homes.write_text(homes.read_text(encoding="utf-8") + "".join(rows), encoding="utf-8")
    command = [sys.executable, "-m", "costcompare", "batch", str(homes), "--like", str(like)]
    whole, killed = tmp_path / "whole.csv", tmp_path / "killed.csv"
    subprocess.run([*command, "-o", str(whole)], check=True, capture_output=True)
    running = subprocess.Popen(
        [*command, "-o", str(killed)], stderr=subprocess.PIPE, start_new_session=True
    )
    ledger = Ledger.beside(killed)
    while running.poll() is None and len(ledger.keys()) < 3:
        time.sleep(0.05)
    # The parent alone is killed: its workers end with it, and with them the line to their errors.
    os.kill(running.pid, signal.SIGKILL)
    running.communicate(timeout=600)
    assert not killed.exists()
    kept = len(ledger.keys())
    assert 3 <= kept <= 11
    again = subprocess.run([*command, "-o", str(killed)], check=True, capture_output=True)
    assert f"Going on: {kept} homes stand in".encode() in again.stderr
    assert killed.read_bytes() == whole.read_bytes()
    assert not ledger.path.exists()
