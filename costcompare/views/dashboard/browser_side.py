"""Callbacks that the browser answers by itself, by the functions of assets/page.js."""

from __future__ import annotations

from typing import Any

from dash import ClientsideFunction, Output


def answered_in_browser(app: Any, function: str, *places: Any, **options: Any) -> None:
    """Let a function of assets/page.js answer; Dash leaves this call without types."""
    app.clientside_callback(ClientsideFunction("page", function), *places, **options)


def replaceable(output: Output) -> Output:
    """An output that another callback gives as well."""
    return Output(output.component_id, output.component_property, allow_duplicate=True)
