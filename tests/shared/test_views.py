import pytest
from django.contrib.auth.models import User

from shared.models import Member, Workshop
from tests import builders

FIRST = {
    "workshop": "Needle and thread",
    "units": "in",
    "username": "ada",
    "password1": "a-long-and-quiet-word",
    "password2": "a-long-and-quiet-word",
}


def test_an_empty_program_asks_for_the_first_workshop(client, db):
    assert client.get("/log-in/").url == "/first-workshop/"
    assert client.post("/first-workshop/", FIRST).url == "/"
    assert Member.objects.get().workshop.name == "Needle and thread"
    assert client.get("/garments/").status_code == 200


def test_nothing_is_half_made_when_the_first_form_is_wrong(client, db):
    page = client.post("/first-workshop/", {**FIRST, "password2": "another"})
    assert "password2" in page.context["form"].errors
    assert not User.objects.exists()
    assert not Workshop.objects.exists()


def test_nobody_can_make_a_workshop_once_there_is_one(client, workshop):
    builders.member(workshop)
    assert client.post("/first-workshop/", FIRST).url == "/log-in/"
    assert Workshop.objects.count() == 1


def test_units_are_the_persons_own(maker, workshop):
    other = builders.member(workshop, "second")
    maker.post("/settings/", {"units": "in"})
    assert Member.objects.get(user__username="maker").units == "in"
    other.refresh_from_db()
    assert other.units == "cm"


def test_a_log_in_without_a_workshop_is_told_so(client, db):
    client.force_login(User.objects.create_user("lost"))
    page = client.get("/")
    assert page.status_code == 403
    assert "belongs to no workshop" in page.content.decode()
    assert client.post("/log-out/").url == "/log-in/"


@pytest.mark.parametrize("method", ["get", "put"])
def test_logging_out_is_a_post(maker, method):
    assert getattr(maker, method)("/log-out/").status_code == 405
    assert maker.post("/log-out/").url == "/log-in/"


def test_the_policy_lets_in_nothing_from_elsewhere(maker):
    policy = maker.get("/garments/").headers["Content-Security-Policy"]
    assert "default-src 'self'" in policy
    assert "unsafe" not in policy
    assert "http" not in policy


def test_the_old_icon_address_answers(client, db):
    assert client.get("/favicon.ico").headers["Content-Type"] == "image/svg+xml"
