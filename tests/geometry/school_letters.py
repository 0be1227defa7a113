"""Families of school questions with letters in lengths, angles and arcs, most of them mixing two theorems."""

import math

from tests.geometry.school_circles import around, contacts
from tests.geometry.school_sheet import Sheet, Unfit, family, foot, meet, polar, triangle
from tests.geometry.school_triangles import two_angles

SIDES = range(3, 16)


@family(5)
def perimeter_in_a_letter(s: Sheet) -> None:
    x = s.pick("x", range(3, 9))
    p, q, r = x + s.pick("d", range(0, 6)), 2 * x - s.pick("e", range(0, 3)), x + s.pick("f", range(1, 8))
    a, b, c = triangle(p, q, r)
    s.put(A=a, B=b, C=c)
    s.unit = ""
    s.show("triangle ABC")
    s.in_letter("BC", "x", 1, x)
    s.in_letter("AC", "x", 2, x)
    s.in_letter("AB", "x", 1, x)
    s.size("perimeter of △ABC")
    s.ask(s.either("x", "AB", "AC"))


@family(5)
def bisector_in_a_letter(s: Sheet) -> None:
    x, half = s.pick("x", range(5, 20)), s.pick("h", range(15, 50))
    a, b, c = two_angles(9, 2 * half, s.pick("c", range(25, 70)))
    s.put(A=a, B=b, C=c, D=meet(b, polar(1, half), a, c))
    s.show("triangle ABC", "D lies on AC", "segment BD")
    s.tell("BD bisects ∠ABC")
    s.in_letter("∠ABD", "x", s.pick("m", (1, 2)), x)
    s.in_letter("∠DBC", "x", s.pick("n", (3, 4)), x)
    s.size("∠ACB")
    s.ask(s.either("x", "∠BAC", "∠ADB"))


@family(5)
def parallels_in_two_letters(s: Sheet) -> None:
    """Alternate angles give x, a straight line gives y."""
    w, x, y = s.pick("w", range(40, 140)), s.pick("x", range(8, 25)), s.pick("y", range(8, 25))
    g, h = 0j, -polar(5, w)
    s.put(A=g - 4, G=g, B=g + 4, C=h - 4, H=h, D=h + 4, E=polar(3, w), F=h - polar(3, w))
    s.show("A-G-B", "C-H-D", "E-G-H-F")
    s.tell("AB ∥ CD")
    s.in_letter(s.either("∠AGH", "∠EGB"), "x", s.pick("m", (1, 2, 3)), x)
    s.in_letter("∠GHD", "x", s.pick("n", (4, 5)), x)
    s.in_letter("∠GHC", "y", s.pick("k", (1, 2, 3)), y)
    s.ask(s.either("x", "y", "∠GHC"))


@family(4)
def isosceles_angles_in_a_letter(s: Sheet) -> None:
    base, x = s.pick("b", range(25, 80)), s.pick("x", range(5, 20))
    a, b, c = two_angles(8, base, base)
    s.put(A=a, B=b, C=c, D=c + 4)
    s.show("triangle ABC", "B-C-D")
    s.tell("AB = AC")
    s.in_letter("∠ABC", "x", s.pick("m", (1, 2, 3)), x)
    s.in_letter(s.either("∠BAC", "∠ACD"), "x", s.pick("n", (2, 4, 5)), x)
    s.ask(s.either("x", "∠ACB"))


@family(3)
def equilateral_in_letters(s: Sheet) -> None:
    side, x = s.pick("s", range(6, 20)), s.pick("x", range(2, 7))
    s.put(A=side * math.sqrt(3) / 2 * 1j, B=complex(-side / 2), C=complex(side / 2))
    s.unit = ""
    s.show("equilateral triangle ABC")
    s.in_letter("AB", "x", 2, x)
    s.in_letter("BC", "x", s.pick("n", (1, 3)), x)
    s.ask(s.either("x", "AC", "perimeter of △ABC"))


