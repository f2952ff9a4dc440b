"""The garment list as a table for other programs."""

from collections.abc import Iterable
from io import BytesIO

import pandas as pd

from inventory.models import Garment
from shared.units import MM2_PER, LengthUnit

MEDIA_TYPES = {
    "csv": "text/csv; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
COLUMNS = (
    "Tag",
    "Collection",
    "Kind",
    "Name",
    "Colour",
    "Fibres",
    "Construction",
    "Weight g/m2",
    "Stretch along %",
    "Stretch across %",
    "Fragility",
    "Fraying",
    "Status",
    "Panels",
)


def table_of(garments: Iterable[Garment], units: LengthUnit) -> pd.DataFrame:
    """Return one row a garment; the last column is the usable cloth in the reader's unit."""
    rows = [[*_cells(g), round(g.usable_mm2 / MM2_PER[units], 1)] for g in garments]
    return pd.DataFrame(rows, columns=[*COLUMNS, f"Usable cloth {units}2"], dtype=object)


def as_csv(table: pd.DataFrame) -> bytes:
    """Return UTF-8 with a mark at the start, so that spreadsheets read accents rightly."""
    return table.to_csv(index=False).encode("utf-8-sig")


def as_xlsx(table: pd.DataFrame) -> bytes:
    file = BytesIO()
    table.to_excel(file, index=False, sheet_name="Garments", engine="openpyxl")
    return file.getvalue()


def _cells(garment: Garment) -> list[object]:
    return [
        garment.tag,
        _safe(garment.collection.name),
        garment.get_kind_display(),
        _safe(garment.name),
        garment.get_colour_display(),
        ", ".join(f"{s.percent:g} % {s.fibre}" for s in garment.fibre_shares.all())
        or ("no label" if garment.has_no_label else ""),
        garment.construction,
        garment.mass_g_m2,
        garment.stretch_along_pct,
        garment.stretch_across_pct,
        garment.fragility,
        garment.fray,
        garment.get_status_display(),
        garment.panel_count,
    ]


def _safe(text: str) -> str:
    """Keep a spreadsheet from running a name as a formula."""
    return f"'{text}" if text[:1] in {"=", "+", "-", "@", "\t", "\r"} else text
