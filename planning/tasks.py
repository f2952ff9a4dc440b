"""What the worker does. Arguments are numbers only; the row says the rest."""

from django.tasks import task

from planning import checking


@task
def run_check(pk: int, number: int) -> None:
    checking.run(pk, number)
