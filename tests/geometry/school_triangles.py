"""Families of school questions on angles, parallels, isosceles and right-angled triangles, and trigonometry."""

import math

from tests.geometry.school_sheet import Sheet, Unfit, family, foot, meet, polar, triangle

ANGLES = range(20, 90)
SIDES = range(3, 16)
TRIPLES = ((3, 4, 5), (5, 12, 13), (8, 15, 17), (7, 24, 25), (6, 8, 10), (9, 12, 15), (20, 21, 29), (12, 16, 20))


def two_angles(side: float, at_b: float, at_c: float) -> tuple[complex, complex, complex]:
    """A, B, C from BC and the angles at its ends."""
    if at_b + at_c > 165:
        raise Unfit("flat")
    b, c = 0j, complex(side)
    return meet(b, polar(1, at_b), c, c + polar(1, 180 - at_c)), b, c


def two_sides(c: float, b: float, at_a: float) -> tuple[complex, complex, complex]:
    """A, B, C from AB, AC and the angle between them."""
    return 0j, complex(c), polar(b, at_a)


# Angles


@family(14)
def third_angle_and_exterior(s: Sheet) -> None:
    a, b, c = two_angles(10, s.pick("b", ANGLES), s.pick("c", ANGLES))
    s.put(A=a, B=b, C=c, D=c + 4)
    s.show("triangle ABC", s.either("BC is produced to D", "B-C-D"))
    s.size("∠ABC", "∠ACD")
    s.ask("∠BAC")


@family(12)
def cevian_and_isosceles(s: Sheet) -> None:
    """D on BC with AD = BD; two triangle sums and base angles."""
    base, rest = s.pick("b", range(20, 60)), s.pick("r", range(20, 80))
    b, d = 0j, 6 + 0j
    a = polar(12 * math.cos(math.radians(base)), base)
    c = meet(b, d, a, a + (d - a) * polar(1, rest))
    if c.real < d.real + 0.5 or c.real > 40:
        raise Unfit("beyond")
    s.put(A=a, B=b, C=c, D=d)
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD = BD")
    s.size("∠ABD", "∠DAC")
    s.ask(s.either("∠ACB", "∠ADC"))


@family(10)
def parallels_cut_and_triangle(s: Sheet) -> None:
    """A triangle between two parallels, its top corner on one of them."""
    left, right = s.pick("l", ANGLES), s.pick("r", ANGLES)
    a, b, c = two_angles(8, left, right)
    s.put(A=a, B=b, C=c, D=a - 5, E=a + 5)
    s.show("triangle ABC", "D-A-E")
    s.tell("DE ∥ BC")
    s.size("∠DAB", "∠ACB")
    s.ask("∠BAC")


@family(9)
def bend_between_parallels(s: Sheet) -> None:
    one, two = s.pick("p", ANGLES), s.pick("q", ANGLES)
    b = 0j
    e = b + polar(5, -one)
    d = e + polar(4, two - 180)
    s.put(A=b - 0 + 6, B=b, E=e, C=d + 6, D=d)
    s.show("segments AB, CD, BE, ED")
    s.tell("AB ∥ CD")
    s.size("∠ABE", "∠CDE")
    s.ask("∠BED")


@family(8)
def bisector_and_parallel(s: Sheet) -> None:
    """BD bisects ∠ABC, DE ∥ BC: triangle BDE is isosceles."""
    at_b, at_c = s.pick("b", range(40, 100, 2)), s.pick("c", range(25, 80))
    a, b, c = two_angles(9, at_b, at_c)
    d = meet(b, polar(1, at_b / 2), a, c)
    e = meet(a, b, d, d + 1)
    s.put(A=a, B=b, C=c, D=d, E=e)
    s.show("triangle ABC", "D lies on AC", "E lies on AB", "segments BD, DE")
    s.tell("BD bisects ∠ABC", "ED ∥ BC")
    s.size("∠ABC", "∠ACB")
    s.ask(s.either("∠BDE", "∠ADB", "∠AED"))


