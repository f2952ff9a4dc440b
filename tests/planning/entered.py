"""What tests of a maker's own patterns type and ask for."""

from planning.drafts import mark_of

SQUARE = [(0, 0, "foot"), (10, 0, "side"), (10, 10, "top"), (0, 10, "back")]


def points(corners, **facts):
    """The form's rows for corners in centimetres, each with the name of the edge it starts."""
    rows = {"count": 2, "mirrored": 1, "grain_deg": 90.0, "line": "seam", "name": "side", **facts}
    for number, (across, up, edge) in enumerate(corners, start=1):
        rows |= {
            f"point_{number}_across": across,
            f"point_{number}_up": up,
            f"point_{number}_edge": edge,
        }
    return rows


def seam(a, b, **facts):
    return {
        "name": "side seam",
        "a1": "\x1f".join(a),
        "b1": "\x1f".join(b),
        "ease_least_pct": 0,
        "ease_most_pct": 0,
        "copies": 1,
        **facts,
    }


def seam_page(pattern, at=0):
    return f"/patterns/{pattern.pk}/seams/{mark_of(pattern.seams[at])}/"


def put_back(client, pattern):
    return client.post(f"/patterns/taken-out/{pattern.taken_out.first().pk}/put-back/", follow=True)


def estimates(client, size):
    return client.get(size.get_absolute_url()).context["estimates"]


def wide_mm(line):
    return max(x for x, _ in line) - min(x for x, _ in line)