@family(4)
def congruent_stated_in_letters(s: Sheet) -> None:
    a, b, c = triangle(*(s.pick(name, range(6, 16)) for name in "pqr"))
    x = s.pick("x", range(2, 8))
    way, shift = polar(1, s.pick("t", range(0, 360, 30))), complex(35, 5)
    s.put(A=a, B=b, C=c, D=a * way + shift, E=b * way + shift, F=c * way + shift)
    s.unit = ""
    s.show("triangles ABC and DEF")
    s.tell("△ABC ≡ △DEF")
    s.in_letter("AB", "x", s.pick("m", (1, 2)), x)
    s.in_letter("DE", "x", s.pick("n", (3, 4)), x)
    s.size("BC", "DF")
    s.ask(s.either("x", "DE", "perimeter of △ABC"))


@family(4)
def similar_stated_in_letters(s: Sheet) -> None:
    a, b, c = triangle(*(s.pick(name, range(6, 16)) for name in "pqr"))
    x, k = s.pick("x", range(2, 8)), s.pick("k", (0.5, 1.5, 2, 3))
    way, shift = polar(k, s.pick("t", range(0, 360, 30))), complex(60, 5)
    s.put(A=a, B=b, C=c, D=a * way + shift, E=b * way + shift, F=c * way + shift)
    s.unit = ""
    s.show("triangles ABC and DEF")
    s.tell("△ABC ∼ △DEF")
    s.size("AB", "DE", "BC")
    s.in_letter("EF", "x", s.pick("m", (1, 2, 3)), x)
    s.ask(s.either("x", "EF"))


@family(4)
def right_triangle_angles_in_letters(s: Sheet) -> None:
    w, x = s.pick("w", range(20, 70)), s.pick("x", range(4, 18))
    s.put(B=0j, A=complex(6), C=6 * math.tan(math.radians(w)) * 1j)
    s.show("triangle ABC")
    s.tell("AB ⊥ BC")
    s.in_letter("∠BAC", "x", s.pick("m", (1, 2)), x)
    s.in_letter("∠ACB", "x", s.pick("n", (1, 3)), x)
    s.ask(s.either("x", "∠ACB"))


@family(4)
def midsegment_in_a_letter(s: Sheet) -> None:
    base, x = s.pick("b", range(6, 20, 2)), s.pick("x", range(2, 8))
    a, b, c = triangle(base, s.pick("q", range(6, 16)), s.pick("r", range(6, 16)))
    s.put(A=a, B=b, C=c, D=(a + b) / 2, E=(a + c) / 2)
    s.unit = ""
    s.show("triangle ABC", "D is the midpoint of AB", "E is the midpoint of AC", "segment DE")
    s.in_letter("DE", "x", 1, x)
    s.in_letter("BC", "x", s.pick("m", (1, 3, 4)), x)
    s.ask(s.either("x", "DE", "BC"))


@family(3)
def trapezium_midline_in_a_letter(s: Sheet) -> None:
    x = s.pick("x", range(3, 9))
    top, base = x + s.pick("d", range(0, 4)), 3 * x + s.pick("e", range(0, 4))
    a, b, c, d = 0j, complex(base), complex(top + 1.5, 6), complex(1.5, 6)
    s.put(A=a, B=b, C=c, D=d, M=(a + d) / 2, N=(b + c) / 2)
    s.unit = ""
    s.show("trapezium ABCD with AB ∥ DC", "M is the midpoint of AD", "N is the midpoint of BC", "segment MN")
    s.in_letter("DC", "x", 1, x)
    s.in_letter("AB", "x", 3, x)
    s.size("MN")
    s.ask(s.either("x", "AB"))


