"""The shapes a hard part may have, and what the gauge must know of each, in millimetres.

``disc_mm`` is the widest flat disc inside the part, ``longest_mm`` its longest straight line,
``hull_mm3`` the volume of its convex hull. ``upright_mm`` are sums that must not pass the deep side
for the part to stand in the well. ``points`` stand for the part when it is turned every way; round
rims are drawn as corners on the rim, which errs towards "it fits" by less than 0.1 mm.
"""

import math
from dataclasses import dataclass, fields
from itertools import permutations, product
from typing import Protocol

import numpy as np
import numpy.typing as npt

from planning.safety.errors import SafetyError
from planning.safety.gauge import Gauge

RIM_CORNERS = 36
DOME_RINGS = (0.3, 0.6, 0.85)  # of the way out from the top of a dome
LARGEST_MM = 10_000.0

Cloud = npt.NDArray[np.float64]


class Part(Protocol):
    """A rigid part that can be held against the gauge."""

    @property
    def disc_mm(self) -> float: ...

    @property
    def longest_mm(self) -> float: ...

    @property
    def hull_mm3(self) -> float: ...

    @property
    def is_round(self) -> bool: ...

    def stands_in(self, gauge: Gauge) -> bool: ...

    def points(self) -> Cloud: ...


@dataclass(frozen=True)
class Sized:
    """Refuses lengths that are not plain, positive millimetres."""

    def __post_init__(self) -> None:
        for field in fields(self):
            value = getattr(self, field.name)
            if not 0 < value <= LARGEST_MM:
                raise SafetyError(
                    f"{type(self).__name__}, {field.name}: {value:g} is no length from just over "
                    f"0 to {LARGEST_MM:g} mm."
                )


@dataclass(frozen=True)
class Disc(Sized):
    """A flat disc or a rod: a plain cylinder of this diameter and thickness (or length)."""

    diameter_mm: float
    length_mm: float

    is_round = True

    @property
    def disc_mm(self) -> float:
        return self.diameter_mm

    @property
    def longest_mm(self) -> float:
        return math.hypot(self.diameter_mm, self.length_mm)

    @property
    def hull_mm3(self) -> float:
        return math.pi / 4 * self.diameter_mm**2 * self.length_mm

    def stands_in(self, gauge: Gauge) -> bool:
        """Pushed to the deep side, diameter and length together must fit the depth."""
        return self.diameter_mm + self.length_mm <= gauge.deep_mm

    def points(self) -> Cloud:
        return np.vstack(
            [_ring(0.0, self.diameter_mm / 2), _ring(self.length_mm, self.diameter_mm / 2)]
        )


@dataclass(frozen=True)
class Sphere(Sized):
    """A ball or bead. It fits just when it passes the rim: the floor binds only above 33.48 mm."""

    diameter_mm: float

    is_round = True

    @property
    def disc_mm(self) -> float:
        return self.diameter_mm

    @property
    def longest_mm(self) -> float:
        return self.diameter_mm

    @property
    def hull_mm3(self) -> float:
        return math.pi / 6 * self.diameter_mm**3

    def stands_in(self, gauge: Gauge) -> bool:
        return self.diameter_mm <= gauge.diameter_mm

    def points(self) -> Cloud:
        return np.empty((0, 3))


@dataclass(frozen=True)
class Box(Sized):
    """A block of three edge lengths, such as a zip pull or a buckle."""

    a_mm: float
    b_mm: float
    c_mm: float

    is_round = False

    @property
    def disc_mm(self) -> float:
        return sorted((self.a_mm, self.b_mm, self.c_mm))[1]

    @property
    def longest_mm(self) -> float:
        return math.hypot(self.a_mm, self.b_mm, self.c_mm)

    @property
    def hull_mm3(self) -> float:
        return self.a_mm * self.b_mm * self.c_mm

    def stands_in(self, gauge: Gauge) -> bool:
        """Standing on an end: section through the rim, sum within the depth. Enough, not needed."""
        return any(
            math.hypot(a, c) <= gauge.diameter_mm and b + math.hypot(a, c) <= gauge.deep_mm
            for a, b, c in permutations((self.a_mm, self.b_mm, self.c_mm))
        )

    def points(self) -> Cloud:
        halves = [(-side / 2, side / 2) for side in (self.a_mm, self.b_mm, self.c_mm)]
        return np.array(list(product(*halves)), dtype=float)


