"""Families of school questions on similar triangles, proportions, quadrilaterals, polygons and areas."""

import math

from tests.geometry.school_sheet import Sheet, Unfit, family, foot, meet, polar, triangle

SIDES = range(3, 16)


def _triangle(s: Sheet) -> tuple[complex, complex, complex]:
    return triangle(s.pick("a", range(6, 20)), s.pick("b", range(6, 20)), s.pick("c", range(6, 20)))


def _scaled(s: Sheet, name: str, size: float) -> None:
    """Enlarges the figure so that one length has a given size."""
    k = size / abs(s.at[name[0]] - s.at[name[1]])
    s.at = {point: z * k for point, z in s.at.items()}


# Similar triangles and proportions


@family(8)
def parallel_to_a_side(s: Sheet) -> None:
    """DE ∥ BC: lengths of similar triangles."""
    ad, db, k = s.pick("p", range(2, 10)), s.pick("q", range(2, 10)), s.pick("k", range(1, 4))
    bc, ac = (ad + db) * k, s.pick("e", range(4, 14))
    a, b, c = triangle(bc, ac, ad + db)
    share = ad / (ad + db)
    s.put(A=a, B=b, C=c, D=a + (b - a) * share, E=a + (c - a) * share)
    s.show("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")
    s.tell(s.either("DE ∥ BC", "DE ∥ BC", "∠ADE = ∠ABC"))
    asked = s.either("DE", "BC", "DB")
    s.size(*{"DE": ("AD", "DB", "BC"), "BC": ("AD", "AB", "DE"), "DB": ("AD", "DE", "BC")}[asked])
    s.ask(asked)


@family(6)
def proportional_intercepts(s: Sheet) -> None:
    ad, db = s.pick("p", range(2, 10)), s.pick("q", range(2, 10))
    ae = s.pick("e", range(2, 10))
    ec = ae * db / ad
    a, b, c = 0j, complex(ad + db), polar(ae + ec, s.pick("w", range(40, 110)))
    s.put(A=a, B=b, C=c, D=complex(ad), E=c * ae / (ae + ec))
    s.show("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")
    s.tell("DE ∥ BC")
    asked = s.either("EC", "AC")
    s.size("AD", "DB", "AE")
    s.ask(asked)


@family(4)
def intercepts_in_a_letter(s: Sheet) -> None:
    x = s.pick("x", range(2, 8))
    ad, db = x + s.pick("d", range(0, 4)), s.pick("q", range(2, 10))
    ae = s.pick("e", range(2, 10))
    ec = ae * db / ad
    a, b, c = 0j, complex(ad + db), polar(ae + ec, s.pick("w", range(40, 110)))
    s.put(A=a, B=b, C=c, D=complex(ad), E=c * ae / (ae + ec))
    s.unit = ""
    s.show("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")
    s.tell("DE ∥ BC")
    s.in_letter("AD", "x", 1, x)
    s.size("DB", "AE", "EC")
    s.ask(s.either("x", "AD"))


@family(3)
def similar_with_a_quadratic(s: Sheet) -> None:
    """AD = x, DB = x + k, AE and EC known in x too."""
    x, k = s.pick("x", (2, 3, 4, 6)), s.pick("k", (1, 2, 3))
    ad, db, ae = x, x + k, s.pick("e", (2, 4, 6))
    ec = ae * db / ad
    a, b, c = 0j, complex(ad + db), polar(ae + ec, 65)
    s.put(A=a, B=b, C=c, D=complex(ad), E=c * ae / (ae + ec))
    s.unit = ""
    s.show("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")
    s.tell("DE ∥ BC")
    s.in_letter("AD", "x", 1, x)
    s.in_letter("DB", "x", 1, x)
    s.size("AE")
    s.in_letter("EC", "x", 1, x)
    s.ask("x")