@family(3)
def isosceles_trapezium_in_letters(s: Sheet) -> None:
    """Equal diagonals, or equal base angles."""
    top, h, p, x = s.pick("t", SIDES), s.pick("h", SIDES), s.pick("p", range(2, 8)), s.pick("x", range(3, 12))
    s.unit = ""
    if s.chance.random() < 0.5:
        w = s.pick("w", range(40, 80))
        h = p * math.tan(math.radians(w))
        s.put(A=complex(-p), B=complex(top + p), C=complex(top, h), D=h * 1j)
        s.show("trapezium ABCD with AB ∥ DC")
        s.tell("AD = BC")
        s.in_letter("∠DAB", "x", 2, x)
        s.in_letter(s.either("∠ABC", "∠ADC"), "x", s.pick("m", (1, 3, 5)), x)
        s.ask("x")
        return
    diagonal = s.pick("g", range(8, 20))
    h = math.sqrt(max(diagonal**2 - (top + p) ** 2, 1))
    s.put(A=complex(-p), B=complex(top + p), C=complex(top, h), D=h * 1j)
    s.show("trapezium ABCD with AB ∥ DC", "diagonals AC, BD")
    s.tell("AD = BC")
    s.in_letter("AC", "x", 1, x)
    s.in_letter("BD", "x", s.pick("m", (2, 3)), x)
    s.ask(s.either("x", "AC"))


@family(4)
def parallelogram_diagonals_in_letters(s: Sheet) -> None:
    p, q, w = s.pick("p", range(4, 14)), s.pick("q", range(4, 14)), s.pick("w", range(40, 140))
    x, y = s.pick("x", range(2, 7)), s.pick("y", range(2, 7))
    a, b = complex(-p), -polar(q, w)
    s.put(A=a, B=b, C=-a, D=-b, E=0j)
    s.unit = ""
    s.show("parallelogram ABCD", "AC and BD intersect at E")
    s.in_letter("AE", "x", 1, x)
    s.in_letter("EC", "x", s.pick("m", (2, 3)), x)
    s.in_letter("BE", "y", 1, y)
    s.in_letter(s.either("ED", "BD"), "y", s.pick("n", (3, 4)), y)
    s.ask(s.either("x", "y", "AC"))


@family(4)
def parallelogram_angles_in_letters(s: Sheet) -> None:
    w, x, y = s.pick("w", range(40, 140)), s.pick("x", range(5, 20)), s.pick("y", range(5, 20))
    d = polar(5, w)
    s.put(A=0j, B=8 + 0j, C=8 + d, D=d)
    s.show("parallelogram ABCD")
    s.in_letter("∠DAB", "x", s.pick("m", (1, 2)), x)
    s.in_letter("∠BCD", "x", s.pick("n", (3, 4)), x)
    s.in_letter("∠ABC", "y", s.pick("k", (2, 3)), y)
    s.ask(s.either("x", "y"))


@family(3)
def rhombus_angles_in_a_letter(s: Sheet) -> None:
    w, x = s.pick("w", range(20, 70)), s.pick("x", range(4, 16))
    p, q = math.cos(math.radians(w)) * 6, math.sin(math.radians(w)) * 6
    s.put(A=complex(-p), B=complex(0, -q), C=complex(p), D=complex(0, q), E=0j)
    s.show("rhombus ABCD", "AC and BD intersect at E")
    s.in_letter("∠EAB", "x", s.pick("m", (1, 2)), x)
    if s.chance.random() < 0.5:
        s.in_letter("∠EAD", "x", s.pick("n", (3, 4)), x)
    else:
        s.in_letter("∠ABE", "x", s.pick("n", (3, 4)), x)
    s.ask(s.either("x", "∠ABC"))


@family(3)
def rectangle_diagonals_in_a_letter(s: Sheet) -> None:
    p, q, _ = s.chance.choice(((6, 8, 10), (5, 12, 13), (9, 12, 15), (8, 15, 17), (10, 24, 26)))
    x = s.pick("x", range(2, 6))
    s.put(A=0j, B=complex(p), C=complex(p, q), D=q * 1j, E=complex(p, q) / 2)
    s.unit = ""
    s.show("rectangle ABCD", "AC and BD intersect at E")
    s.in_letter("AC", "x", s.pick("m", (1, 2)), x)
    s.in_letter("BD", "x", s.pick("n", (3, 4)), x)
    s.size("AB")
    s.ask(s.either("x", "BC", "AE"))


