"""What an SVG file may not hold; each refusal names the place."""

import pytest

from planning.drafting.exchange.found import PatternFileError
from planning.drafting.exchange.read import read_pattern_file
from tests.planning.drafting.exchange.files_for_tests import SQUARE, from_svg, svg


@pytest.mark.parametrize(
    ("inside", "named"),
    [
        ("<script>alert(1)</script>", "a script"),
        ('<g id="top" onload="alert(1)"/>', "“onload” of the g “top”"),
        ("<foreignObject/>", "a foreignObject"),
        ('<use href="http://example.org/a.svg#b"/>', "http://example.org"),
        ('<a href="https://example.org"><rect width="9" height="9"/></a>', "https://example.org"),
        ('<image href="photo.png"/>', "photo.png"),
        (
            '<image xmlns:k="http://www.w3.org/1999/xlink" k:href="//example.org/a.png"/>',
            "//example",
        ),
        ('<use href="data:image/svg+xml,x"/>', "data:"),
        ('<rect fill="url(http://example.org/a)" width="9" height="9"/>', "fill"),
        ('<rect style="fill: url( \'a.svg#b\')" width="9" height="9"/>', "style"),
        ("<style>@import 'a.css';</style>", "a style"),
        ("<style>.a { fill: url(//example.org) }</style>", "a style"),
        ('<rect id="r" style="transform: scale(2)" width="9" height="9"/>', "the rect “r”"),
        ("<style>rect { width: 90px }</style>", "width"),
    ],
)
def test_script_and_links_outside_are_refused_by_name(inside, named):
    with pytest.raises(PatternFileError) as refusal:
        from_svg(SQUARE + inside)
    assert named in str(refusal.value)


def test_links_within_the_file_are_no_danger():
    found = from_svg(
        '<style>rect { fill: url(#a); stroke-width: 2 }</style><linearGradient id="a"/>'
        '<rect id="r" fill="url(#a)" width="90" height="90"/><use href="#r" x="200"/>'
    )
    assert len(found.pieces) == 2


BILLION = "".join(f'<!ENTITY l{n} "{f"&l{n - 1};" * 10 if n else "lol"}">' for n in range(10))


@pytest.mark.parametrize(
    "head",
    [
        f"<!DOCTYPE svg [{BILLION}]>",
        '<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/passwd">]>',
        '<!DOCTYPE svg SYSTEM "http://example.org/x.dtd" [<!ELEMENT g ANY>]>',
    ],
)
def test_entities_and_declarations_are_never_read(head):
    data = head.encode() + svg(SQUARE + "<text>&l9;</text>")
    with pytest.raises(PatternFileError, match="never read"):
        read_pattern_file(data, "bomb.svg")


def test_a_style_sheet_of_its_own_is_refused():
    data = b'<?xml-stylesheet href="http://example.org/a.css"?>' + svg(SQUARE)
    with pytest.raises(PatternFileError, match="style sheet"):
        read_pattern_file(data, "styled.svg")


def test_a_broken_file_is_refused_at_its_line():
    with pytest.raises(PatternFileError, match="line 2, column 3"):
        read_pattern_file(b"<svg>\n</g>", "broken.svg")


def test_a_cut_off_file_is_refused_whole():
    whole = svg(SQUARE + '<path id="b" d="M200 0 H300 V100 Z"/>')
    with pytest.raises(PatternFileError, match="cut short"):
        read_pattern_file(whole[:-20], "short.svg")


def test_uses_that_double_and_uses_in_a_circle_are_stopped():
    doubling = '<path id="a0" d="M0 0h9v9z"/>' + "".join(
        f'<g id="a{n}"><use href="#a{n - 1}"/><use href="#a{n - 1}"/></g>' for n in range(1, 40)
    )
    for inside in (f'<defs>{doubling}</defs><use href="#a39"/>', '<g id="a"><use href="#a"/></g>'):
        with pytest.raises(PatternFileError, match="Draw each piece once"):
            from_svg(inside)


def test_groups_too_deep_or_elements_too_many_are_stopped():
    for inside in ("<g>" * 300 + "</g>" * 300, "<g/>" * 60_000):
        with pytest.raises(PatternFileError, match="Save only the pieces"):
            from_svg(inside)


