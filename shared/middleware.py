"""Puts the person's workshop and units on the request; nobody without a workshop gets past."""

from collections.abc import Callable
from typing import Any, cast

from django.core.exceptions import PermissionDenied
from django.http import HttpRequest, HttpResponse
from django.urls import reverse

from shared.models import Member, Workshop
from shared.units import LengthUnit


class WorkshopRequest(HttpRequest):
    """A request by a logged-in member: what every view behind the log-in receives."""

    member: Member
    workshop: Workshop
    units: LengthUnit
    htmx: Any


class WorkshopMiddleware:
    def __init__(self, get_response: Callable[[HttpRequest], HttpResponse]) -> None:
        self.get_response = get_response

    def __call__(self, request: HttpRequest) -> HttpResponse:
        if request.user.is_authenticated:
            member = Member.objects.select_related("workshop").filter(user=request.user).first()
            if member is None and request.path == reverse("log-out"):
                return self.get_response(request)
            if member is None:
                raise PermissionDenied("This log-in belongs to no workshop.")
            found = cast(WorkshopRequest, request)
            found.member, found.workshop = member, member.workshop
            found.units = cast(LengthUnit, member.units)
        return self.get_response(request)
