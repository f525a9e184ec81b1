"""What the server refuses, and what it tells browsers to refuse."""

from __future__ import annotations

import logging
import traceback
from collections.abc import Sequence
from pathlib import Path
from urllib.parse import urlsplit

from dash import Dash
from dash.exceptions import DependencyException
from flask import Flask, Response, abort, request
from werkzeug.exceptions import HTTPException

LOOPBACK = ("127.0.0.1", "localhost")
LARGEST_REQUEST = 2 * 1024 * 1024
"""[bytes] of a request body; the page itself sends a few thousand"""
CALLBACKS = "_dash-update-component"
PACKAGE = Path(__file__).parents[2]
LOG = logging.getLogger(__name__)


def make_safe(app: Dash, hosts: Sequence[str] = ()) -> None:
    """Bind the server to known host names and close the page to everything from outside.

    Call it after every callback is registered: the policy lists the page's own scripts.
    """
    server: Flask = app.server
    server.config["TRUSTED_HOSTS"] = [*LOOPBACK, *hosts]
    server.config["MAX_CONTENT_LENGTH"] = LARGEST_REQUEST
    policy = _policy(app.csp_hashes())
    server.before_request(_refuse_other_origins)
    server.register_error_handler(DependencyException, _not_found)
    server.register_error_handler(Exception, _unexpected)

    @server.after_request
    def with_headers(response: Response) -> Response:
        response.headers["Content-Security-Policy"] = policy
        response.headers["X-Content-Type-Options"] = "nosniff"
        response.headers["Referrer-Policy"] = "no-referrer"
        response.headers["Cross-Origin-Opener-Policy"] = "same-origin"
        return response


def _policy(script_hashes: Sequence[str]) -> str:
    """Everything from this server alone; styles may stand in the page, as plotly needs."""
    rules = {
        "default-src": "'self'",
        "script-src": " ".join(["'self'", *script_hashes]),
        "style-src": "'self' 'unsafe-inline'",
        "img-src": "'self' data: blob:",
        "connect-src": "'self'",
        "font-src": "'self' data:",
        "object-src": "'none'",
        "base-uri": "'none'",
        "form-action": "'self'",
        "frame-ancestors": "'none'",
    }
    return "; ".join(f"{name} {value}" for name, value in rules.items())


def _refuse_other_origins() -> None:
    """A page of another site may not send anything here."""
    origin = request.headers.get("Origin")
    if origin and urlsplit(origin).netloc != request.host:
        abort(403)


def _not_found(_error: Exception) -> tuple[str, int]:
    """Files that do not exist: Dash raises where it should say 404."""
    return "There is nothing here.", 404


def _unexpected(error: Exception) -> tuple[str, int] | HTTPException:
    """Whatever else goes wrong is answered by a sentence; the log gets one line with its place.

    Dash reads a callback's request without looking at its shape first: one that it stumbles
    over was not sent by the page.
    """
    if isinstance(error, HTTPException):
        return error
    if isinstance(error, KeyError) and "Callback function not found" in str(error):
        return _not_found(error)
    place = traceback.extract_tb(error.__traceback__)[-1]
    where = f"{Path(place.filename).name}, line {place.lineno}"
    if request.path.endswith(CALLBACKS) and not Path(place.filename).is_relative_to(PACKAGE):
        return "This request cannot be understood.", 400
    LOG.error("A request could not be answered: %s (%s)", type(error).__name__, where)
    return "The page could not answer that; nothing is lost.", 500
