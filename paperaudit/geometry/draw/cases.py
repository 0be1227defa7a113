"""Several figures that meet the same givens, side by side: at one scale, standing alike, numbered."""

from collections.abc import Mapping, Sequence
from dataclasses import replace

from paperaudit.geometry.draw.elements import Box, Label, Layout, Leg, Region, Stroke
from paperaudit.geometry.draw.layout import lay_out_alike
from paperaudit.geometry.draw.shown import ShownFigure
from paperaudit.geometry.draw.sketched import as_sketched
from paperaudit.geometry.draw.type_metrics import baseline_under, box_round, text_extent
from paperaudit.geometry.figure.plane import Spot

LEAST_WIDTH = 110.0
"""The width that each of the figures has at least."""
BETWEEN = 18.0
OVER_CAPTION, UNDER_CAPTION = 10.0, 8.0


def beside(figures: Sequence[ShownFigure], captions: Sequence[str]) -> Layout:
    """The figures from left to right, each over "Case 1" and its caption, where that is not too long for one line."""
    first = figures[0].standing(figures[0].true_positions(keep_lengths=True))
    places = [first, *(_like(first, figure) for figure in figures[1:])]
    drawn = lay_out_alike([figure.sheet(least_width=LEAST_WIDTH) for figure in figures], places)
    foot = max(layout.frame[3] - layout.frame[1] for layout in drawn)
    pieces, left = [], 0.0
    for number, (layout, caption) in enumerate(zip(drawn, captions, strict=True), start=1):
        width = layout.frame[2] - layout.frame[0]
        pieces.append(_moved(layout, (left - layout.frame[0], foot - layout.frame[3])))
        pieces.append(_captioned(f"Case {number}", caption, (left, foot + OVER_CAPTION, left + width, foot)))
        left += width + BETWEEN
    bottom = foot + OVER_CAPTION + UNDER_CAPTION
    return Layout(
        (0.0, 0.0, left - BETWEEN, bottom),
        tuple(one for piece in pieces for one in piece.strokes),
        tuple(one for piece in pieces for one in piece.arcs),
        tuple(one for piece in pieces for one in piece.dots),
        tuple(one for piece in pieces for one in piece.labels),
        "",
        tuple(one for piece in pieces for one in piece.circles),
        tuple(one for piece in pieces for one in piece.regions),
    )


def _like(first: Mapping[str, Spot], figure: ShownFigure) -> dict[str, Spot]:
    """A figure turned so that its points lie as near as can be to those of the first."""
    at = figure.true_positions(keep_lengths=True)
    points, model = ({name: complex(*spot) for name, spot in one.items()} for one in (at, first))
    turned = as_sketched(figure.arrangement, points, {name: model[name] for name in points if name in model})
    return {name: (spot.real, spot.imag) for name, spot in turned.items()}


def _captioned(name: str, caption: str, place: Box) -> Layout:
    left, top, right, _ = place
    whole = f"{name}: {caption}" if caption else name
    text = whole if text_extent(whole, "caption")[0] < right - left else name
    centre = ((left + right) / 2, top)
    box = box_round(centre, text_extent(text, "caption"))
    label = Label(text, centre, box, "caption", top + baseline_under(text, "caption"))
    return Layout(place, (), (), (), (label,))


def _moved(layout: Layout, by: Spot) -> Layout:
    """The same layout elsewhere on the page."""

    def shift(spot: Spot) -> Spot:
        return spot[0] + by[0], spot[1] + by[1]

    def shift_box(box: Box) -> Box:
        return box[0] + by[0], box[1] + by[1], box[2] + by[0], box[3] + by[1]

    return replace(
        layout,
        frame=shift_box(layout.frame),
        strokes=tuple(Stroke(tuple(map(shift, one.spots)), one.kind) for one in layout.strokes),
        arcs=tuple(replace(arc, centre=shift(arc.centre)) for arc in layout.arcs),
        dots=tuple(map(shift, layout.dots)),
        labels=tuple(
            replace(one, centre=shift(one.centre), box=shift_box(one.box), baseline=one.baseline + by[1])
            for one in layout.labels
        ),
        circles=tuple(replace(one, centre=shift(one.centre)) for one in layout.circles),
        regions=tuple(
            Region(shift(one.start), tuple(Leg(shift(leg.end), leg.radius, leg.turn) for leg in one.legs))
            for one in layout.regions
        ),
    )
