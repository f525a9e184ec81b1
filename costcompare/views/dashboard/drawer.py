"""The adviser's drawer: a handful of facts to change, and the way back."""

from __future__ import annotations

from typing import Any

import dash_mantine_components as dmc
from dash import html

from costcompare.views.dashboard.facts_offered import OFFERED, OfferedFact


def drawer() -> dmc.Drawer:
    """The closed drawer; callbacks fill its fields."""
    return dmc.Drawer(
        id="facts",
        title="Facts of this home",
        closeButtonProps={"aria-label": "Close the facts", "size": "xl"},
        position="right",
        size="min(460px, 100vw)",
        padding="lg",
        keepMounted=True,
        zIndex=300,
        overlayProps={"backgroundOpacity": 0.25},
        children=html.Div(
            [
                html.P(
                    "For the adviser. Change what you know better and work it out again; an "
                    "empty field leaves the fact as it is.",
                    className="aside",
                ),
                *(_field(fact) for fact in OFFERED),
                html.Div(id="faults", role="alert"),
                html.P(id="said", role="status", className="said"),
                html.Div(
                    [
                        html.Button("Work it out again", id="again", className="strong-button"),
                        html.Button("Undo the last change", id="undo", className="quiet-button"),
                        html.Button(
                            "Back to the case as opened", id="reopen", className="quiet-button"
                        ),
                    ],
                    className="buttons",
                ),
            ],
            className="drawer-body",
        ),
    )


def _field(fact: OfferedFact) -> Any:
    return dmc.TextInput(
        id=f"fact-{fact.key}",
        label=fact.label,
        description=fact.hint,
        value="",
        size="md",
        autoComplete="off",
    )
