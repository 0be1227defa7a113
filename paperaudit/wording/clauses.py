"""Which reader takes which clause of the statement grammar."""

from collections.abc import Callable
from functools import cache
from pathlib import Path as File

from parsimonious.nodes import Node

from paperaudit.maths.grammar import expression_grammar
from paperaudit.maths.peg import Rules, compiled
from paperaudit.maths.tree import first_of
from paperaudit.model.fact import Fact
from paperaudit.wording import (
    arcs,
    bisectors,
    centres,
    chords,
    circles,
    constructed,
    corner_angles,
    crossings,
    halving,
    lines,
    positions,
    regions,
    relations,
    rings,
    shapes,
    shared_centre,
    sizes,
    survey,
    tangents,
    touching,
    within,
)
from paperaudit.wording.scene import Scene

GRAMMAR_FILES = ("statement.peg", "circle.peg", "arcs.peg", "centres.peg", "constructed.peg", "survey.peg", "ask.peg")
"""The grammar files of statements and asks, each on top of those before."""

READERS: dict[str, Callable[[Node, Scene], tuple[Fact, ...]]] = {
    "centre_of": centres.centre_of,
    "centre_lines": centres.centre_lines,
    "named_lines": centres.named_lines,
    "midline": centres.midline,
    "perp_meets": halving.perp_meets,
    "perps_meet": halving.perps_meet,
    "on_perp": halving.on_perp,
    "equidistant": halving.equidistant,
    "halving": halving.halving,
    "drop_meets": constructed.drop_meets,
    "line_through": constructed.line_through,
    "divides": constructed.divides,
    "hypotenuse_is": constructed.hypotenuse_is,
    "right_trapezium": constructed.right_trapezium,
    "special_triangle": constructed.special_triangle,
    "similarity": constructed.similarity,
    "drawn_on": constructed.drawn_on,
    "cut_alone": constructed.cut_alone,
    "crossing_square": constructed.crossing_square,
    "angles_unnamed": constructed.angles_unnamed,
    "elevation": survey.elevation,
    "compass_of": survey.compass_of,
    "size_alone": rings.size_alone,
    "polygon_sized": rings.polygon_sized,
    "semicircle": arcs.semicircle,
    "sector_is": arcs.sector_is,
    "arc_midpoint": arcs.arc_midpoint,
    "on_arc": arcs.on_arc,
    "subtends": arcs.subtends,
    "arc_drawn": arcs.arc_drawn,
    "circles_touch": touching.circles_touch,
    "circles_equal": touching.circles_equal,
    "common_tangent": touching.common_tangent,
    "incircle": touching.incircle,
    "circumcircle": touching.circumcircle,
    "shaded_is": regions.shaded_is,
    "concentric": shared_centre.concentric,
    "chord_touches": shared_centre.chord_touches,
    "circle_size": rings.circle_size,
    "circles_given": rings.circles_given,
    "two_circles": rings.two_circles,
    "meets_circle": rings.meets_circle,
    "secant": rings.secant,
    "tangents_meet": tangents.tangents_meet,
    "tangent_meets": tangents.tangent_meets,
    "tangents_from": tangents.tangents_from,
    "tangent_is": tangents.tangent_is,
    "touches": tangents.tangent_is,
    "chords_cross": chords.chords_cross,
    "in_disc": rings.in_disc,
    "chord_way": chords.chord_way,
    "chord_is": chords.chord_is,
    "cyclic": circles.cyclic,
    "centre_is": circles.centre_is,
    "on_circle": circles.on_circle,
    "circle_named": circles.circle_named,
    "alike": shapes.alike,
    "attached": shapes.attached,
    "right_at": shapes.right_at,
    "shape_is": shapes.shape,
    "shapes_named": shapes.shape,
    "shape_named": shapes.shape,
    "elided": shapes.elided,
    "concurrent": crossings.concurrent,
    "collinear": lines.collinear,
    "produced": lines.produced,
    "on_path": lines.on_path,
    "midpoint": lines.midpoint,
    "foot": lines.foot,
    "foot_elided": lines.foot_elided,
    "bisected": bisectors.bisected,
    "cevian": bisectors.cevian,
    "parallel": positions.parallel,
    "perpendicular": positions.perpendicular,
    "ray_between": within.ray_between,
    "inside": within.inside,
    "in_order": within.in_order,
    "line_parallel": within.line_parallel,
    "between": positions.between,
    "rays_side": positions.rays_side,
    "equal_parallel": positions.equal_parallel,
    "declared": positions.declared,
    "sides": positions.sides,
    "round_point": positions.round_point,
    "joined": lines.drawn,
    "drawn_are": lines.drawn,
    "drawn": lines.drawn,
    "bisects": bisectors.bisects,
    "bisectors": bisectors.bisectors,
    "cut_by": crossings.cut_by,
    "cut_them": crossings.cut_them,
    "cuts_two": crossings.cuts_two,
    "cuts_pair": crossings.cuts_two,
    "produced_meets": crossings.produced_meets,
    "cuts_one": crossings.cuts_one,
    "crossing": crossings.crossing,
    "diagonals": crossings.diagonals,
    "meeting_of": crossings.meeting_of,
    "has_size": sizes.has_size,
    "far_from": sizes.far_from,
    "on_bearing": sizes.on_bearing,
    "angles_listed": corner_angles.angles_listed,
    "angles_are": corner_angles.angles_are,
    "exterior_size": corner_angles.exterior_size,
    "ratio": relations.ratio,
    "ratio_words": corner_angles.ratio_words,
    "equal_all": relations.equal_all,
    "sum_to": relations.sum_to,
    "sum_is": relations.sum_is,
    "size_elided": relations.size_elided,
    "right_angle": relations.right_angle,
    "respective": relations.respective,
    "compared": relations.compared,
    "chain": relations.chain,
    "measured_as": relations.measured_as,
}


@cache
def statement_grammar() -> Rules:
    """The grammar of statements and asks, on top of that of expressions, compiled once a process."""
    here = File(__file__).parent
    rules = [(here / name).read_text(encoding="utf-8") for name in GRAMMAR_FILES]
    return compiled("\n".join(rules), expression_grammar())


def facts_of(clause: Node, scene: Scene) -> tuple[Fact, ...]:
    """The facts of one `clause`. Raises NotUnderstood where its names do not fit together."""
    found = first_of(clause, READERS)
    if found is None:
        raise LookupError(f"no reader for {clause.text!r}")
    return READERS[found.expr_name](found, scene)
