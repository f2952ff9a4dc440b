"""The invented workshop, ready to look at. A second start changes nothing and loses nothing."""

from planning.demo_data import load_demo
from planning.demo_words import PASSWORD, USERNAME
from shared.management.commands.serve import Command as Serve


class Command(Serve):
    help = "Load the invented workshop into an empty data folder and start the program."

    def prepare(self) -> None:
        load_demo()

    def log_in(self) -> list[str]:
        return [f"Log in as {USERNAME} with the password {PASSWORD}"]