@family(6)
def isosceles_within_isosceles(s: Sheet) -> None:
    apex = s.pick("t", range(20, 58, 2))
    base = (180 - apex) / 2
    a, b, c = two_angles(6, base, base)
    d = meet(a, c, b, b + polar(1, 180 - 2 * base))
    s.put(A=a, B=b, C=c, D=d)
    s.show("triangle ABC", "D lies on AC", "segment BD")
    s.tell("AB = AC", "BD = BC")
    s.size("∠BAC")
    s.ask("∠ABD")


@family(6)
def angles_in_letters(s: Sheet) -> None:
    a, b, c = two_angles(9, s.pick("b", ANGLES), s.pick("c", ANGLES))
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    x = s.pick("x", range(10, 30))
    s.in_letter("∠ABC", "x", s.pick("m", (1, 2, 3)), x)
    s.in_letter("∠ACB", "x", s.pick("n", (1, 2, 4)), x)
    s.in_letter("∠BAC", "x", s.pick("k", (1, 3, 5)), x)
    s.ask(s.either("x", "∠ABC"))


@family(6)
def crossing_lines_and_triangles(s: Sheet) -> None:
    one, two, other = (s.pick(name, range(30, 80)) for name in "pqr")
    e, a, b = two_angles(6, one, two)
    turn = 180 - one - two
    c_angle = other
    d_angle = 180 - turn - c_angle
    if d_angle < 15:
        raise Unfit("flat")
    reach = 4.0
    c = e + (e - a) / abs(e - a) * reach
    d = meet(e, e + (e - b), c, c + (e - c) * polar(1, -c_angle))
    s.put(A=a, B=b, E=e, C=c, D=d)
    s.show("AC and BD intersect at E", "segments AB, CD")
    s.size("∠EAB", "∠EBA", "∠ECD")
    s.ask("∠EDC")


# Lengths on a line, isosceles triangles recognised


@family(10)
def lengths_add_on_a_line(s: Sheet) -> None:
    ab, bc, cd = (s.pick(name, SIDES) for name in "pqr")
    s.put(A=0j, B=complex(ab), C=complex(ab + bc), D=complex(ab + bc + cd))
    s.show("A-B-C-D")
    s.size("AB", "CD", "AD")
    s.ask(s.either("BC", "AC"))


@family(8)
def midpoints_on_a_line(s: Sheet) -> None:
    ab, bc = s.pick("p", range(4, 20, 2)), s.pick("q", range(4, 20, 2))
    s.put(A=0j, B=complex(ab), C=complex(ab + bc), M=complex(ab / 2), N=ab + complex(bc / 2))
    s.show("A-B-C", "M is the midpoint of AB", "N is the midpoint of BC")
    s.size("AB", s.either("AC", "BC"))
    s.ask("MN")


@family(6)
def lengths_in_a_letter_on_a_line(s: Sheet) -> None:
    x = s.pick("x", range(2, 9))
    ab, bc = s.pick("p", (1, 2, 3)) * x + s.pick("d", range(0, 5)), s.pick("q", (1, 2)) * x + s.pick("e", range(1, 6))
    s.put(A=0j, B=complex(ab), C=complex(ab + bc))
    s.unit = ""
    s.show("A-B-C")
    s.in_letter("AB", "x", s.pick("m", (1, 2, 3)), x)
    s.in_letter("BC", "x", s.pick("n", (1, 2)), x)
    s.size("AC")
    s.ask(s.either("x", "AB", "BC"))


@family(9)
def isosceles_recognised_by_angles(s: Sheet) -> None:
    base, side = s.pick("b", range(25, 80)), s.pick("s", SIDES)
    reach = 2 * side * math.cos(math.radians(base))
    a, b, c = two_angles(reach, base, base)
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.size("∠ABC", "∠BAC", "AB")
    s.ask("AC")


