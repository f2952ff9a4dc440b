"""What the house tells its rooms. ``workshop_made`` is sent inside the transaction that makes one."""

from django.dispatch import Signal

workshop_made = Signal()  # sends: workshop