@family(6)
def similar_across_a_crossing(s: Sheet) -> None:
    """AB ∥ CD, AD and BC cross at E."""
    ae, be, k = s.pick("p", range(2, 10)), s.pick("q", range(2, 10)), s.pick("k", (1.5, 2, 2.5, 3, 0.5))
    w = s.pick("w", range(50, 130))
    a, b = complex(-ae), -polar(be, w)
    s.put(E=0j, A=a, B=b, D=-a * k, C=-b * k)
    s.show("AD and BC intersect at E", "segments AB, CD")
    s.tell(s.either("AB ∥ CD", "∠EAB = ∠EDC"))
    asked = s.either("ED", "EC", "BC")
    s.size(*{"ED": ("AE", "BE", "EC"), "EC": ("AE", "ED", "BE"), "BC": ("AE", "ED", "BE")}[asked])
    s.ask(asked)


@family(5)
def similar_with_a_common_angle(s: Sheet) -> None:
    """∠ADE = ∠ACB: the triangles are the other way round."""
    ab, ac, ad = s.pick("b", range(6, 16)), s.pick("c", range(6, 16)), s.pick("d", range(2, 8))
    ae = ad * ab / ac  # AD/AC = AE/AB
    if ad > ab * 0.8 or ae > ac * 0.8 or ab == ac:
        raise Unfit("beyond, or parallel")
    a, b, c = 0j, complex(ab), polar(ac, s.pick("w", range(40, 100)))
    s.put(A=a, B=b, C=c, D=complex(ad), E=c * ae / ac)
    s.show("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")
    s.tell("∠ADE = ∠ACB")
    s.size("AD", "AB", "AC")
    s.ask(s.either("AE", "EC"))


@family(6)
def similar_stated(s: Sheet) -> None:
    a, b, c = _triangle(s)
    k = s.pick("k", (0.5, 1.5, 2, 2.5, 3))
    way = polar(k, s.pick("t", range(0, 360, 30)))
    shift = complex(60, 10)
    s.put(A=a, B=b, C=c, D=a * way + shift, E=b * way + shift, F=c * way + shift)
    s.show("triangles ABC and DEF")
    s.tell("△ABC ∼ △DEF")
    asked = s.either("EF", "DF", "perimeter of △DEF")
    told = {"EF": ("AB", "DE", "BC"), "DF": ("BC", "EF", "AC"), "perimeter of △DEF": ("AB", "BC", "AC", "DE")}[asked]
    s.size(*told)
    s.ask(asked)


@family(4)
def similar_by_angles_apart(s: Sheet) -> None:
    """Two triangles with two equal angles each."""
    p = s.pick("u", range(30, 80))
    bc, k, ab = s.pick("s", range(4, 12)), s.pick("k", (1.5, 2, 0.5, 3)), s.pick("c", range(4, 12))
    b, c = 0j, complex(bc)
    a = polar(ab, p)
    q = math.degrees(math.atan2(a.imag, bc - a.real))
    if not 20 < q < 110:
        raise Unfit("flat")
    way = polar(k, s.pick("t", range(0, 360, 30)))
    shift = complex(40, 5)
    s.put(A=a, B=b, C=c, D=a * way + shift, E=b * way + shift, F=c * way + shift)
    s.show("triangles ABC and DEF")
    s.tell("∠ABC = ∠DEF", "∠ACB = ∠DFE")
    s.size("AB", "BC", "EF")
    s.ask("DE")


@family(3)
def similar_areas(s: Sheet) -> None:
    ad, db = s.pick("p", range(1, 6)), s.pick("q", range(1, 6))
    base, h = s.pick("b", range(4, 16)), s.pick("h", range(4, 16))
    a, b, c = complex(base * 0.3, h), 0j, complex(base)
    share = ad / (ad + db)
    s.put(A=a, B=b, C=c, D=a + (b - a) * share, E=a + (c - a) * share)
    s.unit = "cm"
    s.show("triangle ABC", "D lies on AB", "E lies on AC", "segment DE")
    s.tell("DE ∥ BC", f"AD : DB = {ad} : {db}")
    s.size("area of △ABC")
    s.ask("area of △ADE")


