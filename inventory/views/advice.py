from typing import Any

from django.http import HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from inventory.cloth import cloth_of, missing_for_advice
from inventory.differences import advice_lines, fact_lines
from inventory.forms.compare import CompareForm
from inventory.forms.what_if import FIBRE_NAMES, ChangeQuestion, ClothQuestion, question_about
from inventory.reading import answer_of, words_of
from inventory.sheet import sheet_of
from inventory.views.rows import garment_for
from shared.middleware import WorkshopRequest


@require_GET
def advice(request: WorkshopRequest, pk: int) -> HttpResponse:
    row = garment_for(request.workshop, pk)
    words = words_of(row)
    return render(
        request,
        "inventory/advice.html",
        {
            "garment": row,
            "sheet": sheet_of(words),
            **words,
            "missing": missing_for_advice(row),
            "question": question_about(cloth_of(row)),
            "nav": "garments",
        },
    )


@require_GET
def compare(request: WorkshopRequest) -> HttpResponse:
    form = CompareForm(request.GET or None, workshop=request.workshop)
    page: dict[str, Any] = {"form": form, "nav": "garments"}
    if form.is_valid() and form.cleaned_data["a"] and form.cleaned_data["b"]:
        a, b = (garment_for(request.workshop, form.cleaned_data[name].pk) for name in "ab")
        words_a, words_b = words_of(a), words_of(b)
        lines = [*fact_lines((a, b), (words_a, words_b)), *advice_lines(words_a, words_b)]
        page |= {"pair": (a, b), "lines": lines, "differing": sum(line.differs for line in lines)}
    return render(request, "inventory/compare.html", page)


@require_GET
def what_if(request: WorkshopRequest) -> HttpResponse:
    form = ClothQuestion(request.GET)
    cloth = form.cleaned_data["cloth"] if form.is_valid() else None
    then = ChangeQuestion(request.GET, prefix="then", cloth=cloth)
    page: dict[str, Any] = {
        "form": form,
        "then": then,
        "questions": (form, then),
        "fibre_names": FIBRE_NAMES,
        "nav": "garments",
    }
    if cloth is not None and then.is_valid():
        page["answer"] = answer = answer_of(cloth)
        if then.is_asked:
            lines = advice_lines(answer, answer_of(then.cleaned_data["cloth"]))
            page |= {"lines": lines, "differing": sum(line.differs for line in lines)}
    return render(request, "inventory/what_if.html", page)
