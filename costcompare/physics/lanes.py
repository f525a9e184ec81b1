"""Numbers of several homes side by side, for compiled code: what the processor does at once.

Kernels are written for the numbers of one home. Handed :data:`lanes` in their stead they do the
same for :data:`LANES` homes at a time, each in a lane of its own: a home's digits are those that
it has alone. For that a kernel asks nothing of a home by ``if``: it works both ways out and takes
one with :func:`where`, or asks with :func:`any_of` whether there is anything to do at all.
"""

from __future__ import annotations

import math
import operator
from collections.abc import Callable
from typing import Any, TypeVar

from llvmlite import ir
from numba.core import types
from numba.core.typeconv.castgraph import Conversion
from numba.core.typing.templates import AbstractTemplate, infer_global, signature
from numba.extending import intrinsic, lower_builtin, lower_cast, models, register_model

LANES = 8
"""Homes at a time: what the widest registers hold of double precision"""

T = TypeVar("T")


class _Lanes(types.Type):
    """One number of each home."""

    def __init__(self) -> None:
        super().__init__(name=f"lanes{LANES}")

    def can_convert_from(self, _context: Any, other: Any) -> Any:
        return Conversion.safe if isinstance(other, _PLAIN) else None

    def unify(self, _context: Any, other: Any) -> Any:
        return self if isinstance(other, _PLAIN) else None


class _Mask(types.Type):
    """One yes or no of each home."""

    def __init__(self) -> None:
        super().__init__(name=f"mask{LANES}")

    def can_convert_from(self, _context: Any, other: Any) -> Any:
        return Conversion.safe if isinstance(other, types.Boolean) else None

    def unify(self, _context: Any, other: Any) -> Any:
        return self if isinstance(other, types.Boolean) else None


_PLAIN = (types.Float, types.Integer)
lanes, mask = _Lanes(), _Mask()
_NUMBERS = ir.VectorType(ir.DoubleType(), LANES)
_FLAGS = ir.VectorType(ir.IntType(1), LANES)
_BITS = ir.IntType(LANES)
_INDEX = ir.IntType(32)


@register_model(_Lanes)
class _LanesModel(models.PrimitiveModel):
    def __init__(self, manager: Any, kind: Any) -> None:
        super().__init__(manager, kind, _NUMBERS)


@register_model(_Mask)
class _MaskModel(models.PrimitiveModel):
    def __init__(self, manager: Any, kind: Any) -> None:
        super().__init__(manager, kind, _FLAGS)


@lower_cast(types.Float, _Lanes)
@lower_cast(types.Integer, _Lanes)
def _same_in_all(context: Any, builder: Any, kind: Any, _lanes: Any, value: Any) -> Any:
    return _spread(builder, context.cast(builder, value, kind, types.float64), _NUMBERS)


@lower_cast(types.Boolean, _Mask)
def _same_flag(_context: Any, builder: Any, _kind: Any, _mask: Any, value: Any) -> Any:
    return _spread(builder, value, _FLAGS)


def _spread(builder: Any, value: Any, kind: Any) -> Any:
    nothing = ir.Constant(kind, ir.Undefined)
    first = builder.insert_element(nothing, value, ir.Constant(_INDEX, 0))
    everywhere = ir.Constant(ir.VectorType(_INDEX, LANES), [0] * LANES)
    return builder.shuffle_vector(first, nothing, everywhere)


_ALIKE: dict[Any, tuple[Any, ...]] = {
    lanes: _PLAIN,
    mask: (types.Boolean,),
    types.boolean: (),
}
"""What may stand beside one of these, being the same for all homes"""


def _teach(function: Any, kind: Any, count: int, result: Any, emit: Callable[..., Any]) -> None:
    """Let compiled code call ``function`` with ``count`` of a kind, or with what is alike."""

    @infer_global(function)
    class _Template(AbstractTemplate):
        key = function

        def generic(self, args: Any, kws: Any) -> Any:
            if kws or len(args) != count or kind not in args or not _all_of(kind, args):
                return None
            return signature(result, *[kind] * count)

    @lower_builtin(function, *[kind] * count)
    def _lowered(_context: Any, builder: Any, _signature: Any, args: Any) -> Any:
        return emit(builder, *args)


def _all_of(kind: Any, args: Any) -> bool:
    return all(one == kind or isinstance(one, _ALIKE[kind]) for one in args)


