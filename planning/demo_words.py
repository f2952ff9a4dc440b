"""How to log in to the demo, in one place."""

USERNAME, PASSWORD = "demo", "bear-on-a-bench"  # noqa: S105 - printed on every start of the demo
