"""Where the page is served."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
from urllib.request import urlopen

import pytest

from costcompare.errors import InputError
from costcompare.views.dashboard.serving import _listen, _names_of_this_machine


def test_a_port_that_is_taken_is_replaced() -> None:
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        with _listen("127.0.0.1", port) as other:
            assert other.getsockname()[1] not in {0, port}


def test_an_address_of_another_machine_is_a_wrong_input() -> None:
    with pytest.raises(InputError, match="must be an address of this machine"):
        _listen("192.0.2.1", 8050)


def test_the_network_may_call_this_machine_by_its_name() -> None:
    assert socket.gethostname() in _names_of_this_machine("192.0.2.1")


def test_it_serves_the_example_from_the_moment_it_says_so() -> None:
    command = "from costcompare.views.dashboard import serve; serve(port=0, open_browser=False)"
    with subprocess.Popen(
        [sys.executable, "-c", command], stderr=subprocess.PIPE, text=True
    ) as process:
        try:
            assert process.stderr is not None
            said = process.stderr.readline()
            found = re.search(r"http://127\.0\.0\.1:\d+/", said)
            assert found, said
            with urlopen(f"{found[0]}healthz") as answer:  # noqa: S310 - our own server
                assert answer.read() == b"OK"
        finally:
            process.terminate()
