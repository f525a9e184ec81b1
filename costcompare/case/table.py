"""What every table of a case file has in common."""

from __future__ import annotations

from pydantic import BaseModel, ConfigDict


class Table(BaseModel):
    """A TOML table: no unknown keys, no change once read."""

    model_config = ConfigDict(extra="forbid", frozen=True)