def _by_llvm(name: str) -> Callable[..., Any]:
    """A function of numbers that LLVM knows for vectors."""

    def emit(builder: Any, *args: Any) -> Any:
        kind = ir.FunctionType(_NUMBERS, [_NUMBERS] * len(args))
        known = f"llvm.{name}.v{LANES}f64"
        function = builder.module.globals.get(known) or ir.Function(builder.module, kind, known)
        return builder.call(function, args)

    return emit


def _chosen(sign: str) -> Callable[..., Any]:
    """The first number unless the second is the one that ``sign`` asks for, as Python does it."""

    def emit(builder: Any, first: Any, second: Any) -> Any:
        return builder.select(builder.fcmp_ordered(sign, second, first), second, first)

    return emit


def _instruction(name: str, *before: Any) -> Callable[..., Any]:
    return lambda builder, *args: getattr(builder, name)(*before, *args)


for _plain, _in_place, _name in (
    (operator.add, operator.iadd, "fadd"),
    (operator.sub, operator.isub, "fsub"),
    (operator.mul, operator.imul, "fmul"),
    (operator.truediv, operator.itruediv, "fdiv"),
):
    _teach(_plain, lanes, 2, lanes, _instruction(_name))
    _teach(_in_place, lanes, 2, lanes, _instruction(_name))
for _comparison, _sign in (
    (operator.lt, "<"),
    (operator.le, "<="),
    (operator.gt, ">"),
    (operator.ge, ">="),
):
    _teach(_comparison, lanes, 2, mask, _instruction("fcmp_ordered", _sign))
_teach(operator.neg, lanes, 1, lanes, _instruction("fneg"))
_teach(operator.pow, lanes, 2, lanes, _by_llvm("pow"))
_teach(math.exp, lanes, 1, lanes, _by_llvm("exp"))
_teach(math.sqrt, lanes, 1, lanes, _by_llvm("sqrt"))
_teach(abs, lanes, 1, lanes, _by_llvm("fabs"))
_teach(max, lanes, 2, lanes, _chosen(">"))
_teach(min, lanes, 2, lanes, _chosen("<"))
_teach(operator.and_, mask, 2, mask, _instruction("and_"))
_teach(operator.or_, mask, 2, mask, _instruction("or_"))


def where(condition: bool, one: T, other: T) -> T:
    """``one`` where the condition holds, else ``other``; both are worked out."""
    return one if condition else other


def opposite(condition: bool) -> bool:
    """True where the condition does not hold."""
    return not condition


def any_of(condition: bool) -> bool:
    """Whether the condition holds for any of the homes: the one question to ask with ``if``."""
    return condition


@infer_global(where)
class _Where(AbstractTemplate):
    key = where

    def generic(self, args: Any, kws: Any) -> Any:
        condition, *values = args
        if kws or len(values) != 2:
            return None
        if condition == mask:
            if _all_of(mask, values):
                return signature(mask, mask, mask, mask)
            return signature(lanes, mask, lanes, lanes) if _all_of(lanes, values) else None
        if values == [types.boolean, types.boolean]:
            return signature(types.boolean, types.boolean, types.boolean, types.boolean)
        if lanes in values:
            return signature(lanes, types.boolean, lanes, lanes)
        return signature(types.float64, types.boolean, types.float64, types.float64)


@lower_builtin(where, mask, lanes, lanes)
@lower_builtin(where, mask, mask, mask)
@lower_builtin(where, types.boolean, types.boolean, types.boolean)
@lower_builtin(where, types.boolean, lanes, lanes)
@lower_builtin(where, types.boolean, types.float64, types.float64)
def _where(_context: Any, builder: Any, _signature: Any, args: Any) -> Any:
    return builder.select(*args)


def _any(builder: Any, flags: Any) -> Any:
    bits = builder.bitcast(flags, _BITS)
    return builder.icmp_unsigned("!=", bits, ir.Constant(_BITS, 0))


_teach(any_of, mask, 1, types.boolean, _any)
_teach(any_of, types.boolean, 1, types.boolean, lambda _builder, flag: flag)
_teach(opposite, mask, 1, mask, _instruction("not_"))
_teach(opposite, types.boolean, 1, types.boolean, _instruction("not_"))


def _lane(_typing: Any, value: Any, number: Any) -> Any:
    del value

    def emit(context: Any, builder: Any, kinds: Any, args: Any) -> Any:
        place = context.cast(builder, args[1], kinds.args[1], types.int32)
        return builder.extract_element(args[0], place)

    return types.float64(lanes, number), emit


lane: Any = intrinsic(_lane)
"""``lane(value, number)``: the number of one home"""