@family(3)
def quadrilateral_angles_in_a_letter(s: Sheet) -> None:
    at_a, at_b, at_d = (s.pick(name, range(60, 125)) for name in "uvw")
    b, d = complex(8), polar(6, at_a)
    c = meet(b, b + polar(1, 180 - at_b), d, d + (0j - d) * polar(1, at_d))
    if not (c.imag > 1 and c.real > d.real + 1 and 50 < 360 - at_a - at_b - at_d < 150):
        raise Unfit("folded")
    s.put(A=0j, B=b, C=c, D=d)
    x = s.pick("x", range(10, 30))
    s.show("quadrilateral ABCD")
    s.in_letter("∠DAB", "x", s.pick("m", (1, 2)), x)
    s.in_letter("∠BCD", "x", s.pick("n", (1, 2, 3)), x)
    s.size("∠ABC", "∠ADC")
    s.ask(s.either("x", "∠BCD"))


@family(3)
def special_triangle_in_letters(s: Sheet) -> None:
    """x and y are the other two sides of a 30°-60°-90° or 45°-45°-90° triangle."""
    side = s.pick("s", SIDES)
    if s.chance.random() < 0.5:
        s.put(B=0j, A=complex(side), C=side * math.sqrt(3) * 1j)
        s.tell("∠BAC = 60°")
        sizes = {"AB": side, "BC": side * math.sqrt(3), "AC": 2 * side}
    else:
        s.put(B=0j, A=complex(side), C=side * 1j)
        s.tell("∠BAC = 45°")
        sizes = {"AB": side, "BC": side, "AC": side * math.sqrt(2)}
    s.unit = ""
    s.show("triangle ABC")
    s.tell("∠ABC = 90°")
    names = s.chance.sample(sorted(sizes), 3)
    s.size(names[0])
    s.in_letter(names[1], "x", 1, sizes[names[1]])
    s.in_letter(names[2], "y", 1, sizes[names[2]])
    s.ask(s.either("x", "y"))


@family(3)
def altitude_to_the_hypotenuse_in_letters(s: Sheet) -> None:
    k = s.pick("k", (1, 2))
    p, q = s.pick("p", (1, 2, 4, 3)) * k, s.pick("q", (3, 4, 8, 9, 12)) * k
    s.put(D=0j, B=complex(-p), C=complex(q), A=math.sqrt(p * q) * 1j)
    s.unit = ""
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("∠BAC = 90°", "AD ⊥ BC")
    asked, told = s.chance.choice(
        [("AD", ("BD", "DC")), ("DC", ("AD", "BD")), ("AB", ("BD", "BC")), ("AC", ("BC", "DC")), ("BD", ("AB", "BC"))]
    )
    s.size(*told)
    s.in_letter(asked, "x", 1, s.measure(asked))
    s.ask("x")


@family(3)
def perpendicular_bisector_in_letters(s: Sheet) -> None:
    """A point of the perpendicular bisector is as far from both ends."""
    half, h, x = s.pick("h", SIDES), s.pick("p", SIDES), s.pick("x", range(2, 6))
    k = s.pick("m", range(8, 20)) / math.hypot(half, h)
    s.put(A=complex(-half * k), B=complex(half * k), M=0j, P=h * k * 1j)
    s.unit = ""
    s.show("triangle PAB", "M is the midpoint of AB", "segment PM")
    s.tell("PM ⊥ AB")
    s.in_letter("PA", "x", 1, x)
    s.in_letter("PB", "x", s.pick("n", (2, 3)), x)
    s.ask(s.either("x", "PA"))


