"""Families of school questions on circles: angles, arcs, chords, tangents, secants, sectors."""

import cmath
import math

from tests.geometry.school_sheet import Sheet, Unfit, family, foot, meet, polar, triangle

RADII = range(3, 16)


def around(s: Sheet, radius: float, **places: float) -> None:
    """Points of the circle round O at these directions in degrees."""
    ordered = sorted(place % 360 for place in places.values())
    gaps = [(b - a) % 360 for a, b in zip(ordered, ordered[1:] + ordered[:1], strict=True)]
    if len(ordered) > 1 and min(gaps) < 12:
        raise Unfit("crowded")
    s.put(O=0j, **{name: polar(radius, place) for name, place in places.items()})


def contacts(outer: complex, radius: float) -> tuple[complex, complex]:
    """Where the two tangents from a point touch the circle round 0."""
    turn = math.acos(radius / abs(outer))
    way = outer / abs(outer)
    return radius * way * cmath.exp(1j * turn), radius * way * cmath.exp(-1j * turn)


# Angles


@family(9)
def inscribed_and_central(s: Sheet) -> None:
    a, b, c = 0, s.pick("b", range(40, 170, 2)), s.pick("c", range(190, 330, 2))
    around(s, 5, A=a, B=b, C=c)
    s.show("circle with centre O through A, B and C", "segments OA, OB, CA, CB")
    if s.chance.random() < 0.5:
        s.size("∠AOB")
        s.ask("∠ACB")
    else:
        s.size("∠ACB")
        s.ask("∠AOB")


@family(8)
def same_segment_and_triangle(s: Sheet) -> None:
    b, c, d = s.pick("b", range(40, 120, 2)), s.pick("c", range(130, 230, 2)), s.pick("d", range(240, 340, 2))
    around(s, 5, A=0, B=b, C=c, D=d)
    at = s.at
    s.put(E=meet(at["A"], at["C"], at["B"], at["D"]))
    s.show("circle with centre O through A, B, C and D", "AC and BD intersect at E", "segments AB, CD")
    s.size("∠BAC", "∠ABD")
    s.ask(s.either("∠DCA", "∠CED", "∠AEB", "∠BDC"))


@family(8)
def radii_isosceles_and_centre(s: Sheet) -> None:
    """∠OAB from ∠ACB through the angle at the centre and an isosceles triangle."""
    around(s, 5, A=0, B=s.pick("b", range(40, 170, 2)), C=s.pick("c", range(190, 330, 2)))
    s.show("circle with centre O through A, B and C", "segments OA, OB, AB, CA, CB")
    if s.chance.random() < 0.5:
        s.size("∠OAB")
        s.ask("∠ACB")
    else:
        s.size("∠ACB")
        s.ask("∠OBA")


@family(6)
def semicircle_and_angles(s: Sheet) -> None:
    around(s, 5, A=180, B=0, C=s.pick("c", range(30, 150, 2)), D=s.pick("d", range(210, 330, 2)))
    s.show("circle with centre O through A, B, C and D", "segments AC, BC, CD, AD, BD")
    s.tell("AB is a diameter of circle O")
    s.size("∠ABC")
    s.ask(s.either("∠BAC", "∠CDB", "∠ADC"))


@family(6)
def cyclic_quadrilateral_and_exterior(s: Sheet) -> None:
    b, c, d = s.pick("b", range(50, 120, 2)), s.pick("c", range(140, 220, 2)), s.pick("d", range(240, 320, 2))
    around(s, 5, A=0, B=b, C=c, D=d)
    at = s.at
    s.put(E=at["C"] + (at["C"] - at["D"]) * 0.5)
    s.show("circle with centre O through A, B, C and D", "segments AB, BC, CD, DA", "DC is produced to E")
    s.size("∠DAB", "∠ABC")
    s.ask(s.either("∠BCE", "∠ADC", "∠BCD"))


@family(8)
def arcs_and_inscribed_angles(s: Sheet) -> None:
    b, c, d = s.pick("b", range(40, 100, 2)), s.pick("c", range(120, 178, 2)), s.pick("d", range(220, 330, 2))
    around(s, 5, A=0, B=b, C=c, D=d)
    s.show("circle with centre O through A, B, C and D", "segments AD, BD, CD")
    s.size("arc AB", "arc BC")
    s.ask(s.either("∠ADB", "∠ADC", "∠BDC"))