@family(4)
def angle_bisector_ratio(s: Sheet) -> None:
    b, c = s.pick("b", SIDES), s.pick("c", SIDES)
    k = s.pick("k", (0.5, 1, 1.5, 2))
    bd, dc = c * k, b * k
    pa, pb, pc = triangle(bd + dc, b, c)
    s.put(A=pa, B=pb, C=pc, D=complex(bd))
    if b == c:
        raise Unfit("isosceles")
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD bisects ∠BAC")
    asked = s.either("DC", "AC", "BD")
    s.size(*{"DC": ("AB", "AC", "BD"), "AC": ("AB", "BD", "DC"), "BD": ("AB", "AC", "BC")}[asked])
    s.ask(asked)


@family(5)
def midpoint_theorem(s: Sheet) -> None:
    a, b, c = _triangle(s)
    s.put(A=a, B=b, C=c, D=(a + b) / 2, E=(a + c) / 2)
    s.show("triangle ABC", "D is the midpoint of AB", "E is the midpoint of AC", "segment DE")
    asked = s.either("DE", "BC", "∠ADE", "perimeter of △ADE")
    if asked == "∠ADE":
        # Angles in whole degrees instead of whole sides
        p, q = s.pick("u", range(30, 80)), s.pick("v", range(30, 80))
        b, c = 0j, 10 + 0j
        a = meet(b, polar(1, p), c, c + polar(1, 180 - q))
        s.put(A=a, B=b, C=c, D=(a + b) / 2, E=(a + c) / 2)
        s.size("∠BAC", "∠AED")
    elif asked == "perimeter of △ADE":
        s.size("AB", "BC", "AC")
    else:
        s.size("BC" if asked == "DE" else "DE")
    s.ask(asked)


@family(3)
def midpoint_converse(s: Sheet) -> None:
    a, b, c = _triangle(s)
    s.put(A=a, B=b, C=c, D=(a + b) / 2, E=(a + c) / 2)
    s.show("triangle ABC", "D is the midpoint of AB", "E lies on AC", "segment DE")
    s.tell("DE ∥ BC")
    s.size("AC", "DE")
    s.ask(s.either("AE", "BC"))


@family(3)
def centroid(s: Sheet) -> None:
    a, b, c = _triangle(s)
    d, e = (b + c) / 2, (a + c) / 2
    s.put(A=a, B=b, C=c, D=d, E=e, G=(a + b + c) / 3)
    asked = s.either("AG", "AD", "GE")
    told = {"AG": "GD", "AD": "AG", "GE": "BE"}[asked]
    _scaled(s, told, s.pick("m", range(3, 13)))
    s.show("triangle ABC", "D is the midpoint of BC", "E is the midpoint of AC", "AD and BE intersect at G")
    s.size(told)
    s.ask(asked)


@family(3)
def three_parallels(s: Sheet) -> None:
    p, q, r = (s.pick(name, range(2, 10)) for name in "pqr")
    u = polar(1, s.pick("w", range(60, 85)))
    v = polar(1, s.pick("v", range(95, 125)))
    other = r * q / p
    a, b, c = 0j, -u * p, -u * (p + q)
    d0 = 9 + 0j
    # D, E, F on the second transversal at the same heights
    scale = (u.imag * p) / (v.imag * r)
    v = v * scale
    d, e, f = d0, d0 - v * r, d0 - v * (r + other)
    k = abs(d - e) / r
    s.put(A=a, B=b, C=c, D=d, E=e, F=f)
    if abs(k - 1) > 1e-9 and not 0.5 < k < 2:
        raise Unfit("steep")
    s.show("A-B-C", "D-E-F", "segments AD, BE, CF")
    s.tell("AD ∥ BE ∥ CF")
    s.tell(f"AB : BC = {p:g} : {q:g}")
    _scaled(s, "DE", r)
    s.size("DE")
    s.ask("EF")