@family(3)
def point_of_a_bisector_in_letters(s: Sheet) -> None:
    """A point of the bisector is as far from both arms."""
    w, reach, x = s.pick("w", range(20, 60)), s.pick("r", range(6, 20)), s.pick("x", range(2, 5))
    b, c = polar(reach, 0), polar(reach, 2 * w)
    p = meet(b, b + 1j, 0j, polar(1, w))
    k = s.pick("m", range(8, 18)) / abs(p - b)
    s.put(A=0j, B=b * k, C=c * k, P=p * k)
    s.unit = ""
    s.show("segments AB, AC, PB, PC, AP")
    s.tell("AP bisects ∠BAC", "PB ⊥ AB", "PC ⊥ AC")
    s.in_letter("PB", "x", 1, x)
    s.in_letter("PC", "x", s.pick("n", (2, 3)), x)
    s.ask(s.either("x", "PC"))


@family(3)
def angle_bisector_ratio_in_a_letter(s: Sheet) -> None:
    b, c, x = s.pick("b", SIDES), s.pick("c", SIDES), s.pick("x", range(2, 6))
    k = s.pick("k", (0.5, 1, 1.5, 2))
    pa, pb, pc = triangle((b + c) * k, b, c)
    s.put(A=pa, B=pb, C=pc, D=complex(c * k))
    s.unit = ""
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD bisects ∠BAC")
    s.size("AB", "AC", "BD")
    s.in_letter("DC", "x", s.pick("m", (1, 2)), x)
    s.ask("x")


@family(3)
def centroid_in_a_letter(s: Sheet) -> None:
    a, b, c = triangle(*(s.pick(name, range(6, 16)) for name in "pqr"))
    d, e, x = (b + c) / 2, (a + c) / 2, s.pick("x", range(2, 7))
    k = s.pick("m", range(3, 10)) / abs((a + b + c) / 3 - d)
    s.put(A=a * k, B=b * k, C=c * k, D=d * k, E=e * k, G=(a + b + c) / 3 * k)
    s.unit = ""
    s.show("triangle ABC", "D is the midpoint of BC", "E is the midpoint of AC", "AD and BE intersect at G")
    s.in_letter("GD", "x", 1, x)
    s.in_letter("AG", "x", s.pick("n", (1, 3)), x)
    s.ask(s.either("x", "AD"))


# Circles


@family(4)
def inscribed_angle_and_arc_in_a_letter(s: Sheet) -> None:
    b, d, x = s.pick("b", range(40, 170, 2)), s.pick("d", range(200, 330, 2)), s.pick("x", range(5, 20))
    around(s, 5, A=0, B=b, D=d)
    s.show("circle with centre O through A, B and D", "segments AD, BD")
    s.in_letter("∠ADB", "x", s.pick("m", (1, 2)), x)
    s.in_letter("arc AB", "x", s.pick("n", (3, 5, 6)), x)
    s.ask(s.either("x", "arc AB"))


@family(4)
def central_angles_in_letters(s: Sheet) -> None:
    b, c = s.pick("b", range(50, 120, 2)), s.pick("c", range(190, 300, 2))
    x = s.pick("x", range(8, 25))
    around(s, 5, A=0, B=b, C=180, D=c)
    s.show("circle with centre O through A, B, C and D", "A-O-C", "segments OB, OD")
    s.in_letter("∠AOB", "x", s.pick("m", (1, 2)), x)
    s.in_letter("∠BOC", "x", s.pick("n", (3, 4)), x)
    s.size("∠COD")
    s.ask(s.either("x", "arc AB", "∠AOD", "arc DA"))


@family(4)
def same_segment_in_a_letter(s: Sheet) -> None:
    b, c, d = s.pick("b", range(40, 120, 2)), s.pick("c", range(150, 230, 2)), s.pick("d", range(250, 340, 2))
    x = s.pick("x", range(4, 15))
    around(s, 5, A=0, B=b, C=c, D=d)
    s.show("circle with centre O through A, B, C and D", "segments AC, BC, AD, BD")
    s.in_letter("∠ACB", "x", s.pick("m", (1, 2)), x)
    s.in_letter("∠ADB", "x", s.pick("n", (3, 4)), x)
    s.ask(s.either("x", "∠ACB", "arc AB"))


