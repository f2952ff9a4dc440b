from django.apps import AppConfig


class PlanningConfig(AppConfig):
    name = "planning"
    verbose_name = "Keepsakes"

    def ready(self) -> None:
        from inventory.removal import OBJECTIONS
        from planning import needs
        from shared.signs import workshop_made

        OBJECTIONS.append(needs.lays_that_need)
        workshop_made.connect(needs.give_bear, dispatch_uid="give the built-in bear")
