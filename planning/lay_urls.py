"""The pages of the rules and of the lay."""

from django.urls import path

from planning.views import lays, rules

LAY_PAGES = [
    path("keepsakes/<int:pk>/rules/", rules.edit_rules, name="rules"),
    path("lays/<int:pk>/", lays.lay, name="lay"),
]