@family(6)
def arc_from_inscribed_angle(s: Sheet) -> None:
    b, d = s.pick("b", range(40, 170, 2)), s.pick("d", range(200, 330, 2))
    around(s, 5, A=0, B=b, D=d)
    s.show("circle with centre O through A, B and D", "segments AD, BD")
    s.size("∠ADB")
    s.ask("arc AB")


@family(4)
def arcs_round_the_circle(s: Sheet) -> None:
    b, c = s.pick("b", range(60, 150, 2)), s.pick("c", range(200, 300, 2))
    around(s, 5, A=0, B=b, C=c)
    if c - b > 176 or 360 - c > 176:
        raise Unfit("major")
    s.show("circle with centre O through A, B and C", "segments AB, BC, CA")
    s.size("arc AB", "arc BC")
    s.ask(s.either("arc CA", "∠ABC"))


@family(4)
def arcs_in_letters(s: Sheet) -> None:
    b, c = s.pick("b", range(60, 150, 5)), s.pick("c", range(200, 300, 5))
    around(s, 5, A=0, B=b, C=c)
    if c - b > 176 or 360 - c > 176:
        raise Unfit("major")
    s.show("circle with centre O through A, B and C", "segments AB, BC, CA")
    x = s.pick("x", (10, 15, 20, 25))
    s.in_letter("arc AB", "x", s.pick("m", (1, 2, 3)), x)
    s.in_letter("arc BC", "x", s.pick("n", (1, 2, 4)), x)
    s.in_letter("arc CA", "x", s.pick("k", (1, 3, 5)), x)
    s.ask(s.either("x", "∠ACB"))


@family(4)
def chords_crossing_inside_and_arcs(s: Sheet) -> None:
    b, c, d = s.pick("b", range(40, 110, 2)), s.pick("c", range(130, 178, 2)), s.pick("d", range(210, 330, 2))
    around(s, 5, A=0, B=b, C=c, D=d)
    if d - c > 176:
        raise Unfit("major")
    at = s.at
    s.put(E=meet(at["A"], at["C"], at["B"], at["D"]))
    s.show("circle with centre O through A, B, C and D", "AC and BD intersect at E")
    s.size("arc AB", "arc CD")
    s.ask(s.either("∠AEB", "∠BEC"))


@family(3)
def secants_outside_and_arcs(s: Sheet) -> None:
    half, far = s.pick("p", range(10, 35, 2)), s.pick("q", range(50, 88, 2))
    around(s, 5, A=half, C=-half, B=180 - far, D=180 + far)
    at = s.at
    s.put(P=meet(at["B"], at["A"], at["D"], at["C"]))
    s.show("circle with centre O through A, B, C and D", "P-A-B", "P-C-D")
    s.size("arc AC", "arc BD")
    s.ask("∠BPD")


@family(5)
def tangent_and_chord(s: Sheet) -> None:
    b, c = s.pick("b", range(40, 160, 2)), s.pick("c", range(190, 320, 2))
    around(s, 5, T=0, B=b, C=c)
    s.put(P=5 + 6j)
    s.show("circle with centre O through T, B and C", "segments TB, BC, CT")
    s.tell("PT is a tangent to circle O at T")
    if s.chance.random() < 0.6:
        s.size("∠PTB")
        s.size("∠TBC")
        s.ask(s.either("∠TCB", "∠BTC"))
    else:
        s.size("∠TCB")
        s.ask("∠PTB")


@family(6)
def tangent_radius_and_isosceles(s: Sheet) -> None:
    """A tangent, a radius, an isosceles triangle of radii and the angle at the centre."""
    b = s.pick("b", range(30, 150, 2))
    around(s, 5, T=0, B=b)
    if b >= 85:
        raise Unfit("no crossing")
    p = meet(5 + 0j, 5 + 1j, 0j, polar(1, b))
    s.put(P=p)
    s.show("circle with centre O through T and B", "O-B-P", "segments OT, TB")
    s.tell("PT is a tangent to circle O at T")
    s.size("∠TPO")
    s.ask(s.either("∠PTB", "∠OTB", "∠TBO"))


