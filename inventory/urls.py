from django.urls import path, register_converter
from django.urls.converters import StringConverter

from inventory.views import advice, collections, garments, hands_on, ledger, overrides, panels

app_name = "inventory"


class WhatConverter(StringConverter):
    regex = "flaw|detail"


class SizeConverter(StringConverter):
    regex = "full|small"


class FileConverter(StringConverter):
    regex = "csv|xlsx"


register_converter(WhatConverter, "what")
register_converter(SizeConverter, "size")
register_converter(FileConverter, "file")

urlpatterns = [
    path("collections/", collections.collections, name="collections"),
    path("collections/new/", collections.edit_collection, name="new-collection"),
    path("collections/<int:pk>/", collections.collection, name="collection"),
    path("collections/<int:pk>/allows/", collections.edit_collection, name="edit-collection"),
    path("collections/<int:pk>/tags/", collections.tags, name="tags"),
    path("garments/", garments.garments, name="garments"),
    path("garments.<file:kind>", garments.garments_file, name="garments-file"),
    path("garments/take-in/", garments.take_in, name="take-in"),
    path("garments/<int:pk>/", garments.garment, name="garment"),
    path("advice/", advice.what_if, name="what-if"),
    path("garments/compare/", advice.compare, name="compare"),
    path("garments/<int:pk>/advice/", advice.advice, name="advice"),
    path("garments/<int:pk>/overrides/add/", overrides.add_override, name="add-override"),
    path("overrides/<int:pk>/withdraw/", overrides.withdraw_override, name="withdraw-override"),
    path("garments/<int:pk>/describe/", garments.describe, name="describe"),
    path("garments/<int:pk>/tests/", hands_on.hands_on, name="hands-on"),
    path("garments/<int:pk>/tests/changed/", hands_on.tested, name="tested"),
    path("garments/<int:pk>/status/", garments.set_status, name="set-status"),
    path("garments/<int:pk>/remove/", garments.remove_garment, name="remove-garment"),
    path("garments/<int:pk>/put-back/", garments.put_back_garment, name="put-back-garment"),
    path("garments/<int:pk>/photos/add/", garments.add_photo, name="add-photo"),
    path("garments/<int:pk>/notes/add/", ledger.add_note, name="add-note"),
    path("garments/<int:pk>/washes/add/", ledger.add_wash, name="add-wash"),
    path("washes/<int:pk>/withdraw/", ledger.withdraw_wash, name="withdraw-wash"),
    path("garments/<int:pk>/panels/add/", panels.add_panel, name="add-panel"),
    path("photos/<int:pk>/<size:size>.jpg", garments.photo, name="photo"),
    path("photos/<int:pk>/remove/", garments.remove_photo, name="remove-photo"),
    path("panels/sketch/", panels.sketch, name="sketch"),
    path("panels/<int:pk>/", panels.panel, name="panel"),
    path("panels/<int:pk>/measure/", panels.edit_panel, name="edit-panel"),
    path("panels/<int:pk>/remove/", panels.remove_panel, name="remove-panel"),
    path("panels/<int:pk>/put-back/", panels.put_back_panel, name="put-back-panel"),
    path("panels/<int:pk>/<what:what>/add/", panels.add_place, name="add-place"),
    path("panels/<int:pk>/put-back-place/", panels.put_back_place, name="put-back-place"),
    path("<what:what>/<int:pk>/remove/", panels.remove_place, name="remove-place"),
]