@dataclass(frozen=True)
class Eye(Sized):
    """A domed eye or nose on a stem: head diameter and height, stem diameter and length."""

    diameter_mm: float
    height_mm: float
    stem_mm: float
    stem_length_mm: float

    is_round = True

    @property
    def disc_mm(self) -> float:
        return max(self.diameter_mm, self.stem_mm)

    @property
    def longest_mm(self) -> float:
        across = (self.diameter_mm + self.stem_mm) / 2
        return max(
            self.diameter_mm,
            math.hypot(self.height_mm + self.stem_length_mm, self.stem_mm / 2),
            math.hypot(self.stem_length_mm, across),
        )

    @property
    def hull_mm3(self) -> float:
        dome = 2 / 3 * math.pi * (self.diameter_mm / 2) ** 2 * self.height_mm
        return dome + _frustum_mm3(self.diameter_mm / 2, self.stem_mm / 2, self.stem_length_mm)

    def stands_in(self, gauge: Gauge) -> bool:
        """Stem down or stem up, pushed to the deep side."""
        half, top, long, thin = (
            self.diameter_mm / 2,
            self.height_mm,
            self.stem_length_mm,
            self.stem_mm / 2,
        )
        down = half + max(top + half, top + long + thin)
        up = half + max(long + math.hypot(top, half), thin)
        return min(down, up) <= gauge.deep_mm

    def points(self) -> Cloud:
        half = self.diameter_mm / 2
        dome = [
            _ring(self.height_mm * (1 - math.sqrt(1 - out * out)), out * half) for out in DOME_RINGS
        ]
        end = self.height_mm + self.stem_length_mm
        rim, tip = _ring(self.height_mm, half), np.zeros((1, 3))
        return np.vstack([tip, *dome, rim, _ring(end, self.stem_mm / 2)])


@dataclass(frozen=True)
class ShankButton(Sized):
    """A flat button face on a shank: face diameter and thickness, shank width and length."""

    diameter_mm: float
    thickness_mm: float
    shank_mm: float
    shank_length_mm: float

    is_round = True

    @property
    def disc_mm(self) -> float:
        return max(self.diameter_mm, self.shank_mm)

    @property
    def longest_mm(self) -> float:
        across = (self.diameter_mm + self.shank_mm) / 2
        return max(
            math.hypot(self.diameter_mm, self.thickness_mm),
            math.hypot(self.thickness_mm + self.shank_length_mm, across),
        )

    @property
    def hull_mm3(self) -> float:
        half = self.diameter_mm / 2
        face = math.pi * half**2 * self.thickness_mm
        return face + _frustum_mm3(half, self.shank_mm / 2, self.shank_length_mm)

    def stands_in(self, gauge: Gauge) -> bool:
        """Shank down or shank up, pushed to the deep side."""
        half, thick, long = self.diameter_mm / 2, self.thickness_mm, self.shank_length_mm
        down = half + max(thick + half, thick + long + self.shank_mm / 2)
        up = half + long + thick + half
        return min(down, up) <= gauge.deep_mm

    def points(self) -> Cloud:
        half, end = self.diameter_mm / 2, self.thickness_mm + self.shank_length_mm
        faces = [_ring(0.0, half), _ring(self.thickness_mm, half)]
        return np.vstack([*faces, _ring(end, self.shank_mm / 2)])


def _ring(z_mm: float, radius_mm: float) -> Cloud:
    turns = np.linspace(0, 2 * math.pi, RIM_CORNERS, endpoint=False)
    return np.column_stack(
        [radius_mm * np.cos(turns), radius_mm * np.sin(turns), np.full(RIM_CORNERS, z_mm)]
    )


def _frustum_mm3(wide_mm: float, narrow_mm: float, long_mm: float) -> float:
    """The hull of two coaxial discs, the second of which may be the wider."""
    return math.pi / 3 * long_mm * (wide_mm**2 + wide_mm * narrow_mm + narrow_mm**2)
