from django.urls import path

from planning.lay_urls import LAY_PAGES
from planning.views import keepsakes, patterns

app_name = "planning"

urlpatterns = [
    path("keepsakes/", keepsakes.keepsakes, name="keepsakes"),
    path("keepsakes/new/", keepsakes.edit_keepsake, name="new-keepsake"),
    path("keepsakes/<int:pk>/", keepsakes.keepsake, name="keepsake"),
    path("keepsakes/<int:pk>/change/", keepsakes.edit_keepsake, name="edit-keepsake"),
    path("keepsakes/<int:pk>/sizes/", keepsakes.sizes, name="sizes"),
    path("keepsakes/<int:pk>/check/", keepsakes.check_sizes, name="check-sizes"),
    path("keepsakes/<int:pk>/stop/", keepsakes.stop_checks, name="stop-checks"),
    path("keepsakes/<int:pk>/choose/", keepsakes.choose_size, name="choose-size"),
    path("keepsakes/<int:pk>/remove/", keepsakes.remove_keepsake, name="remove-keepsake"),
    path("keepsakes/<int:pk>/put-back/", keepsakes.put_back_keepsake, name="put-back-keepsake"),
    *LAY_PAGES,
    path("patterns/", patterns.patterns, name="patterns"),
    path("patterns/<int:pk>/", patterns.pattern, name="pattern"),
    path("sizes/<int:pk>/", patterns.size, name="size"),
]
