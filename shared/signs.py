"""What the house tells its rooms: ``workshop_made``, sent inside the transaction that makes one."""

from django.dispatch import Signal

workshop_made = Signal()  # sends: workshop
