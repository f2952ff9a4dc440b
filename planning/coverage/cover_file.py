"""The cover-1 file: our own JSON form of a coverage problem, and the verdict-1 answer.

Reads and writes; it does not decide. Whatever breaks a rule of the format is refused with one line
that names the place. Millimetres and degrees, anticlockwise from +x.
"""

import json
from dataclasses import replace

from shapely import Polygon

from planning.coverage import json_parts as parts
from planning.coverage.problem import (
    Locked,
    Match,
    Outline,
    Panel,
    Piece,
    Pin,
    Placement,
    Point,
    Problem,
    ProblemError,
    Repeat,
    Spot,
)
from planning.coverage.rings import mended
from planning.coverage.sound import LARGEST_MARGIN_MM, MOST_COPIES, refuse_unsound
from planning.coverage.verdict import Verdict

FORMAT = "bearing-cloth/cover-1"
LARGEST_FILE_BYTES = 20_000_000
ANSWER_FORMAT = "bearing-cloth/verdict-1"

_TOP = (
    "format",
    "clearance_mm",
    "edge_margin_mm",
    "flaw_margin_mm",
    "panels",
    "pieces",
    "same_garment",
    "match",
    "pin",
    "locked",
)
_PANEL = ("id", "garment", "outline", "flaws", "grain_deg", "one_way", "repeat")
_PIECE = (
    "id",
    "outline",
    "grain_deg",
    "count",
    "mirrored",
    "grain_tolerance_deg",
    "bias",
    "panels",
    "garments",
)
_REPEAT = ("along_mm", "across_mm", "origin")
_MATCH = ("a", "b", "direction", "within_mm")
_SPOT = ("piece", "copy", "at")
_PIN = ("piece", "copy", "panel", "piece_point", "panel_point", "within_mm")
_LOCKED = ("piece", "copy", "panel", "mirrored", "rotation_deg", "translation")


def problem_from_text(text: bytes) -> Problem:
    """The problem in the bytes of a cover-1 file; ProblemError names the first fault's place."""
    if len(text) > LARGEST_FILE_BYTES:
        raise ProblemError(f"file: it is larger than {LARGEST_FILE_BYTES // 1_000_000} MB")
    try:
        data = json.loads(
            text.decode("utf-8-sig"), parse_constant=_no_number, object_pairs_hook=_object
        )
    except ProblemError:
        raise
    except UnicodeDecodeError as error:
        raise ProblemError(f"file: it is not UTF-8 text (byte {error.start})") from error
    except json.JSONDecodeError as error:
        place = f"line {error.lineno}, column {error.colno}"
        raise ProblemError(f"file: it is not JSON ({place}: {error.msg})") from error
    except ValueError as error:  # Python refuses whole numbers of thousands of digits
        raise ProblemError("file: a number has too many digits") from error
    except RecursionError as error:
        raise ProblemError("file: it is nested too deeply") from error
    return problem_from_json(data)


def problem_from_json(data: object) -> Problem:
    """The problem in a parsed cover-1 file; ProblemError names the place of the first fault."""
    top = parts.part_of(data, "file", _TOP, ("format", "panels", "pieces"))
    if top["format"] != FORMAT:
        raise ProblemError(f"format: '{FORMAT}' is needed here")

    def margin(key: str, default: float) -> float:
        return parts.number_of(top.get(key, default), key, 0, LARGEST_MARGIN_MM)

    problem = Problem(
        panels=parts.items_of(top["panels"], "panels", _panel),
        pieces=parts.items_of(top["pieces"], "pieces", _piece),
        clearance_mm=margin("clearance_mm", 2.0),
        edge_margin_mm=margin("edge_margin_mm", 5.0),
        flaw_margin_mm=margin("flaw_margin_mm", 3.0),
        same_garment=parts.items_of(top.get("same_garment"), "same_garment", parts.names_of),
        match=parts.items_of(top.get("match"), "match", _match),
        pin=parts.items_of(top.get("pin"), "pin", _pin),
        locked=parts.items_of(top.get("locked"), "locked", _locked),
    )
    refuse_unsound(problem)
    return replace(problem, pieces=tuple(map(_without_spikes, problem.pieces)))


def _without_spikes(piece: Piece) -> Piece:
    """The piece as it will be laid and answered; only an outline that doubles back is changed."""
    return (
        piece if Polygon(piece.outline).is_valid else replace(piece, outline=mended(piece.outline))
    )


