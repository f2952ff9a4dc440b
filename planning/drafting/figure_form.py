"""A stuffed head in space, so that it can be drawn from any side.

Upright slices from nose to nape, each an oval: as high as the profile there and as wide as the
stuffed head. Places are (left, ahead, up) in millimetres from the middle of the neck; ``left`` is
the animal's own. Seen from in front, its left is to the right of the page.
"""

import math
from dataclasses import dataclass
from functools import cached_property

from shapely import MultiPoint, unary_union

from planning.drafting.curves import STEPS, Line, smooth
from planning.drafting.head import Profile
from planning.drafting.rings import Point
from planning.drafting.shapes import ring_of

Place = tuple[float, float, float]
SLICES = 40
OVAL_STEPS = 72
CHEEKS = 0.82  # the lower half of a slice is rounder than an oval; 1 would be an oval


@dataclass(frozen=True)
class HeadForm:
    """A profile with a skull and a muzzle: their half widths, and how far the muzzle reaches."""

    profile: Profile
    skull_half_mm: float
    muzzle_half_mm: float
    muzzle_mm: float

    @cached_property
    def ring(self) -> Line:
        """The profile with the sewn neck drawn in round, instead of spread flat."""
        chin, neck, top = self.profile.chin, self.profile.neck, self.profile.top
        throat, nape = neck[0], neck[-1]
        wide = nape[0] - throat[0]
        under = smooth(
            [
                chin[-1 - STEPS],
                (throat[0] + 0.20 * wide, -0.01 * wide),
                (nape[0] - 0.26 * wide, -0.02 * wide),
                top[STEPS],
            ],
            start_deg=342,
            end_deg=80,
        )
        return [*chin[: -1 - STEPS], *under, *top[STEPS + 1 : -1]]

    @cached_property
    def depth_mm(self) -> float:
        return max(x for x, _ in self.ring)

    @property
    def middle_mm(self) -> float:
        """How far behind the nose the middle of the neck lies."""
        neck = self.profile.neck
        return (neck[0][0] + neck[-1][0]) / 2

    def half_width_mm(self, x: float) -> float:
        """Return half the width of the slice ``x`` behind the nose."""
        skull_deep = self.depth_mm - self.muzzle_mm
        out = (x - self.muzzle_mm - skull_deep / 2) / (skull_deep / 2)
        skull = self.skull_half_mm * math.sqrt(max(0.0, 1 - abs(out) ** 2.4))
        ahead = max(0.0, 1 - x / self.muzzle_mm)
        muzzle = self.muzzle_half_mm * math.sqrt(max(0.0, 1 - ahead**2.6))
        return max(skull, muzzle if x < 1.4 * self.muzzle_mm else 0.0)

    def span_mm(self, x: float) -> tuple[float, float]:
        """Return the lowest and the highest point of the profile ``x`` behind the nose."""
        ring = self.ring
        ends = zip(ring, [*ring[1:], ring[0]], strict=True)
        hits = [
            a[1] + (x - a[0]) / (b[0] - a[0]) * (b[1] - a[1])
            for a, b in ends
            if (a[0] - x) * (b[0] - x) <= 0 and a[0] != b[0]
        ]
        return min(hits), max(hits)

    def on_skin(self, x: float, left_mm: float) -> Place:
        """Return the upper place on the skin ``x`` behind the nose and so far to the left."""
        low, high = self.span_mm(x)
        out = min(1.0, abs(left_mm) / self.half_width_mm(x))
        up = (low + high) / 2 + (high - low) / 2 * math.sqrt(1 - out * out)
        return (left_mm, self.middle_mm - x, up)

    def beside(self, x: float, up_mm: float) -> float:
        """Return how far to the left the skin is, ``x`` behind the nose and so high up."""
        low, high = self.span_mm(x)
        out = min(1.0, abs(2 * up_mm - low - high) / (high - low))
        return self.half_width_mm(x) * math.sqrt(1 - out * out)


@dataclass(frozen=True)
class Seen:
    """Where the onlooker stands: the head turned ``yaw_deg`` to its left from looking at her."""

    yaw_deg: float

    @property
    def across(self) -> float:
        """How much of a width across the head is seen: 1 from in front, 0 from the side."""
        return math.cos(math.radians(self.yaw_deg))

    @property
    def along(self) -> float:
        return math.sin(math.radians(self.yaw_deg))

    def on_page(self, place: Place) -> Point:
        left, ahead, up = place
        return (left * self.across + ahead * self.along, up)

    def nearness_mm(self, place: Place) -> float:
        """Return how much nearer than the middle of the neck a place is."""
        left, ahead, _ = place
        return ahead * self.across - left * self.along

    def facing(self, azimuth_deg: float) -> float:
        """Return how squarely skin is seen that looks so far to the left; under 0 it is hidden."""
        return math.cos(math.radians(azimuth_deg + self.yaw_deg))


def silhouette(form: HeadForm, seen: Seen) -> Line:
    """Return the outline of the head on the page, neck at height 0, as an open ring."""
    slices = [_slice(form, seen, form.depth_mm * _share(step)) for step in range(SLICES + 1)]
    hulls = [MultiPoint([*a, *b]).convex_hull for a, b in zip(slices, slices[1:], strict=False)]
    soft_mm = 0.05 * form.depth_mm
    whole = unary_union(hulls).buffer(soft_mm).buffer(-2 * soft_mm).buffer(soft_mm)
    return ring_of(whole, 0.0003 * form.depth_mm)


def _share(step: int) -> float:
    """Close together at the nose and at the back, where the head rounds."""
    return 0.5 - 0.4995 * math.cos(math.pi * step / SLICES)


def _slice(form: HeadForm, seen: Seen, x: float) -> Line:
    low, high = form.span_mm(x)
    half, middle, up = form.half_width_mm(x), (low + high) / 2, (high - low) / 2
    turns = [2 * math.pi * step / OVAL_STEPS for step in range(OVAL_STEPS)]
    return [
        seen.on_page(
            (
                half * _fuller(math.cos(t), math.sin(t)),
                form.middle_mm - x,
                middle + up * math.sin(t),
            )
        )
        for t in turns
    ]


def _fuller(cosine: float, sine: float) -> float:
    return math.copysign(abs(cosine) ** (CHEEKS if sine < 0 else 1.0), cosine)