@family(6)
def tangent_isosceles_and_parallel(s: Sheet) -> None:
    """A chord parallel to a tangent makes an isosceles triangle at the point of contact."""
    b = s.pick("b", range(30, 80, 2))
    around(s, 5, T=-90, A=b, B=180 - b)
    s.put(P=5 - 5j, Q=-4 - 5j)
    s.show("circle with centre O through T, A and B", "Q-T-P", "segments TA, TB, AB, OA, OT")
    s.tell("PT is a tangent to circle O at T", "BA ∥ QP")
    s.size(s.either("∠ATB", "∠PTA"))
    s.ask(s.either("∠ABT", "∠AOT", "∠OAT"))


@family(5)
def two_tangents_and_angles(s: Sheet) -> None:
    half = s.pick("w", range(15, 70))
    r = 5
    p = complex(r / math.sin(math.radians(half)))
    a, b = contacts(p, r)
    s.put(O=0j, P=p, A=a, B=b)
    c = s.pick("c", range(150, 211, 5))
    s.put(C=polar(r, c))
    s.show("circle with centre O through A, B and C", "segments AC, BC, AB, OA, OB")
    s.tell("PA and PB are tangents to circle O at A and B")
    s.size("∠APB")
    s.ask(s.either("∠ACB", "∠OAB", "∠AOB", "∠PAB"))


# Lengths


@family(6)
def semicircle_and_pythagoras(s: Sheet) -> None:
    p, q = s.pick("p", RADII), s.pick("q", RADII)
    h = math.hypot(p, q)
    a, b = complex(-h / 2), complex(h / 2)
    c = complex(-h / 2 + p * p / h, p * q / h)
    s.put(O=0j, A=a, B=b, C=c)
    s.show("circle with centre O through A, B and C", "segments AC, BC")
    s.tell("AB is a diameter of circle O")
    asked = s.either("AB", "OA", "BC", "area of △ABC")
    s.size("AC", "AB" if asked == "BC" else "BC")
    s.ask(asked)


@family(4)
def semicircle_and_ratio(s: Sheet) -> None:
    r, w = s.pick("r", RADII), s.pick("w", range(20, 70))
    around(s, r, A=180, B=0, C=2 * w)
    s.show("circle with centre O through A, B and C", "segments AC, BC")
    s.tell("AB is a diameter of circle O")
    s.size("∠CAB", "OA")
    s.ask(s.either("AC", "BC"))


@family(6)
def tangent_radius_and_pythagoras(s: Sheet) -> None:
    r, t = s.pick("r", RADII), s.pick("t", RADII)
    way = polar(1, math.degrees(math.atan2(t, r)))
    s.put(O=0j, T=complex(r), P=complex(r, t), B=r * way)
    s.show("circle with centre O through T and B", "O-B-P", "segment OT")
    s.tell("PT is a tangent to circle O at T")
    asked = s.either("OP", "PT", "OT", "BP")
    s.size(*{"OP": ("OT", "PT"), "PT": ("OT", "OP"), "OT": ("PT", "OP"), "BP": ("OT", "PT")}[asked])
    s.ask(asked)


@family(4)
def tangent_with_a_letter(s: Sheet) -> None:
    """OT = x, PB beyond the circle and PT known: (x + b)² = x² + t²."""
    r, t, _ = s.chance.choice(((3, 4, 5), (5, 12, 13), (8, 15, 17), (6, 8, 10), (9, 12, 15)))
    way = polar(1, math.degrees(math.atan2(t, r)))
    s.put(O=0j, T=complex(r), P=complex(r, t), B=r * way)
    s.unit = ""
    s.show("circle with centre O through T and B", "O-B-P", "segment OT")
    s.tell("PT is a tangent to circle O at T")
    s.in_letter("OT", "x", 1, r)
    s.size("PT", "BP")
    s.ask(s.either("x", "OP"))


@family(5)
def two_tangents_and_lengths(s: Sheet) -> None:
    r, t = s.pick("r", RADII), s.pick("t", RADII)
    p = complex(math.hypot(r, t))
    a, b = contacts(p, r)
    s.put(O=0j, P=p, A=a, B=b)
    s.show("circle with centre O through A and B", "segments OA, OB, OP")
    s.tell("PA and PB are tangents to circle O at A and B")
    asked = s.either("PB", "OP", "perimeter of PAOB", "area of PAOB")
    if asked == "PB":
        s.size("PA")
    else:
        s.size("PA", "OA")
    s.ask(asked)


