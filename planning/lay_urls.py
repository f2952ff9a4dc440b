"""The pages of the rules and of the lay."""

from django.urls import path

from planning.views import lays, locking, moving, rules

LAY_PAGES = [
    path("keepsakes/<int:pk>/rules/", rules.edit_rules, name="rules"),
    path("lays/<int:pk>/", lays.lay, name="lay"),
    path("lays/<int:pk>/search/", lays.search_around, name="search-around"),
    path("lays/<int:pk>/helps/", lays.look_further, {"what": "helps"}, name="find-helps"),
    path("lays/<int:pk>/better/", lays.look_further, {"what": "better"}, name="find-better"),
    path("lays/<int:pk>/edges/", lays.look_further, {"what": "edges"}, name="find-edges"),
    path("lays/<int:pk>/move/", moving.move, name="move"),
    path("lays/<int:pk>/faults/", moving.faults, name="lay-faults"),
    path("lays/<int:pk>/undo/", moving.undo, name="undo-move"),
    path("lays/<int:pk>/keep/", locking.keep_here, name="keep-here"),
    path("lays/<int:pk>/free/", locking.free, name="free"),
]
