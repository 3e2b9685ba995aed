"""Luck as a pure function of (seed, sequence, stroke, slot): any order, any thread, same numbers.

The mixing function is the finaliser of SplitMix64 (Steele, Lea and Flood, "Fast splittable
pseudorandom number generators", OOPSLA 2014). The seed is mixed *before* the sequence index is
added: small seeds would otherwise share keys and every error bar would be too small.
Every constant is wrapped in ``np.uint64``: numba types ``uint64 + int`` as int64.
"""

from __future__ import annotations

import math

import numpy as np

from ._compile import apart, in_place, kernel

_GOLDEN = np.uint64(0x9E3779B97F4A7C15)
_MIX_1 = np.uint64(0xBF58476D1CE4E5B9)
_MIX_2 = np.uint64(0x94D049BB133111EB)
_STROKE = np.uint64(0xD1B54A32D192ED03)
_NO_TURN = np.uint64(0)
_S30, _S27, _S31, _S11 = np.uint64(30), np.uint64(27), np.uint64(31), np.uint64(11)


@kernel
def mix(z):
    """SplitMix64's finaliser: uint64 -> uint64, a bijection that spreads every bit."""
    z = (z ^ (z >> _S30)) * _MIX_1
    z = (z ^ (z >> _S27)) * _MIX_2
    return z ^ (z >> _S31)


@kernel
def seed_key(seed):
    """Key of a seed (uint64)."""
    return mix(mix(np.uint64(seed) + _GOLDEN) + _GOLDEN)


@kernel
def sequence_key(key, sequence):
    """Key of one sequence (int) under a seed's key."""
    return mix(key ^ mix((np.uint64(sequence) + np.uint64(1)) * _GOLDEN))


@kernel
def stroke_key(key, stroke):
    """Key of one stroke of a sequence."""
    return mix(key + (np.uint64(stroke) + np.uint64(1)) * _STROKE)


@kernel
def turned(key, slot, turn):
    """Uniform number in (0, 1) of one luck slot of a stroke, moved on by turn / 2**64 round the circle."""
    bits = mix(key + (np.uint64(slot) + np.uint64(1)) * _GOLDEN) + turn
    return (np.float64(bits >> _S11) + 0.5) * 1.1102230246251565e-16  # 2**-53


@kernel
def uniform(key, slot):
    """Uniform number in (0, 1) of one luck slot of a stroke."""
    return turned(key, slot, _NO_TURN)


_MIDDLE = 0.425
"""How far the middle of the distribution goes either side of a uniform number of a half. The tails' quantiles
beyond, 1.44 and more, are told by that from uniform numbers."""


@in_place
def _septic(r, c7, c6, c5, c4, c3, c2, c1, c0):
    """The polynomial of these coefficients, highest power first."""
    return ((((((c7 * r + c6) * r + c5) * r + c4) * r + c3) * r + c2) * r + c1) * r + c0


@kernel
def _middle_quantile(q):
    """Standard normal quantile of 0.5 + q in the middle."""
    r = 0.180625 - q * q
    top = _septic(
        r, 2509.0809287301226727, 33430.575583588128105, 67265.770927008700853,
        45921.953931549871457, 13731.693765509461125, 1971.5909503065514427,
        133.14166789178437745, 3.387132872796366608,
    )  # fmt: skip
    low = _septic(
        r, 5226.495278852545925, 28729.085735721942674, 39307.89580009271061,
        21213.794301586595867, 5394.1960214247511077, 687.1870074920579083,
        42.313330701600911252, 1.0,
    )  # fmt: skip
    return q * top / low


@kernel
def _tail_quantile(p):
    """Standard normal quantile of p in a tail."""
    r = math.sqrt(-math.log(p if p < 0.5 else 1.0 - p))
    if r <= 5.0:
        r -= 1.6
        top = _septic(
            r, 7.7454501427834140764e-4, 0.0227238449892691845833, 0.24178072517745061177,
            1.27045825245236838258, 3.64784832476320460504, 5.7694972214606914055,
            4.6303378461565452959, 1.42343711074968357734,
        )  # fmt: skip
        low = _septic(
            r, 1.05075007164441684324e-9, 5.475938084995344946e-4, 0.0151986665636164571966,
            0.14810397642748007459, 0.68976733498510000455, 1.6763848301838038494,
            2.05319162663775882187, 1.0,
        )  # fmt: skip
    else:
        r -= 5.0
        top = _septic(
            r, 2.01033439929228813265e-7, 2.71155556874348757815e-5, 0.0012426609473880784386,
            0.026532189526576123093, 0.29656057182850489123, 1.7848265399172913358,
            5.4637849111641143699, 6.6579046435011037772,
        )  # fmt: skip
        low = _septic(
            r, 2.04426310338993978564e-15, 1.4215117583164458887e-7, 1.8463183175100546818e-5,
            7.868691311456132591e-4, 0.0148753612908506148525, 0.13692988092273580531,
            0.59983220655588793769, 1.0,
        )  # fmt: skip
    return -top / low if p < 0.5 else top / low


@apart
def _middles(numbers, first, count):
    """Turn the numbers of the middle; those of the tails are turned already.

    Without a branch: the compiler works several at once.
    """
    for k in range(count):
        i = first + np.uintp(k)
        p = numbers[i]
        quantile = _middle_quantile(p - 0.5)
        numbers[i] = quantile if 0.0 < p < 1.0 else p


@kernel
def normals(numbers, first, count):
    """Turn uniform numbers in (0, 1) into the standard normal quantiles of them, relative error below 1e-15.

    Algorithm AS 241 (PPND16): Wichura, "The percentage points of the normal distribution",
    Applied Statistics 37 (1988) 477-484.

    Parameters
    ----------
    numbers : float64[n]
        ``numbers[first : first + count]`` are turned.
    first : uint64
    count : int
    """
    for k in range(count):
        i = first + np.uintp(k)
        if abs(numbers[i] - 0.5) > _MIDDLE:
            numbers[i] = _tail_quantile(numbers[i])
    _middles(numbers, first, count)
