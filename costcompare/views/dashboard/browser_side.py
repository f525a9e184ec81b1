"""Callbacks that the browser answers by itself, by the functions of assets/page.js."""

from __future__ import annotations

from typing import Any

from dash import ClientsideFunction


def answered_in_browser(app: Any, function: str, *places: Any, **options: Any) -> None:
    """Let a function of assets/page.js answer; Dash leaves this call without types."""
    app.clientside_callback(ClientsideFunction("page", function), *places, **options)