@family(3)
def two_tangents_at_sixty(s: Sheet) -> None:
    r = s.pick("r", RADII)
    half = s.pick("w", (30, 45, 60, 20, 35))
    p = complex(r / math.sin(math.radians(half)))
    a, b = contacts(p, r)
    s.put(O=0j, P=p, A=a, B=b)
    s.show("circle with centre O through A and B", "segments OA, OB, OP, AB")
    s.tell("PA and PB are tangents to circle O at A and B")
    s.size("∠APB", "OA")
    s.ask(s.either("PA", "AB", "OP"))


@family(3)
def tangents_in_letters(s: Sheet) -> None:
    r, x = s.pick("r", RADII), s.pick("x", range(3, 9))
    t = 2 * x + s.pick("d", range(1, 6))
    p = complex(math.hypot(r, t))
    a, b = contacts(p, r)
    s.put(O=0j, P=p, A=a, B=b)
    s.unit = ""
    s.show("circle with centre O through A and B", "segments OA, OB")
    s.tell("PA and PB are tangents to circle O at A and B")
    s.in_letter("PA", "x", 2, x)
    s.in_letter("PB", "x", s.pick("n", (1, 3, 4)), x)
    s.ask(s.either("x", "PA"))


@family(4)
def incircle_touching(s: Sheet) -> None:
    """The tangents from the corners of a triangle."""
    x, y, z = (s.pick(name, range(2, 12)) for name in "pqr")
    a, b, c = triangle(y + z, x + z, x + y)
    d, e, f = b + (c - b) * y / (y + z), c + (a - c) * z / (x + z), a + (b - a) * x / (x + y)
    i = meet(d, d + 1j * (c - b), f, f + 1j * (b - a))
    s.put(A=a, B=b, C=c, D=d, E=e, F=f, O=i)
    s.show("triangle ABC", "circle with centre O is inscribed in triangle ABC")
    s.show("circle O touches BC at D", "circle O touches CA at E", "circle O touches AB at F")
    asked = s.either("AF", "BC", "perimeter of △ABC")
    s.size(*{"AF": ("AB", "BC", "CA"), "BC": ("AB", "CA", "AF"), "perimeter of △ABC": ("AF", "BD", "CE")}[asked])
    s.ask(asked)


@family(3)
def incircle_radius_of_a_right_triangle(s: Sheet) -> None:
    p, q, h = s.chance.choice(((3, 4, 5), (5, 12, 13), (8, 15, 17), (6, 8, 10), (20, 21, 29)))
    r = (p + q - h) / 2
    s.put(C=0j, A=complex(p), B=q * 1j, O=complex(r, r), D=r * 1j, E=complex(r))
    s.put(F=foot(s.at["O"], s.at["A"], s.at["B"]))
    s.show("triangle ABC", "circle with centre O is inscribed in triangle ABC")
    s.show("circle O touches BC at D", "circle O touches CA at E", "circle O touches AB at F", "segments OD, OE")
    s.tell("∠ACB = 90°")
    s.size("AC", "BC")
    s.ask("OD")


@family(5)
def chord_and_its_distance(s: Sheet) -> None:
    half, apart = s.pick("h", RADII), s.pick("d", RADII)
    s.put(O=0j, M=complex(0, apart), A=complex(-half, apart), B=complex(half, apart))
    s.show("circle with centre O through A and B", "M lies on AB", "segments AB, OM, OA")
    s.tell(s.either("OM ⊥ AB", "AM = MB"))
    asked = s.either("OA", "OM", "AB")
    s.size(*{"OA": ("AB", "OM"), "OM": ("AB", "OA"), "AB": ("OA", "OM")}[asked])
    s.ask(asked)