def problem_to_json(problem: Problem) -> dict[str, object]:
    """The problem as a cover-1 object, every key written out."""
    return {
        "format": FORMAT,
        "clearance_mm": problem.clearance_mm,
        "edge_margin_mm": problem.edge_margin_mm,
        "flaw_margin_mm": problem.flaw_margin_mm,
        "panels": [_panel_json(panel) for panel in problem.panels],
        "pieces": [_piece_json(piece) for piece in problem.pieces],
        "same_garment": [list(group) for group in problem.same_garment],
        "match": [_match_json(match) for match in problem.match],
        "pin": [
            {
                "piece": pin.piece,
                "copy": pin.copy,
                "panel": pin.panel,
                "piece_point": list(pin.piece_point),
                "panel_point": list(pin.panel_point),
                "within_mm": pin.within_mm,
            }
            for pin in problem.pin
        ],
        "locked": [_lying_json(lock) for lock in problem.locked],
    }


def verdict_to_json(verdict: Verdict) -> dict[str, object]:
    """The verdict as a verdict-1 object."""
    proof, spare = verdict.proof, verdict.spare
    return {
        "format": ANSWER_FORMAT,
        "verdict": verdict.verdict,
        "placements": [
            {**_lying_json(placement), "outline": _ring_json(placement.outline)}
            for placement in verdict.placements
        ],
        "unplaced": [{"piece": piece, "copy": copy} for piece, copy in verdict.unplaced],
        "proof": proof
        and {
            "kind": proof.kind,
            "pieces": list(proof.pieces),
            "panels": list(proof.panels),
            "need_mm2": proof.need_mm2,
            "have_mm2": proof.have_mm2,
            "text": proof.text,
        },
        "spare": spare
        and {
            "used_mm2": spare.used_mm2,
            "usable_mm2": spare.usable_mm2,
            "holds_to_inset_mm": spare.holds_to_inset_mm,
            "holds_to_shrink_pct": spare.holds_to_shrink_pct,
            "chance": spare.chance
            and {
                "low": spare.chance.low,
                "high": spare.chance.high,
                "samples": spare.chance.samples,
                "tape_mm": spare.chance.tape_mm,
            },
        },
        "seconds": verdict.seconds,
        "seed": verdict.seed,
        "engine": verdict.engine,
        "notes": list(verdict.notes),
    }


def _no_number(word: str) -> object:
    raise ProblemError(f"file: {word} is not a number that can be used")


def _object(pairs: list[tuple[str, object]]) -> dict[str, object]:
    """A JSON object whose keys all differ; with two of a name nobody knows which one holds."""
    data = dict(pairs)
    if len(data) < len(pairs):
        names = [name for name, _ in pairs]
        twice = next(name for name in names if names.count(name) > 1)
        raise ProblemError(f"file: the key '{twice}' stands twice in one object")
    return data


def _panel(value: object, place: str) -> Panel:
    data = parts.part_of(value, place, _PANEL, ("id", "outline"))
    repeat = data.get("repeat")
    return Panel(
        id=parts.name_of(data["id"], f"{place}.id"),
        garment=parts.name_of(data.get("garment", data["id"]), f"{place}.garment"),
        outline=parts.outline_of(data["outline"], f"{place}.outline"),
        flaws=parts.items_of(data.get("flaws"), f"{place}.flaws", parts.outline_of),
        grain_deg=parts.number_of(data.get("grain_deg", 90), f"{place}.grain_deg"),
        one_way=parts.flag_of(data.get("one_way", False), f"{place}.one_way"),
        repeat=None if repeat is None else _repeat(repeat, f"{place}.repeat"),
    )


def _repeat(value: object, place: str) -> Repeat:
    data = parts.part_of(value, place, _REPEAT, ())

    def length(key: str) -> float | None:
        given = data.get(key)
        return None if given is None else parts.number_of(given, f"{place}.{key}", 0.1, 1e5)

    origin = parts.point_of(data.get("origin", [0, 0]), f"{place}.origin")
    return Repeat(length("along_mm"), length("across_mm"), origin)


