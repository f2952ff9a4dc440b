from django.apps import AppConfig
from django.db.models.signals import post_migrate


class PlanningConfig(AppConfig):
    name = "planning"
    verbose_name = "Keepsakes"

    def ready(self) -> None:
        from inventory.removal import OBJECTIONS
        from planning import needs
        from shared.signs import workshop_made

        OBJECTIONS.append(needs.lays_that_need)
        workshop_made.connect(needs.give_patterns, dispatch_uid="give the built-in patterns")
        post_migrate.connect(
            needs.give_new_patterns, sender=self, dispatch_uid="give new built-in patterns"
        )
