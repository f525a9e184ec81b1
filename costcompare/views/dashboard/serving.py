"""Serving the page on this machine, or on request to the local network."""

from __future__ import annotations

import socket
import sys
import threading
import webbrowser
from pathlib import Path

import waitress

from costcompare.case import case_from_document, example_path, read_document
from costcompare.errors import Fault, InputError
from costcompare.views.dashboard.application import make_app
from costcompare.views.dashboard.safety import LOOPBACK

THREADS = 24
"""Requests that are answered at once: twenty visitors at a time and a few to spare"""
LARGEST_BODY = 4 * 1024 * 1024
"""[bytes]"""


def serve(
    case_path: str | Path | None = None,
    *,
    host: str = "127.0.0.1",
    port: int = 8050,
    open_browser: bool = True,
) -> None:
    """Show a case, or the example home, until interrupted.

    A port that is taken is replaced by one that is not; the address is written to stderr.
    Raises InputError where the case is wrong.
    """
    path = Path(case_path) if case_path is not None else Path(example_path("demo"))
    names = () if host in LOOPBACK else _names_of_this_machine(host)
    document = read_document(path)
    case_from_document(document, directory=path.parent)  # says every fault before the page opens
    app = make_app(document, directory=path.parent, hosts=names)
    listener = _listen(host, port)
    shown_host = "127.0.0.1" if host in {"", "0.0.0.0", "::"} else host  # noqa: S104 - compared, not bound
    address = f"http://{shown_host}:{listener.getsockname()[1]}/"
    _say(f"costcompare shows {path.name} at {address} (Ctrl+C ends it)")
    if host not in LOOPBACK:
        _say("Anybody on this network can open the page: it asks for no password.")
    if open_browser:
        threading.Timer(0.5, webbrowser.open, [address]).start()
    waitress.serve(
        app.server,
        sockets=[listener],
        threads=THREADS,
        max_request_body_size=LARGEST_BODY,
        ident="costcompare",
    )


def _listen(host: str, port: int) -> socket.socket:
    """A listening socket on the port, or on a free one where it is taken."""
    listener = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    if sys.platform != "win32":  # there it would let two programs share a port
        listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    for attempt in (port, 0):
        try:
            listener.bind((host, attempt))
        except OSError:
            continue
        listener.listen()  # from here on a browser that is quick waits instead of failing
        return listener
    listener.close()
    rule = "must be an address of this machine"
    raise InputError([Fault("host", rule, host, "127.0.0.1")])


def _names_of_this_machine(host: str) -> tuple[str, ...]:
    """What a browser on the network may call this machine."""
    name = socket.gethostname()
    try:
        addresses = socket.gethostbyname_ex(name)[2]
    except OSError:
        addresses = []
    return (host, name, f"{name}.local", *addresses)


def _say(text: str) -> None:
    sys.stderr.write(f"{text}\n")
    sys.stderr.flush()