def _piece(value: object, place: str) -> Piece:
    data = parts.part_of(value, place, _PIECE, ("id", "outline"))

    def names(key: str) -> tuple[str, ...] | None:
        given = data.get(key)
        return None if given is None else parts.names_of(given, f"{place}.{key}")

    return Piece(
        id=parts.name_of(data["id"], f"{place}.id"),
        outline=parts.outline_of(data["outline"], f"{place}.outline"),
        grain_deg=parts.number_of(data.get("grain_deg", 90), f"{place}.grain_deg"),
        count=parts.whole_of(data.get("count", 1), f"{place}.count", 1, MOST_COPIES),
        mirrored=parts.whole_of(data.get("mirrored", 0), f"{place}.mirrored", 0, MOST_COPIES),
        grain_tolerance_deg=parts.number_of(
            data.get("grain_tolerance_deg", 0), f"{place}.grain_tolerance_deg", 0, 180
        ),
        bias=parts.flag_of(data.get("bias", False), f"{place}.bias"),
        panels=names("panels"),
        garments=names("garments"),
    )


def _spot(value: object, place: str) -> Spot:
    data = parts.part_of(value, place, _SPOT, _SPOT)
    return Spot(
        parts.name_of(data["piece"], f"{place}.piece"),
        parts.whole_of(data["copy"], f"{place}.copy", 0, MOST_COPIES),
        parts.point_of(data["at"], f"{place}.at"),
    )


def _match(value: object, place: str) -> Match:
    data = parts.part_of(value, place, _MATCH, ("a", "b"))
    direction = data.get("direction", "along")
    if direction not in ("along", "across", "both"):
        raise ProblemError(f"{place}.direction: it is one of along, across, both")
    return Match(
        _spot(data["a"], f"{place}.a"),
        _spot(data["b"], f"{place}.b"),
        direction,
        parts.number_of(data.get("within_mm", 3), f"{place}.within_mm", 0, LARGEST_MARGIN_MM),
    )


def _pin(value: object, place: str) -> Pin:
    data = parts.part_of(value, place, _PIN, _PIN[:-1])
    return Pin(
        parts.name_of(data["piece"], f"{place}.piece"),
        parts.whole_of(data["copy"], f"{place}.copy", 0, MOST_COPIES),
        parts.name_of(data["panel"], f"{place}.panel"),
        parts.point_of(data["piece_point"], f"{place}.piece_point"),
        parts.point_of(data["panel_point"], f"{place}.panel_point"),
        parts.number_of(data.get("within_mm", 5), f"{place}.within_mm", 0, LARGEST_MARGIN_MM),
    )


def _locked(value: object, place: str) -> Locked:
    data = parts.part_of(value, place, _LOCKED, _LOCKED)
    return Locked(
        parts.name_of(data["piece"], f"{place}.piece"),
        parts.whole_of(data["copy"], f"{place}.copy", 0, MOST_COPIES),
        parts.name_of(data["panel"], f"{place}.panel"),
        parts.flag_of(data["mirrored"], f"{place}.mirrored"),
        parts.number_of(data["rotation_deg"], f"{place}.rotation_deg"),
        parts.point_of(data["translation"], f"{place}.translation"),
    )


def _panel_json(panel: Panel) -> dict[str, object]:
    repeat = panel.repeat
    return {
        "id": panel.id,
        "garment": panel.garment,
        "outline": _ring_json(panel.outline),
        "flaws": [_ring_json(flaw) for flaw in panel.flaws],
        "grain_deg": panel.grain_deg,
        "one_way": panel.one_way,
        "repeat": repeat
        and {
            "along_mm": repeat.along_mm,
            "across_mm": repeat.across_mm,
            "origin": list(repeat.origin),
        },
    }


def _piece_json(piece: Piece) -> dict[str, object]:
    return {
        "id": piece.id,
        "outline": _ring_json(piece.outline),
        "grain_deg": piece.grain_deg,
        "count": piece.count,
        "mirrored": piece.mirrored,
        "grain_tolerance_deg": piece.grain_tolerance_deg,
        "bias": piece.bias,
        "panels": None if piece.panels is None else list(piece.panels),
        "garments": None if piece.garments is None else list(piece.garments),
    }


def _match_json(match: Match) -> dict[str, object]:
    def spot(value: Spot) -> dict[str, object]:
        return {"piece": value.piece, "copy": value.copy, "at": list(value.at)}

    return {
        "a": spot(match.a),
        "b": spot(match.b),
        "direction": match.direction,
        "within_mm": match.within_mm,
    }


def _lying_json(lying: Locked | Placement) -> dict[str, object]:
    return {
        "piece": lying.piece,
        "copy": lying.copy,
        "panel": lying.panel,
        "mirrored": lying.mirrored,
        "rotation_deg": lying.rotation_deg,
        "translation": list(lying.translation),
    }


def _ring_json(outline: Outline) -> list[Point]:
    return [(x, y) for x, y in outline]