@family(6)
def isosceles_by_parallel_recognised(s: Sheet) -> None:
    """A bisector and a parallel make an isosceles triangle; its side is asked."""
    at_b, at_c, be = s.pick("b", range(40, 100, 2)), s.pick("c", range(25, 70)), s.pick("e", SIDES)
    a, b, c = two_angles(9, at_b, at_c)
    d = meet(b, polar(1, at_b / 2), a, c)
    e = meet(a, b, d, d + 1)
    k = be / abs(e - b)
    s.put(A=a * k, B=b, C=c * k, D=d * k, E=e * k)
    s.show("triangle ABC", "D lies on AC", "E lies on AB", "segments BD, DE")
    s.tell("BD bisects ∠ABC", "ED ∥ BC")
    s.size("BE")
    s.ask("DE")


@family(4)
def perimeter_of_isosceles(s: Sheet) -> None:
    side, base = s.pick("s", SIDES), s.pick("b", SIDES)
    a, b, c = triangle(base, side, side)
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.tell("∠ABC = ∠ACB")
    s.size("AB")
    if s.chance.random() < 0.5:
        s.size("BC")
        s.ask("perimeter of △ABC")
    else:
        s.size("perimeter of △ABC")
        s.ask("BC")


@family(3)
def sides_in_letters_of_isosceles(s: Sheet) -> None:
    x, base = s.pick("x", range(3, 9)), s.pick("b", SIDES)
    side = 2 * x + s.pick("d", range(1, 5))
    a, b, c = triangle(base, side, side)
    s.put(A=a, B=b, C=c)
    s.unit = ""
    s.show("triangle ABC")
    s.tell("∠ABC = ∠ACB")
    s.in_letter("AB", "x", 2, x)
    s.in_letter("AC", "x", s.pick("n", (1, 3)), x)
    s.ask(s.either("x", "AB"))


# Pythagoras


