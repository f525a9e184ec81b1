"""Tuples of stacked arrays as tuples of lanes, and lanes written down, for compiled code."""

from __future__ import annotations

from functools import lru_cache
from typing import Any, get_type_hints

import numpy as np
from numba.core import cgutils, types
from numba.extending import intrinsic, overload
from numba.np.arrayobj import populate_array
from numpy.typing import NDArray

from costcompare.physics.compiled import OPTIONS
from costcompare.physics.lanes import LANES, lane, lanes

Floats = NDArray[np.float64]


def put(column: Floats, h: int, value: float) -> None:
    """Write the number of an hour; one column a home where homes stand side by side."""
    column[h] = value


def put_row(rows: Floats, h: int, row: Floats) -> None:
    """Write the numbers of an hour; a table a home where homes stand side by side."""
    rows[h, : row.shape[0]] = row


_overload: Any = overload  # its hints leave out some options


@_overload(put, jit_options=OPTIONS)
def _put(column: Any, h: Any, value: Any) -> Any:
    del column, h
    if value != lanes:

        def alone(column: Any, h: Any, value: Any) -> None:
            column[h] = value

        return alone

    def beside(column: Any, h: Any, value: Any) -> None:
        for home in range(LANES):
            column[home, h] = lane(value, home)

    return beside


@_overload(put_row, jit_options=OPTIONS)
def _put_row(rows: Any, h: Any, row: Any) -> Any:
    del rows, h
    if row.dtype != lanes:

        def alone(rows: Any, h: Any, row: Any) -> None:
            for i in range(row.shape[0]):
                rows[h, i] = row[i]

        return alone

    def beside(rows: Any, h: Any, row: Any) -> None:
        for i in range(row.shape[0]):
            for home in range(LANES):
                rows[home, h, i] = lane(row[i], home)

    return beside


def _as_lanes(_typing: Any, numbers: Any) -> Any:
    result = _kind(numbers)

    def emit(context: Any, builder: Any, _signature: Any, args: Any) -> Any:
        return _seen(context, builder, numbers, result, args[0])

    return result(numbers), emit


as_lanes: Any = intrinsic(_as_lanes)
"""A tuple of stacked arrays (see ``side_by_side``) as one of lanes, for compiled code"""


def _kind(kind: Any, hint: Any = None) -> Any:
    """What a tuple, array or number is as lanes."""
    if _is_tuple(kind):
        hints = hints_of(kind.instance_class)
        inner = [_kind(kind[n], hints[name]) for n, name in enumerate(kind.fields)]
        return types.BaseTuple.from_types(inner, kind.instance_class)
    if hint is float:
        return lanes
    if hint == Floats:
        return types.Array(lanes, kind.ndim - 1, "C", aligned=False)
    return kind


def _is_tuple(kind: Any) -> bool:
    return isinstance(kind, types.BaseNamedTuple)


def _seen(context: Any, builder: Any, kind: Any, result: Any, value: Any) -> Any:
    if _is_tuple(kind):
        parts = [
            _seen(context, builder, kind[n], result[n], builder.extract_value(value, n))
            for n in range(len(kind))
        ]
        return context.make_tuple(builder, result, parts)
    if kind == result:
        return value
    source = context.make_array(kind)(context, builder, value)
    of_lanes = context.get_data_type(lanes).as_pointer()
    data = builder.bitcast(source.data, of_lanes)
    if result == lanes:
        return builder.load(data, align=8)
    view = context.make_array(result)(context, builder)
    populate_array(
        view,
        data=data,
        shape=cgutils.unpack_tuple(builder, source.shape)[: result.ndim],
        strides=cgutils.unpack_tuple(builder, source.strides)[: result.ndim],
        itemsize=context.get_constant(types.intp, 8 * LANES),
        meminfo=source.meminfo,
    )
    return view._getvalue()


@lru_cache(maxsize=64)
def hints_of(kind: type) -> dict[str, Any]:
    """The hints of a tuple's fields, by name."""
    hints: dict[str, Any] = get_type_hints(kind, include_extras=True)
    return hints
