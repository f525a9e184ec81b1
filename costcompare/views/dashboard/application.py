"""Building the page's application from one opened case."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import Any

from dash import Dash

from costcompare.case import example_path, read_document
from costcompare.views.dashboard import callbacks, ranging, showing
from costcompare.views.dashboard.papers import hand_out
from costcompare.views.dashboard.safety import make_safe
from costcompare.views.dashboard.skeleton import skeleton
from costcompare.views.dashboard.visit.doors import Desk, open_doors
from costcompare.views.dashboard.workbench import Workbench

TITLE = "costcompare: what a home’s heating costs"


def make_app(
    document: Mapping[str, Any] | None = None,
    *,
    directory: Path | None = None,
    hosts: Sequence[str] = (),
) -> Dash:
    """The page for one case document; without one, for the example home.

    ``directory`` is the folder in which relative paths of the case start, ``hosts`` are
    names beside the loopback ones under which a browser may ask for the page. Two apps
    share nothing, and what one visitor changes no other sees.
    """
    if document is None:
        path = Path(example_path("demo"))
        document, directory = read_document(path), path.parent
    app = Dash(
        __name__,
        title=TITLE,
        update_title="",
        assets_folder=str(Path(__file__).parent / "assets"),
        health_endpoint="healthz",
        enable_mcp=False,
        add_log_handler=False,
        serve_locally=True,
    )
    app.index_string = _index(app.index_string)
    app.layout = skeleton
    bench = Workbench(document, directory)
    callbacks.register(app, bench)
    showing.register(app, bench)
    hand_out(app.server, bench)
    ranging.register(app, bench)
    open_doors(app.server, Desk(bench.opened, directory, bench.ranged))
    make_safe(app, hosts)
    return app


def _index(page: str) -> str:
    """Dash's outer page, with its language, and one footer: Dash puts its scripts in another."""
    page = page.replace("<html>", '<html lang="en">')
    return page.replace("<footer>", "<div>").replace("</footer>", "</div>")