@family(3)
def chord_and_arrow(s: Sheet) -> None:
    """The height of an arc over its chord gives the radius."""
    half, apart = s.chance.choice(((4, 3), (12, 5), (8, 6), (15, 8), (5, 12), (7, 24), (8, 15)))
    r = math.hypot(half, apart)
    s.put(O=0j, M=complex(0, apart), A=complex(-half, apart), B=complex(half, apart), C=r * 1j)
    s.show("circle with centre O through A, B and C", "M lies on AB", "segments AB, OA", "O-M-C")
    s.tell("OC ⊥ AB")
    s.size("AB", "MC")
    s.ask("OA")


@family(3)
def two_parallel_chords(s: Sheet) -> None:
    p, q, r = s.chance.choice(((3, 4, 5), (6, 8, 10), (5, 12, 13), (7, 24, 25), (15, 20, 25)))
    other, apart = (q, p) if s.chance.random() < 0.5 else (q / 2, math.sqrt(r * r - q * q / 4))
    s.put(O=0j, A=complex(-p, q), B=complex(p, q), C=complex(-other, -apart), D=complex(other, -apart))
    s.put(M=complex(0, q), N=complex(0, -apart))
    s.show(
        "circle with centre O through A, B, C and D", "M lies on AB", "N lies on CD", "segments AB, CD, OA, OC", "M-O-N"
    )
    s.tell("OM ⊥ AB", "ON ⊥ CD")
    s.size("AB", "CD", "OA")
    s.ask("MN")


@family(4)
def equal_chords(s: Sheet) -> None:
    b, turn = s.pick("b", range(40, 110, 2)), s.pick("t", range(130, 220, 5))
    around(s, 5, A=0, B=b, C=turn, D=turn + b)
    s.show("circle with centre O through A, B, C and D", "segments AB, CD, OA, OB, OC, OD")
    s.tell("AB = CD")
    s.size("∠AOB")
    s.ask(s.either("∠COD", "∠OCD"))


@family(4)
def crossing_chords(s: Sheet) -> None:
    a, b, c = s.pick("a", range(2, 13)), s.pick("b", range(2, 13)), s.pick("c", range(2, 13))
    d = a * b / c
    w = s.pick("w", range(50, 130, 10))
    pa, pb, pc, pd = complex(-a), complex(b), polar(c, w), -polar(d, w)
    # the circle through A, B and C passes through D since a·b = c·d
    mid = (pa + pb) / 2
    centre = meet(mid, mid + 1j, pc / 2 + pd / 2, pc / 2 + pd / 2 + 1j * (pc - pd))
    s.put(A=pa, B=pb, C=pc, D=pd, E=0j, O=centre)
    if min(abs(centre), abs(d)) < 0.4:
        raise Unfit("close")
    s.show("circle with centre O through A, B, C and D", "AB and CD intersect at E")
    s.size("AE", "EB", "CE")
    s.ask(s.either("ED", "CD"))


@family(3)
def crossing_chords_in_a_letter(s: Sheet) -> None:
    """x and x + k against two numbers: a quadratic."""
    x, k = s.pick("x", (2, 3, 4, 6)), s.pick("k", (1, 2, 4, 5))
    product = x * (x + k)
    a = s.pick("a", (2, 3, 4, 6, 8))
    b = product / a
    pa, pb, pc, pd = complex(-a), complex(b), polar(x, 75), -polar(x + k, 75)
    mid = (pa + pb) / 2
    centre = meet(mid, mid + 1j, pc / 2 + pd / 2, pc / 2 + pd / 2 + 1j * (pc - pd))
    s.put(A=pa, B=pb, C=pc, D=pd, E=0j, O=centre)
    if abs(centre) < 0.4:
        raise Unfit("close")
    s.unit = ""
    s.show("circle with centre O through A, B, C and D", "AB and CD intersect at E")
    s.size("AE", "EB")
    s.in_letter("CE", "x", 1, x)
    s.in_letter("ED", "x", 1, x)
    s.ask(s.either("x", "CD"))


