"""Loads the invented workshop through the same code as real work, all of it or nothing."""

import json
from datetime import date
from pathlib import Path
from typing import Any

from django.conf import settings
from django.contrib.auth.models import User
from django.db import transaction

from inventory.cloth import measure, measure_again
from inventory.forms.fibres import save_shares
from inventory.forms.garments import free_tag, save_photo
from inventory.models import Collection, ConditionNote, Detail, Flaw, Garment, Panel
from inventory.photos import prepared
from planning import checking
from planning.demo_patterns import add_pattern
from planning.demo_words import PASSWORD, USERNAME
from planning.library import give_all_built_in, give_built_in
from planning.models import Keepsake, Pattern
from shared.models import Member, Workshop

FIXTURES = Path(settings.BASE_DIR) / "demo_fixtures"

type Facts = dict[str, Any]


@transaction.atomic
def load_demo() -> bool:
    """Fill an empty database with the invented workshop; False, and no change, if it is not."""
    if Workshop.objects.exists() or User.objects.exists():
        return False
    facts = json.loads((FIXTURES / "workshop.json").read_text(encoding="utf-8"))
    workshop = Workshop.objects.create(name=facts["workshop"]["name"])
    user = User.objects.create_user(USERNAME, password=PASSWORD)
    Member.objects.create(user=user, workshop=workshop)
    give_all_built_in(workshop)
    pattern = give_built_in(workshop)
    for each in facts["patterns"]:
        add_pattern(workshop, each)
    collections = {each["key"]: _collection(workshop, each) for each in facts["collections"]}
    for each in facts["keepsakes"]:
        _keepsake(collections[each["collection"]], pattern, each)
    return True


def _collection(workshop: Workshop, facts: Facts) -> Collection:
    row = Collection.objects.create(
        workshop=workshop,
        name=facts["name"],
        giver=facts["giver"],
        received_on=date.fromisoformat(facts["received_on"]),
        cut_consent=facts["may_cut"],
        wash_consent=facts["may_wash"],
        keeps_scent=facts["keep_scent"],
        returns_scraps=facts["return_scraps"],
        notes=facts["notes"],
    )
    for each in facts["garments"]:
        _garment(row, each)
    return row


SAME_NAME = (
    "kind",
    "name",
    "colour",
    "construction",
    "status",
    "notes",
    "fragility",
    "fray",
    "is_one_way",
    "mass_g_m2",
    "hand_feel",
    "stretch_along_pct",
    "stretch_across_pct",
    "repeat_along_mm",
    "repeat_across_mm",
    "troubles",
)


def _garment(collection: Collection, facts: Facts) -> None:
    row = Garment.objects.create(
        workshop=collection.workshop,
        collection=collection,
        tag=free_tag(collection.workshop),
        has_no_label=facts.get("fibre_known") is False,
        surface=facts.get("pattern", "plain"),
        label_marks={part: mark for part, mark in (facts["label"] or {}).items() if mark},
        **{name: facts[name] for name in SAME_NAME if facts.get(name) is not None},
    )
    save_shares(row, list(facts["fibres"].items()))
    for each in facts["photos"]:
        with (FIXTURES / "photos" / each["file"]).open("rb") as file:
            save_photo(row, prepared(file, "image/jpeg"), each["alt"])
    for each in facts["condition_notes"]:
        ConditionNote.objects.create(
            workshop=row.workshop,
            garment=row,
            noted_on=date.fromisoformat(each["on"]),
            grade=each["grade"],
            text=each["text"],
        )
    for each in facts["panels"]:
        _panel(row, each)
    measure_again(row)


def _panel(garment: Garment, facts: Facts) -> None:
    row = Panel(
        workshop=garment.workshop,
        garment=garment,
        name=facts["name"],
        shape=facts["shape"],
        measures_mm=facts["measures_mm"],
        grain_deg=facts["grain_deg"],
        is_measured_after_wash=facts.get("measured_after_wash", False),
    )
    measure(row)
    row.save()
    for each in facts["flaws"]:
        Flaw.objects.create(workshop=row.workshop, panel=row, kind=each["kind"], **_place(each))
    for each in facts["details"]:
        Detail.objects.create(
            workshop=row.workshop,
            panel=row,
            kind=each["kind"],
            is_kept_aside=each["keep_aside"],
            **_place(each),
        )


def _place(facts: Facts) -> Facts:
    note = facts.get("name", "")
    if circle := facts.get("circle"):
        return {
            "points_mm": [[circle["x"], circle["y"]]],
            "radius_mm": circle["radius"],
            "note": note,
        }
    return {"points_mm": facts["polygon"], "note": note}


def _keepsake(collection: Collection, pattern: Pattern, facts: Facts) -> None:
    row = Keepsake.objects.create(
        workshop=collection.workshop,
        name=facts["name"],
        collection=collection,
        pattern=pattern,
        recipient=facts["recipient"],
        recipient_age_months=facts["recipient_age_months"],
        purpose=facts["purpose"],
        notes=facts["notes"],
    )
    checking.ask(row, list(pattern.sizes.all()))