@family(4)
def cyclic_quadrilateral_in_letters(s: Sheet) -> None:
    b, c, d = s.pick("b", range(50, 120, 2)), s.pick("c", range(140, 220, 2)), s.pick("d", range(240, 320, 2))
    x, y = s.pick("x", range(6, 18)), s.pick("y", range(6, 18))
    around(s, 5, A=0, B=b, C=c, D=d)
    s.show("circle with centre O through A, B, C and D", "segments AB, BC, CD, DA")
    s.in_letter("∠DAB", "x", s.pick("m", (1, 2, 3)), x)
    s.in_letter("∠BCD", "x", s.pick("n", (2, 4)), x)
    s.in_letter("∠ABC", "y", s.pick("k", (2, 3)), y)
    s.in_letter("∠ADC", "y", s.pick("l", (1, 4)), y)
    s.ask(s.either("x", "y"))


@family(3)
def semicircle_in_a_letter(s: Sheet) -> None:
    w, x = s.pick("w", range(20, 70)), s.pick("x", range(5, 18))
    around(s, 5, A=180, B=0, C=2 * w)
    s.show("circle with centre O through A, B and C", "segments AC, BC")
    s.tell("AB is a diameter of circle O")
    s.in_letter("∠CAB", "x", s.pick("m", (1, 2)), x)
    s.in_letter("∠ABC", "x", s.pick("n", (2, 3)), x)
    s.ask(s.either("x", "∠ABC", "arc BC"))


@family(3)
def equal_chords_in_letters(s: Sheet) -> None:
    """Equal arcs have equal chords, equal chords equal arcs."""
    b, turn, x = s.pick("b", range(40, 110, 2)), s.pick("t", range(130, 220, 5)), s.pick("x", range(2, 9))
    chord = s.pick("m", range(8, 20))
    around(s, chord / 2 / math.sin(math.radians(b / 2)), A=0, B=b, C=turn, D=turn + b)
    s.unit = ""
    s.show("circle with centre O through A, B, C and D", "segments AB, CD")
    if s.chance.random() < 0.5:
        s.tell("arc AB = arc CD")
        s.in_letter("AB", "x", 1, x)
        s.in_letter("CD", "x", s.pick("n", (2, 3)), x)
        s.ask(s.either("x", "AB"))
    else:
        s.tell("AB = CD")
        s.in_letter("arc AB", "x", 4, x)
        s.in_letter("arc CD", "x", s.pick("n", (2, 3)), x)
        s.ask(s.either("x", "arc CD"))


@family(3)
def chords_crossing_in_a_letter(s: Sheet) -> None:
    a, b, c = s.pick("a", range(2, 13)), s.pick("b", range(2, 13)), s.pick("c", range(2, 13))
    d, x = a * b / c, s.pick("x", range(2, 6))
    pa, pb, pc, pd = complex(-a), complex(b), polar(c, 70), -polar(d, 70)
    mid = (pa + pb) / 2
    centre = meet(mid, mid + 1j, pc / 2 + pd / 2, pc / 2 + pd / 2 + 1j * (pc - pd))
    s.put(A=pa, B=pb, C=pc, D=pd, E=0j, O=centre)
    if abs(centre) < 0.6:
        raise Unfit("close")
    s.unit = ""
    s.show("circle with centre O through A, B, C and D", "AB and CD intersect at E")
    s.size("AE", "EB", "CE")
    s.in_letter("ED", "x", s.pick("m", (1, 2, 3)), x)
    s.ask("x")


@family(3)
def secant_arcs_in_a_letter(s: Sheet) -> None:
    half, far, x = s.pick("p", range(10, 35)), s.pick("q", range(50, 88)), s.pick("x", range(4, 12))
    around(s, 5, A=half, C=-half, B=180 - far, D=180 + far)
    at = s.at
    s.put(P=meet(at["B"], at["A"], at["D"], at["C"]))
    s.show("circle with centre O through A, B, C and D", "P-A-B", "P-C-D")
    s.size("arc AC", "∠BPD")
    s.in_letter("arc BD", "x", s.pick("m", (2, 4, 5)), x)
    s.ask(s.either("x", "arc BD"))