@pytest.mark.parametrize(
    ("shape", "words"),
    [
        ('<path id="p" d="M0 0 H100 V100 foo Z"/>', "path data of the path “p”"),
        ('<path id="p" d="M0 0 H100 V100 L5"/>', "path data of the path “p”"),
        ('<path id="p" d="M0 0 V100 H"/>', "path data of the path “p”"),
        ('<path id="p" d="M0 0 L NaN 5 L9 9 Z"/>', "path data of the path “p”"),
        ('<path id="p" d="M0 0 L 1e400 5 L9 9 Z"/>', "no number"),
        ('<path id="p" d="M0 0 L 9e8 5 L9 9 Z"/>', "over a kilometre"),
        ('<path id="p" d="M0 0 H6000 V10 Z"/>', "6.0 m long"),
        ('<path id="p" d="M0 0 A 1e9 1e9 0 1 0 10 10 Z"/>', "far too large"),
        ('<polygon id="p" points="0,0 5,5 9"/>', "pairs of numbers"),
        ('<rect id="p" width="-5" height="5"/>', "the rect “p”"),
        ('<rect id="p" width="5em" height="5"/>', "no fixed size"),
        ('<rect id="p" width="wide" height="5"/>', "no length"),
        ('<rect id="p" transform="turn(5)" width="5" height="5"/>', "“turn(5)” of the rect “p”"),
        ('<rect id="p" transform="scale(0)" width="5" height="5"/>', "leaves nothing"),
        ('<use id="p" href="#nowhere"/>', "#nowhere"),
        ('<svg id="p" viewBox="0 0 9 9"><rect width="5" height="5"/></svg>', "the svg “p”"),
        ('<path id="p" d="M0 0 L100 100 H0 L100 0 Z"/>', "the path “p” crosses or touches itself"),
        ("<text>nothing</text>", "no closed outline"),
    ],
)
def test_what_cannot_be_read_is_refused_with_its_place(shape, words):
    with pytest.raises(PatternFileError) as refusal:
        from_svg(shape)
    assert words in str(refusal.value)


def test_a_crossing_is_placed():
    with pytest.raises(PatternFileError, match=r"near \(50, -50\) mm"):
        from_svg('<path d="M0 0 L100 100 H0 L100 0 Z"/>')


@pytest.mark.parametrize(
    "head",
    [
        'width="4em" height="400mm" viewBox="0 0 400 400"',
        'width="0mm" height="400mm" viewBox="0 0 400 400"',
        'width="400mm" viewBox="0 0 400"',
        'width="400mm" viewBox="0 0 0 400"',
        'width="1e999mm" viewBox="0 0 400 400"',
    ],
)
def test_a_size_that_is_none_is_refused(head):
    with pytest.raises(PatternFileError):
        from_svg(SQUARE, head)


@pytest.mark.parametrize(
    "change",
    [
        ('data-count="2"', 'data-count="0"'),
        ('data-count="2"', 'data-count="99999999"'),
        ('data-mirrored="1"', 'data-mirrored="x"'),
        ('data-mirrored="1"', 'data-mirrored="3"'),
        ('data-line="seam"', 'data-line="other"'),
        ('data-line="grain"', 'data-line="other"'),
        ('data-edges="[', 'data-edges="[5,'),
        ('cx="', 'cx="nan" k="'),
    ],
)
def test_our_own_file_mended_wrongly_is_refused_by_its_piece(change):
    own = (
        '<g data-piece="ear" data-count="2" data-mirrored="1" data-grain-deg="90" data-edges="[]">'
        '<path data-line="cut" d="M0 0V50H50V0Z"/><path data-line="seam" d="M6 6V44H44V6Z"/>'
        '<path data-line="grain" d="M25 40V10"/><circle data-mark="eye" cx="9" cy="9" r="1"/></g>'
    )
    assert from_svg(own).pieces[0].mirrored == 1
    with pytest.raises(PatternFileError, match="“ear”"):
        from_svg(own.replace(*change))


def test_edges_beyond_the_seam_line_are_dropped():
    own = (
        '<g data-piece="ear" data-count="1" data-mirrored="0" data-grain-deg="nan" '
        'data-edges="[[&quot;foot&quot;,0,9]]" data-opening="foot">'
        '<path data-line="cut" d="M0 0V50H50V0Z"/><path data-line="seam" d="M6 6V44H44V6Z"/>'
        '<path data-line="grain" d="M25 40H5"/></g>'
    )
    (piece,) = from_svg(own).pieces
    assert (piece.edges, piece.opening, piece.grain_deg) == ((), None, 180)