@family(3)
def tangent_and_secant(s: Sheet) -> None:
    near, t = s.pick("n", range(2, 9)), s.pick("t", range(4, 14))
    far = t * t / near
    if far - near < 1:
        raise Unfit("short")
    mid = (near + far) / 2
    up = s.pick("u", (1, 2, 3))
    centre = complex(mid, up)
    r = abs(centre - near)
    if abs(centre) <= r * 1.05:
        raise Unfit("inside")
    one, two = contacts(-centre, r)
    contact = one + centre if (one + centre).imag > (two + centre).imag else two + centre
    s.put(P=0j, A=complex(near), B=complex(far), T=contact, O=centre)
    s.show("circle with centre O through A, B and T", "P-A-B")
    s.tell("PT is a tangent to circle O at T")
    asked = s.either("PT", "PB", "AB")
    s.size("PA", "PB" if asked == "PT" else "PT")
    s.ask(asked)


@family(3)
def two_secants(s: Sheet) -> None:
    a, b, c = s.pick("a", range(2, 9)), s.pick("b", range(4, 20)), s.pick("c", range(2, 9))
    d = a * b / c
    if b - a < 2 or d - c < 2:
        raise Unfit("short")
    w = s.pick("w", (25, 35, 45))
    pa, pb, pc, pd = complex(a), complex(b), polar(c, w), polar(d, w)
    centre = meet((pa + pb) / 2, (pa + pb) / 2 + 1j, (pc + pd) / 2, (pc + pd) / 2 + 1j * polar(1, w))
    s.put(P=0j, A=pa, B=pb, C=pc, D=pd, O=centre)
    s.show("circle with centre O through A, B, C and D", "P-A-B", "P-C-D")
    asked = s.either("PD", "CD")
    s.size("PA", s.either("PB", "AB"), "PC")
    s.ask(asked)


@family(3)
def chord_from_the_centre_angle(s: Sheet) -> None:
    r, w = s.pick("r", RADII), s.pick("w", (60, 90, 120, 40, 70, 100))
    around(s, r, A=0, B=w)
    s.show("circle with centre O through A and B", "segments OA, OB, AB")
    s.size("OA", "∠AOB")
    s.ask(s.either("AB", "area of △OAB", "∠OAB"))


@family(3)
def circle_area_and_circumference(s: Sheet) -> None:
    r = s.pick("r", RADII)
    around(s, r, A=180, B=0)
    s.show("circle with centre O through A and B")
    s.tell("AB is a diameter of circle O")
    asked = s.either("area of circle O", "circumference of circle O", "OA")
    if asked == "OA":
        s.size(s.either("circumference of circle O", "area of circle O"))
    else:
        s.size(s.either("OA", "AB"))
    s.ask(asked)


@family(3)
def sector_and_arc_length(s: Sheet) -> None:
    r, w = s.pick("r", RADII), s.pick("w", (30, 40, 45, 60, 72, 80, 90, 100, 120, 135, 150))
    around(s, r, A=0, B=w)
    s.show("circle with centre O through A and B", "segments OA, OB")
    asked = s.either("area of sector OAB", "length of arc AB", "perimeter of sector OAB")
    s.size("OA", "∠AOB")
    s.ask(asked)


@family(2)
def angle_from_a_sector(s: Sheet) -> None:
    r, w = s.pick("r", RADII), s.pick("w", (30, 40, 45, 60, 90, 120, 150))
    around(s, r, A=0, B=w)
    s.show("circle with centre O through A and B", "segments OA, OB")
    s.size("OA", s.either("length of arc AB", "area of sector OAB"))
    s.ask("∠AOB")


@family(2)
def segment_of_a_circle(s: Sheet) -> None:
    r, w = s.pick("r", RADII), s.pick("w", (60, 90, 120))
    around(s, r, A=0, B=w)
    s.show("circle with centre O through A and B", "segments OA, OB, AB")
    s.size("OA", "∠AOB")
    s.ask("area of minor segment AB")


@family(3)
def circumradius_by_diameter_chain(s: Sheet) -> None:
    """A diameter, a chord at right angles to a radius, Pythagoras twice."""
    half, apart = s.pick("h", RADII), s.pick("d", RADII)
    r = math.hypot(half, apart)
    s.put(O=0j, A=complex(-r), B=complex(r), M=complex(apart), C=complex(apart, half), D=complex(apart, -half))
    s.show("circle with centre O through A, B, C and D", "AB and CD intersect at M", "segments OC, AC")
    s.tell("AB is a diameter of circle O", "AB ⊥ CD")
    s.size("OM", "CD")
    s.ask(s.either("OC", "AM", "AC"))