@family(3)
def tangent_and_secant_arcs(s: Sheet) -> None:
    """The angle between a tangent and a secant is half the difference of the arcs."""
    a, b = s.pick("a", range(30, 80, 2)), s.pick("b", range(110, 170, 2))
    around(s, 5, T=0, A=a, B=b)
    at = s.at
    p = meet(at["T"], at["T"] + 1j, at["B"], at["A"])
    if p.imag < at["A"].imag + 0.5 or p.imag > 40:
        raise Unfit("beyond")
    s.put(P=p)
    s.show("circle with centre O through T, A and B", "P-A-B")
    s.tell("PT is a tangent to circle O at T")
    s.size("arc TA", "arc AB")
    s.ask("∠TPA")


@family(3)
def two_tangents_and_arcs(s: Sheet) -> None:
    half = s.pick("w", range(15, 70))
    p = complex(5 / math.sin(math.radians(half)))
    a, b = contacts(p, 5)
    s.put(O=0j, P=p, A=a, B=b)
    s.show("circle with centre O through A and B")
    s.tell("PA and PB are tangents to circle O at A and B")
    if s.chance.random() < 0.5:
        s.size("arc AB")
        s.ask("∠APB")
    else:
        s.size("∠APB")
        s.ask(s.either("arc AB", "major arc AB"))


@family(3)
def tangent_and_secant_in_a_letter(s: Sheet) -> None:
    """PT² = x(x + k): a quadratic."""
    near, t = s.chance.choice(((2, 4), (4, 6), (3, 6), (4, 10), (9, 12), (8, 12), (5, 10)))
    far = t * t / near
    centre = complex((near + far) / 2, s.pick("u", (1, 2)))
    r = abs(centre - near)
    one, two = contacts(-centre, r)
    contact = one + centre if (one + centre).imag > (two + centre).imag else two + centre
    s.put(P=0j, A=complex(near), B=complex(far), T=contact, O=centre)
    s.unit = ""
    s.show("circle with centre O through A, B and T", "P-A-B")
    s.tell("PT is a tangent to circle O at T")
    s.size("PT")
    if s.chance.random() < 0.5:
        s.in_letter("PA", "x", 1, near)
        s.size("AB")
    else:
        s.size("PA")
        s.in_letter("AB", "x", 1, far - near)
    s.ask("x")


@family(3)
def foot_and_two_letters(s: Sheet) -> None:
    """Pythagoras in two triangles with a common height: x, then y."""
    h, p, q = s.chance.choice(((12, 5, 9), (12, 9, 16), (8, 6, 15), (24, 7, 10), (12, 5, 16), (15, 8, 20)))
    s.put(A=h * 1j, B=complex(-p), C=complex(q), D=0j)
    s.unit = ""
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD ⊥ BC")
    s.size("AB", "BD", "AC")
    s.in_letter("AD", "x", 1, h)
    s.in_letter("DC", "y", 1, q)
    s.ask(s.either("x", "y"))


@family(2)
def three_sides_in_a_letter_and_height(s: Sheet) -> None:
    """Sides x, x + 1 and x + 2 with a right angle."""
    k = s.pick("k", (1, 2, 3, 4))
    x = 3 * k
    s.put(B=0j, A=complex(x), C=4 * k * 1j, D=foot(0j, complex(x), 4 * k * 1j))
    s.unit = ""
    s.show("triangle ABC", "D lies on AC", "segment BD")
    s.tell("∠ABC = 90°", "BD ⊥ AC")
    s.in_letter("AB", "x", 1, x)
    s.in_letter("BC", "x", 1, x)
    s.in_letter("AC", "x", 1, x)
    s.ask(s.either("x", "BD"))
