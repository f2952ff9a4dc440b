from django.urls import include, path

from planning.views.home import home
from shared import views

urlpatterns = [
    path("", home, name="home"),
    path("log-in/", views.LogIn.as_view(), name="log-in"),
    path("log-out/", views.log_out, name="log-out"),
    path("first-workshop/", views.first_workshop, name="first-workshop"),
    path("settings/", views.member_settings, name="settings"),
    path("favicon.ico", views.favicon),
    path("", include("inventory.urls")),
    path("", include("planning.urls")),
]
