"""The guard of every change to a pattern: what a keepsake was planned with stays as it is."""

from django.contrib import messages
from django.http import HttpResponse
from django.shortcuts import redirect

from planning.models import Pattern, PatternSize
from shared.middleware import WorkshopRequest


def kept_as_it_is(request: WorkshopRequest, pattern: Pattern) -> HttpResponse | None:
    """Where to go instead of changing a settled pattern; None where it may be changed."""
    if not pattern.is_settled:
        return None
    if pattern.built_in:
        words = "A pattern that comes with the program stays as it is. Make a copy to change."
    else:
        words = "A keepsake is planned with this pattern, so it stays as it is. Make a new version."
    messages.error(request, words)
    return redirect(pattern)


def fixed(request: WorkshopRequest, size: PatternSize) -> HttpResponse | None:
    """Where to go instead of changing the pieces of a size; None where they may be changed."""
    if kept := kept_as_it_is(request, size.pattern):
        return kept
    if size.graded_from_id:
        messages.error(
            request,
            "This size is graded from another and follows it. Change that one, or let this size "
            "stand by itself first.",
        )
        return redirect(size)
    return None
