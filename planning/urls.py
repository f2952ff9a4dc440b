from django.urls import path

from planning.lay_urls import LAY_PAGES
from planning.views import keepsakes, pattern_changes, pattern_files, patterns, pieces

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
    path("patterns/new/", pattern_changes.ways, name="new-pattern"),
    path("patterns/new/paper/", pattern_changes.edit_pattern, name="paper-pattern"),
    path("patterns/new/file/", pattern_files.read_file, name="read-file"),
    path("patterns/files/<int:pk>/", pattern_files.pattern_file, name="pattern-file"),
    path("patterns/files/<int:pk>/drop/", pattern_files.drop_file, name="drop-file"),
    path("patterns/<int:pk>/", patterns.pattern, name="pattern"),
    path("patterns/<int:pk>/picture.jpg", patterns.picture, name="pattern-picture"),
    path("patterns/<int:pk>/change/", pattern_changes.edit_pattern, name="edit-pattern"),
    path("patterns/<int:pk>/copy/", pattern_changes.duplicate, name="copy-pattern"),
    path("patterns/<int:pk>/version/", pattern_changes.new_version, name="new-version"),
    path("patterns/<int:pk>/put-away/", pattern_changes.put_away, name="put-away"),
    path("patterns/<int:pk>/bring-back/", pattern_changes.bring_back, name="bring-back"),
    path("patterns/<int:pk>/grade/", pattern_changes.grade, name="grade"),
    path("patterns/<int:pk>/parts/", pattern_changes.edit_parts, name="edit-parts"),
    path("patterns/<int:pk>/seams/add/", pattern_changes.edit_seam, name="add-seam"),
    path("patterns/<int:pk>/seams/<int:number>/", pattern_changes.edit_seam, name="edit-seam"),
    path(
        "patterns/<int:pk>/seams/<int:number>/remove/",
        pattern_changes.remove_seam,
        name="remove-seam",
    ),
    path("sizes/<int:pk>/", patterns.size, name="size"),
    path("sizes/<int:pk>/pieces/add/", pieces.add_piece, name="add-piece"),
    path("sizes/<int:pk>/pieces/sketch/", pieces.sketch, name="sketch-piece"),
    path("sizes/<int:pk>/pieces/put-back/", pieces.put_back_piece, name="put-back-piece"),
    path("sizes/<int:pk>/own/", pattern_changes.own_size, name="own-size"),
    path("sizes/<int:pk>/remove/", pattern_changes.remove_size, name="remove-size"),
    path("sizes/<int:pk>/pattern.svg", pattern_files.export, {"kind": "svg"}, name="size-svg"),
    path("sizes/<int:pk>/pattern.dxf", pattern_files.export, {"kind": "dxf"}, name="size-dxf"),
    path("pieces/<int:pk>/", patterns.piece, name="piece"),
    path("pieces/<int:pk>/change/", pieces.edit_piece, name="edit-piece"),
    path("pieces/<int:pk>/remove/", pieces.remove_piece, name="remove-piece"),
]