@family(3)
def shadow_of_a_pole(s: Sheet) -> None:
    """Two right-angled triangles with a common angle."""
    h, near, far = s.pick("h", range(2, 9)), s.pick("n", range(2, 9)), s.pick("f", range(3, 12))
    top = h * (near + far) / near
    s.put(A=0j, B=complex(near), C=complex(near + far), D=complex(near, h), E=complex(near + far, top))
    s.unit = "m"
    s.show("A-B-C", "A-D-E", "segments BD, CE")
    s.tell("BD ⊥ AC", "CE ⊥ AC")
    s.size("AB", "BC", "BD")
    s.ask(s.either("CE", "AE"))


# Quadrilaterals


@family(5)
def parallelogram_in_letters(s: Sheet) -> None:
    x, y = s.pick("x", range(2, 9)), s.pick("y", range(2, 9))
    ab, ad = 2 * x + s.pick("d", range(1, 6)), 3 * y + s.pick("e", range(1, 5))
    b, d = complex(ab), polar(ad, s.pick("w", range(50, 130)))
    s.put(A=0j, B=b, C=b + d, D=d)
    s.unit = ""
    s.show("parallelogram ABCD")
    s.in_letter("AB", "x", 2, x)
    s.in_letter("CD", "x", s.pick("m", (1, 3)), x)
    s.in_letter("AD", "y", 3, y)
    s.in_letter("BC", "y", s.pick("n", (1, 2)), y)
    s.ask(s.either("x", "perimeter of ABCD", "y"))


