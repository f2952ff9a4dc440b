"""Filters every template has: lengths and areas in the reader's own units."""

from django import template

from shared.units import LengthUnit, format_area, format_length

register = template.Library()


@register.filter
def as_length(length_mm: float | None, units: LengthUnit) -> str:
    """Write millimetres for this reader; a dash where there is none."""
    return "–" if length_mm is None else format_length(length_mm, units)


@register.filter
def as_area(area_mm2: float | None, units: LengthUnit) -> str:
    """Write square millimetres for this reader; a dash where there is none."""
    return "–" if area_mm2 is None else format_area(area_mm2, units)
