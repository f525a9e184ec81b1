"""Rules by place in a document, and what can be read of a document that has faults."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, cast, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import PydanticCustomError

from costcompare.case.document import Document
from costcompare.case.faults import model_in, table_at
from costcompare.case.values import Rule


def readable(document: Mapping[str, Any]) -> Document:
    """A document in which every value that breaks its rule is None, even where one is needed.

    It lets the checks that look at several values run beside the faults of single ones.
    """
    return cast(Document, _table(Document, document))


def _table(table: type[BaseModel], given: Any) -> BaseModel | None:
    if not isinstance(given, Mapping):
        return None
    values: dict[str, Any] = {}
    for name, field in table.model_fields.items():
        key = field.alias or name
        if key in given:
            values[name] = _value(field, given[key])
        else:
            values[name] = None if field.is_required() else field.default
    stated = {n for n, f in table.model_fields.items() if (f.alias or n) in given}
    return table.model_construct(_fields_set=stated, **values)


def _value(field: FieldInfo, given: Any) -> Any:
    inner = model_in(field.annotation)
    rule = rule_in(field.annotation, field.metadata)
    if _origin(field.annotation) is list:
        rows = given if isinstance(given, list) else []
        if inner is not None:
            return [row for item in rows if (row := _table(inner, item)) is not None]
        return [value for item in rows if (value := _read(rule, item)) is not None]
    if inner is not None:
        empty = inner.model_construct() if not field.is_required() and field.default else None
        return _table(inner, given) or empty
    if _origin(field.annotation) is dict:
        pairs = given.items() if isinstance(given, Mapping) else ()
        return {key: _read(rule, item) if rule else item for key, item in pairs}
    return _read(rule, given)


def _read(rule: Rule | None, given: Any) -> Any:
    if rule is None:
        return None
    try:
        return rule.read(given)
    except PydanticCustomError:
        return None


def _origin(annotation: Any) -> Any:
    """``list`` or ``dict`` of an annotation that may also be None."""
    if get_origin(annotation) in {list, dict}:
        return get_origin(annotation)
    return next((o for part in get_args(annotation) if (o := _origin(part)) in {list, dict}), None)


def rule_in(annotation: Any, metadata: Sequence[Any] = ()) -> Rule | None:
    """The rule that an annotation carries."""
    for item in metadata:
        if isinstance(item, Rule):
            return item
    inner = getattr(annotation, "__metadata__", ())
    for part in get_args(annotation):
        if (found := rule_in(part, inner)) is not None:
            return found
    return None


def rule_at(location: Sequence[str | int]) -> Rule | None:
    """The rule for the single value at a location of a document."""
    *place, key = location
    if isinstance(key, int):
        return None
    field = _field(place, str(key))
    if field is None and place and not isinstance(place[-1], int):
        # A key of a map, such as a register's room.
        holder = _field(place[:-1], str(place[-1]))
        field = holder if holder is not None and _origin(holder.annotation) is dict else None
        return rule_in(field.annotation, field.metadata) if field else None
    if field is None or _origin(field.annotation) or model_in(field.annotation):
        return None
    return rule_in(field.annotation, field.metadata)


def _field(place: Sequence[str | int], key: str) -> FieldInfo | None:
    table = table_at(place)
    fields = table.model_fields.items() if table is not None else ()
    return next((f for name, f in fields if (f.alias or name) == key), None)