@family(5)
def parallelogram_angles_and_sides(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    b, d = complex(p), polar(q, s.pick("w", range(50, 130)))
    s.put(A=0j, B=b, C=b + d, D=d)
    s.show("parallelogram ABCD")
    if s.chance.random() < 0.5:
        s.size("AB", "BC")
        s.ask("perimeter of ABCD")
    else:
        s.size("perimeter of ABCD", "AB")
        s.ask(s.either("BC", "AD"))


@family(4)
def parallelogram_diagonals(s: Sheet) -> None:
    b, d = complex(s.pick("p", SIDES)), polar(s.pick("q", SIDES), s.pick("w", range(50, 130)))
    s.put(A=0j, B=b, C=b + d, D=d, E=(b + d) / 2)
    _scaled(s, s.either("AE", "AC"), s.pick("m", range(4, 14)))
    s.show("parallelogram ABCD", "AC and BD intersect at E")
    if abs(round(abs(s.at["A"] - s.at["E"]) * 2) - abs(s.at["A"] - s.at["C"])) > 1e-9:
        raise Unfit("odd")
    asked, told = s.chance.choice([("AC", "AE"), ("EC", "AE"), ("AE", "AC")])
    s.size(told)
    s.ask(asked)


@family(4)
def parallelogram_bisector(s: Sheet) -> None:
    """The bisector of an angle cuts off an isosceles triangle."""
    p, q = s.pick("p", range(6, 16)), s.pick("q", range(3, 12))
    w = s.pick("w", range(50, 130, 2))
    b, d = complex(p), polar(q, w)
    e = d + q
    if q > p - 1:
        raise Unfit("beyond")
    s.put(A=0j, B=b, C=b + d, D=d, E=e)
    s.show("parallelogram ABCD", "E lies on DC", "segment AE")
    s.tell("AE bisects ∠DAB")
    s.size("AB", "AD")
    s.ask(s.either("EC", "DE"))


@family(4)
def rhombus_diagonals(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    s.put(A=complex(-p), B=complex(0, -q), C=complex(p), D=complex(0, q), E=0j)
    s.show("rhombus ABCD", "AC and BD intersect at E")
    asked = s.either("AB", "BD", "perimeter of ABCD", "area of ABCD")
    s.size("AC", "AB" if asked == "BD" else "BD")
    s.ask(asked)


@family(4)
def rectangle_diagonal(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    s.put(A=0j, B=complex(p), C=complex(p, q), D=q * 1j, E=complex(p, q) / 2)
    s.show("rectangle ABCD", "AC and BD intersect at E")
    asked = s.either("AC", "BE", "BC", "∠CAB")
    s.size("AB", "AC" if asked == "BC" else "BC")
    s.ask(asked)


@family(3)
def rectangle_diagonals_at_an_angle(s: Sheet) -> None:
    h, w = s.pick("h", SIDES), s.pick("w", (60, 120, 50, 80))
    a = polar(h, 180 + w / 2)
    s.put(A=a, B=a.real * -1 + a.imag * 1j, C=-a, D=-(a.real * -1 + a.imag * 1j), E=0j)
    s.show("rectangle ABCD", "AC and BD intersect at E")
    s.size("AC", "∠AED")
    s.ask(s.either("AD", "∠EAB", "AB"))


@family(3)
def square_diagonal(s: Sheet) -> None:
    side = s.pick("s", SIDES)
    s.put(A=0j, B=complex(side), C=complex(side, side), D=side * 1j)
    s.show("square ABCD", "diagonal AC")
    asked, told = s.chance.choice(
        [("AC", "AB"), ("AB", "AC"), ("area of ABCD", "AC"), ("AC", "area of ABCD"), ("perimeter of ABCD", "AC")]
    )
    s.size(told)
    s.ask(asked)


@family(3)
def square_and_equilateral(s: Sheet) -> None:
    side = s.pick("s", SIDES)
    s.put(
        A=0j, B=complex(side), C=complex(side, side), D=side * 1j, E=complex(side / 2, side + side * math.sqrt(3) / 2)
    )
    s.show("square ABCD", "equilateral triangle DCE", "segment AE")
    s.size("AB")
    s.ask(s.either("∠DAE", "perimeter of ABCED", "AE"))


@family(4)
def kite_diagonals(s: Sheet) -> None:
    p, q, h = s.pick("p", SIDES), s.pick("q", SIDES), s.pick("h", SIDES)
    if p == q:
        raise Unfit("rhombus")
    s.put(A=p * 1j, B=complex(-h), C=-q * 1j, D=complex(h), E=0j)
    s.show("kite ABCD", "AC and BD intersect at E")
    s.tell("AB = AD", "CB = CD")
    asked = s.either("AB", "area of ABCD", "CD")
    s.size(*{"AB": ("AE", "BD"), "area of ABCD": ("AC", "BD"), "CD": ("CE", "BD")}[asked])
    s.ask(asked)


@family(3)
def trapezium_height(s: Sheet) -> None:
    """A perpendicular from the shorter side, then Pythagoras."""
    top, h, p = s.pick("t", SIDES), s.pick("h", SIDES), s.pick("p", range(2, 9))
    s.put(A=0j, B=complex(top + p), C=complex(top, h), D=h * 1j, E=complex(top))
    s.show("trapezium ABCD with AB ∥ DC", "E lies on AB", "segment CE")
    s.tell("AD ⊥ AB", "CE ⊥ AB")
    s.size("AB", "DC", "AD")
    s.ask(s.either("BC", "perimeter of ABCD", "area of ABCD"))


@family(3)
def isosceles_trapezium(s: Sheet) -> None:
    top, h, p = s.pick("t", SIDES), s.pick("h", SIDES), s.pick("p", range(2, 9))
    s.put(A=complex(-p), B=complex(top + p), C=complex(top, h), D=h * 1j, E=0j, F=complex(top))
    s.show("trapezium ABCD with AB ∥ DC", "E lies on AB", "F lies on AB", "segments DE, CF")
    s.tell("AD = BC", "DE ⊥ AB", "CF ⊥ AB")
    s.size("AB", "DC", "AD")
    s.ask(s.either("DE", "area of ABCD", "AE"))


@family(3)
def trapezium_midline(s: Sheet) -> None:
    top, base, h = s.pick("t", range(3, 12)), s.pick("b", range(5, 20)), s.pick("h", range(3, 9))
    if top == base:
        raise Unfit("parallelogram")
    a, b, c, d = 0j, complex(base), complex(top + 1.5, h), complex(1.5, h)
    s.put(A=a, B=b, C=c, D=d, M=(a + d) / 2, N=(b + c) / 2)
    s.show("trapezium ABCD with AB ∥ DC", "M is the midpoint of AD", "N is the midpoint of BC", "segment MN")
    asked = s.either("MN", "AB")
    s.size("DC", "AB" if asked == "MN" else "MN")
    s.ask(asked)


@family(3)
def quadrilateral_by_pythagoras(s: Sheet) -> None:
    """Two right angles at opposite corners, the diagonal between."""
    p, q, r = s.pick("p", SIDES), s.pick("q", SIDES), s.pick("r", SIDES)
    a, b, d = 0j, complex(p), q * 1j
    h2 = p * p + q * q
    if r * r > h2 * 0.9:
        raise Unfit("too long")
    t = math.sqrt(h2 - r * r)
    # C beyond BD with CB = r, CD = t
    u = (d - b) / abs(d - b)
    along, off = r * r / math.sqrt(h2), r * t / math.sqrt(h2)
    s.put(A=a, B=b, C=b + u * along - 1j * u * off, D=d)
    s.show("quadrilateral ABCD", "diagonal BD")
    s.tell("∠BAD = 90°", "∠BCD = 90°")
    s.size("AB", "AD", "BC")
    s.ask(s.either("CD", "area of ABCD"))


# Polygons and areas


@family(3)
def regular_polygon(s: Sheet) -> None:
    name, count = s.chance.choice((("pentagon", 5), ("hexagon", 6), ("octagon", 8)))
    side = s.pick("s", SIDES)
    r = side / 2 / math.sin(math.pi / count)
    letters = "ABCDEFGH"[:count]
    s.put(**{letter: polar(r, 360 / count * i) for i, letter in enumerate(letters)})
    s.show(f"regular {name} {letters}", "segment AC")
    s.size("AB")
    s.ask(s.either(f"perimeter of {letters}", "∠BAC", "AC"))


@family(2)
def regular_hexagon(s: Sheet) -> None:
    side = s.pick("s", SIDES)
    s.put(**{letter: polar(side, 60 * i) for i, letter in enumerate("ABCDEF")})
    s.show("regular hexagon ABCDEF", "segments AC, AD")
    s.size("AB")
    s.ask(s.either("area of ABCDEF", "AD", "AC"))


@family(4)
def area_of_a_parallelogram(s: Sheet) -> None:
    p, h, off = s.pick("p", range(5, 16)), s.pick("h", SIDES), s.pick("o", range(1, 5))
    s.put(A=0j, B=complex(p), C=complex(p + off, h), D=complex(off, h), E=complex(off))
    s.show("parallelogram ABCD", "E lies on AB", "segment DE")
    s.tell("DE ⊥ AB")
    asked = s.either("area of ABCD", "DE", "AD")
    s.size(*{"area of ABCD": ("AB", "DE"), "DE": ("area of ABCD", "AB"), "AD": ("area of ABCD", "AB", "AE")}[asked])
    s.ask(asked)


@family(3)
def area_of_a_trapezium(s: Sheet) -> None:
    top, base, h = s.pick("t", SIDES), s.pick("b", SIDES), s.pick("h", SIDES)
    if top >= base - 1:
        raise Unfit("wide")
    s.put(A=0j, B=complex(base), C=complex(top, h), D=h * 1j)
    s.show("trapezium ABCD with AB ∥ DC")
    s.tell("AD ⊥ AB")
    asked = s.either("area of ABCD", "AD")
    s.size("AB", "DC", "AD" if asked != "AD" else "area of ABCD")
    s.ask(asked)


@family(3)
def area_of_a_rectangle(s: Sheet) -> None:
    p, q = s.pick("p", SIDES), s.pick("q", SIDES)
    s.put(A=0j, B=complex(p), C=complex(p, q), D=q * 1j)
    s.show("rectangle ABCD")
    asked, told = s.chance.choice(
        [("area of ABCD", ("AB", "BC")), ("BC", ("area of ABCD", "AB")), ("perimeter of ABCD", ("area of ABCD", "AB"))]
    )
    s.size(*told)
    s.ask(asked)


@family(2)
def rectangle_in_a_letter(s: Sheet) -> None:
    """x(x + k) = area: a quadratic."""
    x, k = s.pick("x", range(2, 9)), s.pick("k", range(1, 6))
    s.put(A=0j, B=complex(x + k), C=complex(x + k, x), D=x * 1j)
    s.unit = ""
    s.show("rectangle ABCD")
    s.in_letter("AB", "x", 1, x)
    s.in_letter("BC", "x", 1, x)
    s.size("area of ABCD")
    s.ask(s.either("x", "perimeter of ABCD"))


@family(3)
def area_of_a_compound(s: Sheet) -> None:
    """A rectangle with a triangle on top."""
    p, q, h = s.pick("p", range(4, 16, 2)), s.pick("q", SIDES), s.pick("h", SIDES)
    s.put(A=0j, B=complex(p), C=complex(p, q), D=q * 1j, E=complex(p / 2, q + h), M=complex(p / 2, q))
    s.show("rectangle ABCD", "triangle DCE", "M lies on DC", "segment EM")
    s.tell("EM ⊥ DC")
    s.size("AB", "BC", "EM")
    s.ask("area of ABCED")


@family(2)
def triangle_in_a_rectangle(s: Sheet) -> None:
    p, q, e = s.pick("p", range(6, 16)), s.pick("q", SIDES), s.pick("e", range(1, 6))
    s.put(A=0j, B=complex(p), C=complex(p, q), D=q * 1j, E=complex(e, q))
    s.show("rectangle ABCD", "E lies on DC", "segments AE, BE")
    s.size("AB", "BC")
    if s.chance.random() < 0.5:
        s.ask("area of △ABE")
    else:
        s.size("DE")
        s.ask(s.either("AE", "BE", "perimeter of △ABE"))


@family(3)
def equal_heights_share_a_base(s: Sheet) -> None:
    """Triangles of one height: areas as their bases."""
    p, q, h = s.pick("p", range(2, 10)), s.pick("q", range(2, 10)), s.pick("h", range(4, 12, 2))
    s.put(B=0j, D=complex(p), C=complex(p + q), A=complex(p * 0.7, h))
    s.unit = "cm"
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.size("area of △ABD", "BD", "DC")
    s.ask(s.either("area of △ADC", "area of △ABC"))


@family(3)
def folding_chain(s: Sheet) -> None:
    """A rectangle, a point of its side, a right angle there: similar triangles and Pythagoras."""
    p, q, e = s.pick("p", range(4, 14)), s.pick("q", range(2, 12)), s.pick("e", range(2, 10))
    # E on BC with ∠AED' = 90°: AB = p, BE = e, then EC·? with F on CD
    f = e * q / p
    s.put(A=0j, B=complex(p), E=complex(p, e), C=complex(p, e + q), D=complex(0, e + q), F=complex(p - f, e + q))
    if f > p - 0.5:
        raise Unfit("beyond")
    s.show("rectangle ABCD", "E lies on BC", "F lies on DC", "segments AE, EF, AF")
    s.tell("∠AEF = 90°")
    s.size("AB", "BE", "EC")
    s.ask(s.either("FC", "AE", "EF"))


@family(3)
def distance_from_a_point_to_a_side(s: Sheet) -> None:
    a, b, c = triangle(*map(float, s.chance.choice(((14, 13, 15), (21, 17, 10), (5, 5, 6), (10, 8, 6)))))
    d = foot(a, b, c)
    s.put(A=a, B=b, C=c, D=d)
    if not 0.5 < d.real < c.real - 0.5:
        raise Unfit("outside")
    s.show("triangle ABC", "D lies on BC", "segment AD")
    s.tell("AD ⊥ BC")
    s.size("AB", "BD", "DC")
    s.ask(s.either("AC", "AD", "area of △ABC"))