@family(8)
def pythagoras(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    s.put(B=0j, A=complex(p), C=q * 1j)
    s.show("triangle ABC")
    s.tell(s.either("∠ABC = 90°", "AB ⊥ BC"))
    if s.chance.random() < 0.5:
        s.size("AB", "BC")
        s.ask("AC")
    else:
        s.size("AB", "AC")
        s.ask("BC")


@family(6)
def pythagoras_twice(s: Sheet) -> None:
    """Two right-angled triangles on a common side."""
    p, q, r = (s.pick(name, SIDES) for name in "pqr")
    a, b, c = complex(p), 0j, q * 1j
    d = c + (c - a) / abs(c - a) * 1j * -r
    s.put(A=a, B=b, C=c, D=d)
    s.show("triangle ABC", "triangle ACD")
    s.tell("∠ABC = 90°", "∠ACD = 90°")
    s.size("AB", "BC", "CD")
    s.ask("AD")


@family(4)
def pythagoras_three_times(s: Sheet) -> None:
    p, q, r, t = (s.pick(name, range(2, 8)) for name in "pqrt")
    a, b, c = complex(p), 0j, q * 1j
    d = c + (c - a) / abs(c - a) * 1j * -r
    e = d + (d - a) / abs(d - a) * 1j * -t
    if abs(e - b) < 0.5:
        raise Unfit("close")
    s.put(A=a, B=b, C=c, D=d, E=e)
    s.show("triangle ABC", "triangle ACD", "triangle ADE")
    s.tell("∠ABC = 90°", "∠ACD = 90°", "∠ADE = 90°")
    s.size("AB", "BC", "CD", "DE")
    s.ask("AE")


@family(6)
def altitude_splits_a_triangle(s: Sheet) -> None:
    """AD ⊥ BC; from one right-angled triangle into the other."""
    h, p, q = (s.pick(name, SIDES) for name in "hpq")
    s.put(A=h * 1j, B=complex(-p), C=complex(q), D=0j)
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell(s.either("AD ⊥ BC", "∠ADB = 90°"))
    s.size("AB", "BD")
    if s.chance.random() < 0.5:
        s.size("DC")
        s.ask("AC")
    else:
        s.size("AC")
        s.ask("BC")


@family(5)
def height_of_isosceles(s: Sheet) -> None:
    side, half = s.pick("s", range(5, 20)), s.pick("h", range(2, 12))
    if half * 1.1 > side:
        raise Unfit("flat")
    h = math.sqrt(side * side - half * half)
    s.put(A=h * 1j, B=complex(-half), C=complex(half), D=0j)
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AB = AC", s.either("AD ⊥ BC", "BD = DC"))
    s.size("AB", "BC")
    s.ask(s.either("AD", "area of △ABC"))


@family(6)
def right_angle_recognised_by_angles(s: Sheet) -> None:
    sides = s.chance.choice(TRIPLES)
    split, k = s.pick("w", range(20, 70)), s.pick("k", (1, 2))
    b, a, c = 0j, sides[0] * k + 0j, sides[1] * k * 1j
    d = meet(b, polar(1, split), a, c)
    s.put(A=a, B=b, C=c, D=d)
    s.show("triangle ABC", "D lies on AC", "segment BD")
    s.size("∠ABD", "∠DBC", "AB", "AC")
    s.ask("BC")


@family(5)
def right_angle_recognised_by_sides(s: Sheet) -> None:
    """The converse of Pythagoras, then an angle."""
    p, q, _ = s.chance.choice(TRIPLES)
    k = s.pick("k", (1, 2))
    b, a, c = 0j, p * k + 0j, q * k * 1j
    d = meet(b, polar(1, s.pick("w", range(20, 70))), a, c)
    s.put(A=a, B=b, C=c, D=d)
    s.show("triangle ABC", "D lies on AC", "segment BD")
    s.size("AB", "BC", "AC", "∠ABD")
    s.ask("∠DBC")


@family(4)
def pythagoras_with_letters(s: Sheet) -> None:
    """x, x + d and a third side: a quadratic."""
    p, q, _ = s.chance.choice(TRIPLES)
    k = s.pick("k", (1, 2))
    p, q = p * k, q * k
    s.put(B=0j, A=complex(p), C=q * 1j)
    s.unit = ""
    s.show("triangle ABC")
    s.tell("∠ABC = 90°")
    s.in_letter("AB", "x", 1, p)
    if s.chance.random() < 0.5:
        s.in_letter("BC", "x", 1, p)
        s.size("AC")
    else:
        s.in_letter("AC", "x", 1, p)
        s.size("BC")
    s.ask(s.either("x", "BC", "AC"))


@family(3)
def pythagoras_all_in_a_letter(s: Sheet) -> None:
    p, q, _ = s.chance.choice(TRIPLES)
    s.put(B=0j, A=complex(p), C=q * 1j)
    s.unit = ""
    s.show("triangle ABC")
    s.tell("∠ABC = 90°")
    s.in_letter("AB", "x", 1, p)
    s.in_letter("BC", "x", s.pick("m", (1, 2)), p)
    s.in_letter("AC", "x", s.pick("n", (1, 2)), p)
    s.loose = True
    s.ask(s.either("x", "perimeter of △ABC"))


# Special triangles and the altitude to the hypotenuse


@family(4)
def special_30_60(s: Sheet) -> None:
    side = s.pick("s", SIDES)
    s.put(B=0j, A=complex(side), C=side * math.sqrt(3) * 1j)
    s.show("triangle ABC")
    s.tell("∠ABC = 90°", s.either("∠BAC = 60°", "∠ACB = 30°"))
    s.size(s.either("AB", "AC", "BC"))
    s.ask(s.either("BC", "AC", "AB"))
    if s.given[-1].startswith(f"{s.asked} ="):
        raise Unfit("asked for what is given")


@family(4)
def special_45(s: Sheet) -> None:
    side = s.pick("s", SIDES)
    s.put(B=0j, A=complex(side), C=side * 1j)
    s.show("triangle ABC")
    s.tell("∠ABC = 90°", s.either("∠BAC = 45°", "AB = BC"))
    s.size(s.either("AB", "AC"))
    s.ask(s.either("BC", "AC", "area of △ABC"))
    if s.given[-1].startswith(f"{s.asked} ="):
        raise Unfit("asked for what is given")


@family(3)
def equilateral_height(s: Sheet) -> None:
    side = s.pick("s", range(2, 20))
    s.put(A=side * math.sqrt(3) / 2 * 1j, B=complex(-side / 2), C=complex(side / 2), D=0j)
    s.show("equilateral triangle ABC", "D lies on BC", "segment AD")
    s.tell(s.either("AD ⊥ BC", "AD bisects ∠BAC"))
    s.size(s.either("AB", "BC"))
    s.ask(s.either("AD", "area of △ABC", "perimeter of △ABD"))


@family(5)
def altitude_to_the_hypotenuse(s: Sheet) -> None:
    k = s.pick("k", (1, 2, 3))
    p, q = s.pick("p", (1, 2, 4, 9)) * k, s.pick("q", (1, 3, 4, 9, 16)) * k
    s.put(D=0j, B=complex(-p), C=complex(q), A=math.sqrt(p * q) * 1j)
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("∠BAC = 90°", "AD ⊥ BC")
    asked = s.either("AD", "AB", "AC", "BC")
    s.size(*{"AD": ("BD", "DC"), "AB": ("BD", "BC"), "AC": ("AD", "BD"), "BC": ("AD", "DC")}[asked])
    s.ask(asked)


@family(3)
def median_to_the_hypotenuse(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    s.put(B=0j, A=complex(p), C=q * 1j, M=complex(p, q) / 2)
    s.show("triangle ABC", "M is the midpoint of AC", "segment BM")
    s.tell("∠ABC = 90°")
    s.size("AB", "BC")
    s.ask(s.either("BM", "perimeter of △ABM"))


# Trigonometry


@family(7)
def ratio_for_a_side(s: Sheet) -> None:
    angle, side = s.pick("w", range(15, 76)), s.pick("s", SIDES)
    asked = s.either("AB", "BC", "AC")
    told = s.either(*[name for name in ("AB", "BC", "AC") if name != asked])
    radians = math.radians(angle)
    sizes = {"AB": math.cos(radians), "BC": math.sin(radians), "AC": 1.0}
    k = side / sizes[told]
    s.put(B=0j, A=complex(k * sizes["AB"]), C=k * sizes["BC"] * 1j)
    s.show("triangle ABC")
    s.tell("∠ABC = 90°")
    s.size("∠BAC", told)
    s.ask(asked)


@family(5)
def ratio_for_an_angle(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    s.put(B=0j, A=complex(p), C=q * 1j)
    s.show("triangle ABC")
    s.tell("∠ABC = 90°")
    s.size("AB", s.either("BC", "AC"))
    s.ask(s.either("∠BAC", "∠ACB"))


@family(5)
def two_right_triangles(s: Sheet) -> None:
    """Through a common height: trigonometry, then trigonometry or Pythagoras."""
    h_angle, side, other = s.pick("w", range(25, 70)), s.pick("s", SIDES), s.pick("v", range(25, 70))
    h = side * math.sin(math.radians(h_angle))
    b = complex(-side * math.cos(math.radians(h_angle)))
    c = complex(h / math.tan(math.radians(other)))
    s.put(A=h * 1j, B=b, C=c, D=0j)
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD ⊥ BC")
    s.size("AB", "∠ABC", "∠ACB")
    s.ask(s.either("AC", "AD", "DC"))


@family(4)
def elevation_of_a_tower(s: Sheet) -> None:
    """Two angles of elevation from a straight path to the foot."""
    near, far, apart = s.pick("n", range(40, 75)), s.pick("f", range(15, 38)), s.pick("d", range(10, 60, 5))
    h = apart / (1 / math.tan(math.radians(far)) - 1 / math.tan(math.radians(near)))
    foot_at, second = 0j, complex(-h / math.tan(math.radians(near)))
    s.put(T=h * 1j, F=foot_at, B=second, A=second - apart)
    s.unit = "m"
    s.show("A-B-F", "segments TF, TA, TB")
    s.tell("TF ⊥ AF")
    s.size("∠TAF", "∠TBF", "AB")
    s.ask("TF")


@family(3)
def elevation_simple(s: Sheet) -> None:
    angle, apart = s.pick("w", range(15, 75)), s.pick("d", range(10, 80, 5))
    s.put(A=0j, B=complex(apart), T=complex(apart, apart * math.tan(math.radians(angle))))
    s.unit = "m"
    s.show("triangle ABT")
    s.tell("AB ⊥ BT")
    s.size("∠BAT", "AB")
    s.ask("BT")


@family(5)
def sine_rule_for_a_side(s: Sheet) -> None:
    at_b, at_c, side = s.pick("b", range(25, 110)), s.pick("c", range(25, 80)), s.pick("s", SIDES)
    a, b, c = two_angles(side, at_b, at_c)
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.size("BC", *s.chance.choice([("∠ABC", "∠ACB"), ("∠BAC", "∠ACB"), ("∠BAC", "∠ABC")]))
    s.ask(s.either("AB", "AC"))


@family(4)
def sine_rule_for_an_angle(s: Sheet) -> None:
    """The side opposite the angle is the longer one, so that there is one triangle only."""
    ab, ac, angle = s.pick("p", SIDES), s.pick("q", SIDES), s.pick("w", range(25, 120))
    if ac <= ab:
        raise Unfit("two triangles")
    ratio = ab * math.sin(math.radians(angle)) / ac
    at_c = math.degrees(math.asin(ratio))
    a, b, c = two_angles(1, angle, at_c)
    k = ab / abs(a - b)
    s.put(A=a * k, B=b, C=c * k)
    s.show("triangle ABC")
    s.size("AB", "AC", "∠ABC")
    s.ask(s.either("∠ACB", "∠BAC", "BC"))


@family(2)
def two_sides_and_an_angle_not_between(s: Sheet) -> None:
    """Two triangles: the true one has to be among the answers."""
    ab, ac, angle = s.pick("p", range(6, 16)), s.pick("q", range(4, 15)), s.pick("w", range(25, 65))
    ratio = ab * math.sin(math.radians(angle)) / ac
    if not ac < ab or ratio > 0.95:
        raise Unfit("not two triangles")
    at_c = math.degrees(math.asin(ratio))
    at_c = s.chance.choice((at_c, 180 - at_c))
    a, b, c = two_angles(1, angle, at_c)
    k = ab / abs(a - b)
    s.put(A=a * k, B=b, C=c * k)
    s.loose = True
    s.show("triangle ABC")
    s.size("AB", "AC", "∠ABC")
    s.ask(s.either("∠ACB", "BC"))


@family(5)
def cosine_rule_for_a_side(s: Sheet) -> None:
    a, b, c = two_sides(s.pick("p", SIDES), s.pick("q", SIDES), s.pick("w", range(25, 150)))
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.size("AB", "AC", "∠BAC")
    s.ask("BC")


@family(4)
def cosine_rule_for_an_angle(s: Sheet) -> None:
    a, b, c = triangle(s.pick("p", SIDES), s.pick("q", SIDES), s.pick("r", SIDES))
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.size("AB", "BC", "AC")
    s.ask(s.either("∠BAC", "∠ABC"))


@family(3)
def cosine_rule_then_sine_rule(s: Sheet) -> None:
    """A quadrilateral through its diagonal."""
    a, b, d = two_sides(s.pick("p", SIDES), s.pick("q", SIDES), s.pick("w", range(40, 120)))
    top, other = s.pick("u", range(30, 75)), s.pick("v", range(30, 75))
    c = meet(b, b + (d - b) * polar(1, -top), d, d + (b - d) * polar(1, other))
    s.put(A=a, B=b, C=c, D=d)
    s.show("quadrilateral ABCD", "diagonal BD")
    s.size("AB", "AD", "∠BAD", "∠DBC", "∠BDC")
    s.ask(s.either("BC", "CD"))


@family(3)
def area_by_sine(s: Sheet) -> None:
    a, b, c = two_sides(s.pick("p", SIDES), s.pick("q", SIDES), s.pick("w", (30, 45, 60, 120, 150, *range(25, 150, 7))))
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.size("AB", "AC", "∠BAC")
    s.ask("area of △ABC")


@family(2)
def side_from_the_area_by_sine(s: Sheet) -> None:
    p, q, w = s.pick("p", SIDES), s.pick("q", SIDES), s.pick("w", (30, 150, 45, 60))
    a, b, c = two_sides(p, q, w)
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.size("AB", "∠BAC", "area of △ABC")
    s.ask("AC")


@family(3)
def bearings_there_and_on(s: Sheet) -> None:
    """From A to B and from B to C by bearing and distance; how far is it back?"""
    one, two = s.pick("u", range(10, 170, 5)), s.pick("v", range(20, 350, 5))
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    a = 0j
    b = a + polar(p, 90 - one)
    c = b + polar(q, 90 - two)
    if abs(((b - a).conjugate() * (c - a)).imag) < 4:
        raise Unfit("flat")
    s.put(A=a, B=b, C=c)
    s.unit, s.fixed = "km", True
    s.show("triangle ABC")
    s.tell(f"bearing of B from A = {int(one):03d}°", f"bearing of C from B = {int(two):03d}°")
    s.size("AB", "BC")
    s.ask(s.either("AC", "bearing of C from A"))


@family(2)
def bearing_right_angled(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    s.put(A=0j, B=q * 1j, C=complex(p, q))
    s.unit, s.fixed = "km", True
    s.show("triangle ABC")
    s.tell("B is due north of A", "C is due east of B")
    s.size("AB", "BC")
    s.ask(s.either("bearing of C from A", "AC"))


# Areas of triangles


@family(4)
def area_by_base_and_height(s: Sheet) -> None:
    h, p, q = (s.pick(name, SIDES) for name in "hpq")
    s.put(A=h * 1j, B=complex(-p), C=complex(q), D=0j)
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD ⊥ BC")
    s.size("AD", "BC")
    s.ask("area of △ABC")


@family(3)
def height_from_the_area(s: Sheet) -> None:
    h, p, q = (s.pick(name, SIDES) for name in "hpq")
    s.put(A=h * 1j, B=complex(-p), C=complex(q), D=0j)
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD ⊥ BC")
    s.size("area of △ABC", "BC")
    s.ask("AD")


@family(3)
def heron(s: Sheet) -> None:
    sides = s.chance.choice(
        ((13, 14, 15), (5, 5, 6), (10, 13, 13), (7, 15, 20), (9, 10, 17), (4, 13, 15), (6, 7, 9), (5, 7, 8))
    )
    a, b, c = triangle(*map(float, sides))
    d = foot(a, b, c)
    s.put(A=a, B=b, C=c)
    s.show("triangle ABC")
    s.size("AB", "BC", "AC")
    if s.chance.random() < 0.4 and 0.3 < d.real < c.real - 0.3:
        s.put(D=d)
        s.show("D lies on BC", "segment AD")
        s.tell("AD ⊥ BC")
        s.ask("AD")
    else:
        s.ask("area of △ABC")


# Congruence


@family(5)
def congruent_through_equal_parts(s: Sheet) -> None:
    """A quadrilateral of two triangles on a common side, congruent by SSS, SAS or ASA."""
    p, q, w = s.pick("p", SIDES), s.pick("q", SIDES), s.pick("w", range(30, 120))
    a, b, d = two_sides(p, q, w)
    c = b + d - a  # a parallelogram is the one way round, a kite the other
    if s.chance.random() < 0.5:
        c = 2 * foot(a, b, d) - a
        if p == q or abs(c - a) < 1:
            raise Unfit("rhombus")
        s.put(A=a, B=b, C=c, D=d)
        s.show("quadrilateral ABCD", "diagonal BD")
        s.tell(*s.chance.choice([("AB = BC", "AD = CD"), ("AB = BC", "∠ABD = ∠CBD"), ("∠ABD = ∠CBD", "∠ADB = ∠CDB")]))
        s.size("∠BAD", "∠ABD")
        s.ask(s.either("∠BCD", "∠CDB"))
        return
    s.put(A=a, B=b, C=c, D=d)
    s.show("quadrilateral ABCD", "diagonal BD")
    s.tell(*s.chance.choice([("AB = CD", "AD = BC"), ("AB = CD", "∠ABD = ∠CDB"), ("∠ABD = ∠CDB", "∠ADB = ∠CBD")]))
    s.size("∠BAD", "AB")
    s.ask(s.either("∠BCD", "CD"))


@family(4)
def congruent_across_a_crossing(s: Sheet) -> None:
    """E halves AC and BD: SAS, then a side or an angle."""
    p, q, w = s.pick("p", SIDES), s.pick("q", SIDES), s.pick("w", range(30, 150))
    a, b = complex(-p), -polar(q, w)
    s.put(A=a, B=b, C=-a, D=-b, E=0j)
    s.show("AC and BD intersect at E", "segments AB, CD")
    s.tell("AE = EC", "BE = ED")
    if s.chance.random() < 0.5:
        s.tell("AB = 9")
        k = 9 / abs(a - b)
        s.at = {name: z * k for name, z in s.at.items()}
        s.ask("CD")
    else:
        way = foot(0j, a, b)
        if abs(way) < 0.5:
            raise Unfit("flat")
        at_a = s.pick("v", range(25, 70))
        b = meet(a, a + polar(1, at_a), 0j, polar(1, -w))
        if b.imag < 0.5:
            raise Unfit("beyond")
        s.put(B=b, D=-b)
        s.size("∠EAB", "∠AEB")
        s.ask(s.either("∠ECD", "∠EDC"))


@family(4)
def congruent_right_triangles(s: Sheet) -> None:
    """RHS: equal distances from two lines make a bisector."""
    p, w = s.pick("p", SIDES), s.pick("w", range(15, 70))
    a = 0j
    d = complex(p)
    b, c = polar(p * math.cos(math.radians(w)), w), polar(p * math.cos(math.radians(w)), -w)
    s.put(A=a, B=b, C=c, D=d)
    s.show("segments AB, AC, BD, CD, AD")
    s.tell("∠ABD = 90°", "∠ACD = 90°", s.either("BD = CD", "AB = AC"))
    s.size("∠BAD")
    s.ask(s.either("∠BAC", "∠CDA", "∠CDB"))


@family(3)
def congruent_stated(s: Sheet) -> None:
    a, b, c = triangle(*(s.pick(name, SIDES) for name in "pqr"))
    away = polar(1, s.pick("t", range(0, 360, 30)))
    shift = complex(30, 5)
    s.put(A=a, B=b, C=c, D=a * away + shift, E=b * away + shift, F=c * away + shift)
    s.show("triangles ABC and DEF")
    s.tell("△ABC ≡ △DEF")
    s.size("AB", "EF", "AC")
    s.ask(s.either("DE", "perimeter of △DEF"))
