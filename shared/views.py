"""Log-in, settings, and the first start of an empty program."""

from pathlib import Path
from typing import Any, ClassVar

from django import forms
from django.contrib import messages
from django.contrib.auth import get_user_model, login, logout
from django.contrib.auth.decorators import login_not_required
from django.contrib.auth.forms import UserCreationForm
from django.contrib.auth.models import User
from django.contrib.auth.views import LoginView
from django.contrib.staticfiles import finders
from django.db import transaction
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils.decorators import method_decorator
from django.views.decorators.http import require_POST

from shared.middleware import WorkshopRequest
from shared.models import Member, Workshop
from shared.signs import workshop_made


@method_decorator(login_not_required, name="dispatch")
class LogIn(LoginView):
    redirect_authenticated_user = True

    def dispatch(self, request: HttpRequest, *args: Any, **kwargs: Any) -> Any:
        if not get_user_model().objects.exists():
            return redirect("first-workshop")
        return super().dispatch(request, *args, **kwargs)


@require_POST
def log_out(request: HttpRequest) -> HttpResponse:
    logout(request)
    return redirect("log-in")


class FirstWorkshopForm(UserCreationForm[User]):
    workshop = forms.CharField(label="Name of your workshop", max_length=80)
    units = forms.ChoiceField(
        label="Lengths in", choices=Member.Units, widget=forms.RadioSelect, initial="cm"
    )

    field_order = ("workshop", "units")

    class Meta:
        model = User
        fields = ("username",)


@login_not_required
def first_workshop(request: HttpRequest) -> HttpResponse:
    """Open only while nobody can log in: whoever starts the program makes the first workshop."""
    if get_user_model().objects.exists():
        return redirect("log-in")
    form = FirstWorkshopForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        with transaction.atomic():
            user = form.save()
            workshop = Workshop.objects.create(name=form.cleaned_data["workshop"])
            Member.objects.create(user=user, workshop=workshop, units=form.cleaned_data["units"])
            workshop_made.send(Workshop, workshop=workshop)
        login(request, user)
        messages.success(request, "Your workshop is open. Take in the first garment when you like.")
        return redirect("home")
    note = "This is the first start. Everything you enter stays on this machine."
    return render(
        request,
        "shared/form_page.html",
        {"form": form, "heading": "Open your workshop", "save": "Open it", "note": note},
    )


class SettingsForm(forms.ModelForm[Member]):
    class Meta:
        model = Member
        fields = ("units",)
        labels: ClassVar = {"units": "Lengths in"}
        widgets: ClassVar = {"units": forms.RadioSelect()}


def member_settings(request: WorkshopRequest) -> HttpResponse:
    form = SettingsForm(request.POST or None, instance=request.member)
    if request.method == "POST" and form.is_valid():
        form.save()
        messages.success(request, "Saved. Lengths are shown and read in your units from now on.")
        return redirect("settings")
    return render(request, "shared/form_page.html", {"form": form, "heading": "Settings"})


@login_not_required
def favicon(request: HttpRequest) -> HttpResponse:
    """Answer browsers that ask for the icon by its old address."""
    found = finders.find("shared/icon.svg")
    if not isinstance(found, str):
        raise Http404
    return HttpResponse(Path(found).read_bytes(), content_type="image/svg+xml")
