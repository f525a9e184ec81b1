"""Homes over all cores: each in a process of its own, a few in flight at a time."""

from __future__ import annotations

import multiprocessing
import os
import threading
from collections.abc import Callable, Iterator
from concurrent.futures import FIRST_COMPLETED, Future, ProcessPoolExecutor, wait
from itertools import islice

from costcompare.batch.ledger import Ledger
from costcompare.batch.listing import HomeOfList, Listing
from costcompare.batch.results import HomeDone, option_lines
from costcompare.case import case_from_document
from costcompare.case.facts import Case
from costcompare.comparing import compare, weather_of
from costcompare.comparison import Comparison
from costcompare.errors import CostCompareError, InputError
from costcompare.fitting import compare_fitted, fitted_to_own_bills

Told = Callable[[HomeDone, int], None]
"""Called with a home that is done and how many are done by then"""

IN_FLIGHT = 3
"""Homes handed out ahead for each process: no core waits, and memory stays flat"""


def work_out(home: HomeOfList, key: str) -> HomeDone:
    """Compare the options of one home; what is wrong with it is kept in words."""
    if home.document is None:
        return HomeDone(key, home.home, "", (), home.faults)
    try:
        case = case_from_document(home.document, directory=home.directory)
        if not case.options:
            return HomeDone(key, home.home, case.title, (), (f"{home.where}: has no options.",))
        return HomeDone(key, home.home, case.title, option_lines(_comparison(case)))
    except InputError as error:
        said = tuple(f"{home.where}, {fault.sentence()}" for fault in error.faults)
        return HomeDone(key, home.home, "", (), said)
    except CostCompareError as error:
        return HomeDone(key, home.home, "", (), (f"{home.where}: {error}",))


def _comparison(case: Case) -> Comparison:
    """The comparison of a home, fitted to its bills where its case holds any."""
    year = weather_of(case)
    fitted = fitted_to_own_bills(case, year)
    if fitted is None:
        return compare(case, weather=year)
    return compare_fitted(fitted, weather=year)


def run_homes(
    homes: Listing, ledger: Ledger, *, version: str, processes: int | None = None, told: Told
) -> None:
    """Work out every home that the ledger does not hold yet, and write each to it.

    ``ledger`` must be open. ``version`` is that of the program: homes that another version
    worked out are worked out anew. The answers do not hang on the number of processes.
    """
    done = ledger.keys()
    number = min(len(done), homes.count)
    left = _left(homes, done, version)
    # A process starts anew rather than as a copy: threads of the parent do not copy well.
    context = multiprocessing.get_context("spawn")
    workers = processes or os.cpu_count() or 1
    with ProcessPoolExecutor(workers, mp_context=context, initializer=end_with_parent) as pool:
        flying: set[Future[HomeDone]] = set()
        try:
            while True:
                room = workers * IN_FLIGHT - len(flying)
                flying |= {pool.submit(work_out, *each) for each in islice(left, room)}
                if not flying:
                    return
                finished, flying = wait(flying, return_when=FIRST_COMPLETED)
                for future in finished:
                    home = future.result()
                    ledger.add(home)
                    number += 1
                    told(home, number)
        except BaseException:
            pool.shutdown(wait=False, cancel_futures=True)
            raise


def end_with_parent() -> None:
    """End this process as soon as the one that started it is gone, however it went.

    A worker waits for homes from a parent that was killed until the machine is switched off
    otherwise: it holds both ends of the line to it.
    """
    parent = multiprocessing.parent_process()
    if parent is not None:
        threading.Thread(target=_end_after, args=(parent.join,), daemon=True).start()


def _end_after(wait_for: Callable[[], None]) -> None:
    wait_for()
    os._exit(1)


def _left(homes: Listing, done: set[str], version: str) -> Iterator[tuple[HomeOfList, str]]:
    for home in homes:
        key = home.key(version)
        if key not in done:
            done.add(key)
            yield home, key
