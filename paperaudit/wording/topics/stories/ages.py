"""Stories of ages: now, years ago and in years to come."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from parsimonious.nodes import Node

from paperaudit.maths.tree import every, first, has, the
from paperaudit.model.expression import Number
from paperaudit.model.story import (
    Added,
    Amount,
    Claim,
    Later,
    Named,
    Said,
    Same,
    Scaled,
    Size,
    Sought,
    StoryTask,
    Taken,
    Wanted,
)
from paperaudit.wording.scene import NotUnderstood
from paperaudit.wording.topics.stories.amounts import TWICE, multiple_of, number_in
from paperaudit.wording.topics.stories.cast import Cast
from paperaudit.wording.topics.stories.grammar import tree_of
from paperaudit.wording.topics.stories.plain import Plain
from paperaudit.wording.topics.stories.trees import has_any, lies_in, within

AHEAD = re.compile(r"\bages?\b|\bold(?:er)?\b|\byounger\b")
ONE = Number(Fraction(1))
_TIME = "time"
_SHE = ("sister", "daughter", "mother", "grandmother", "aunt", "wife")
_KIN = re.compile(rf"\b(his|her) (brother|son|father|grandfather|uncle|husband|{'|'.join(_SHE)})\b")


def ages_story(sentences: Sequence[Plain]) -> StoryTask | None:
    """The story of a part as one of ages; raises NotUnderstood or ExpressionNotRead where it is none."""
    trees = [(tree, sentence) for sentence in sentences if (tree := tree_of("ages", sentence)) is not None]
    return _Ages(trees, Cast(sentences)).task() if trees else None


@dataclass
class _Ages:
    """The people of one story and what is said of their ages; `years` is the moment that a claim speaks of."""

    trees: list[tuple[Node, Plain]]
    cast: Cast
    claims: list[Said] = field(default_factory=list)
    wanted: list[Wanted] = field(default_factory=list)
    years: Fraction = Fraction(0)
    explicit: bool = False
    sums: list[tuple[str, Fraction, Amount, int, int]] = field(default_factory=list)
    time: bool = False

    def task(self) -> StoryTask:
        """The task, with every sentence accounted for."""
        for tree, sentence in self.trees:
            for node in every(tree, "claim"):
                for claim in self._told(node.children[0], sentence):
                    self.claims.append(Said(sentence.said, claim))
        for said, years, total, at, known in self.sums:
            if len(self.cast.names) < 2 or 2 <= known < len(self.cast.names):
                raise NotUnderstood("whose ages are added", 0)
            sizes = tuple(self._then(key, years) for key in self.cast.names)
            self.claims.insert(at, Said(said, Same(Added(sizes), total)))
        for tree, sentence in self.trees:
            for node in every(tree, "ask"):
                self._asked(node.children[0], sentence)
        if not self.claims or not self.wanted:
            raise NotUnderstood("ages of which nothing is told or asked", 0)
        sought = [
            Sought(key, f"{self.cast.shown(key)}'s age now", "year", "not negative", False, "an age")
            for key in self.cast.names
        ]
        if self.time:
            sought.append(Sought(_TIME, "the number of years", "year", "not negative", False, "a number of years"))
        return StoryTask(tuple(sought), tuple(self.claims), tuple(self.wanted))

    def _told(self, node: Node, sentence: Plain) -> Iterator[Claim]:
        self._set_time(node)
        match node.expr_name:
            case "older":
                by = self._number(node)
                older = re.search(r" older than ", node.text)
                many: Node | None = first(node, "scaled")
                left: Size
                right: Size
                if many is None:
                    one, other = self._pair(list(within(node, "person")))
                    left = Named(one)
                    right = Named(other)
                else:
                    self._tense(node)
                    left = self._then(self._person(the(node, "person")), self.years)
                    right = self._size(many)
                yield Same(left, Added((right, by)) if older else Taken(right, by))
            case "as_old":
                yield self._as_old(node)
            case "aged":
                self._tense(node)
                yield Same(self._then(self._person(the(node, "person")), self.years), self._number(node))
            case "together" | "summed":
                self._tense(node)
                people = first_people(node)
                total = self._number(node)
                if people:
                    yield Same(Added(tuple(self._then(self._person(one), self.years) for one in people)), total)
                else:
                    self.sums.append((sentence.said, self.years, total, len(self.claims), len(self.cast.names)))
            case "averaged":
                people = first_people(node)
                sizes = tuple(Named(self._person(one)) for one in people)
                yield Same(Added(sizes), Scaled(Number(Fraction(len(sizes))), self._number(node)))
            case "ratio":
                one, other = self._pair(first_people(node))
                shares = [Number(Fraction(number)) for number in re.findall(r"\d+", node.children[-1].text)]
                yield Same(Scaled(shares[0], Named(other)), Scaled(shares[1], Named(one)))
            case "equation":
                self._tense(node)
                one_side, other_side = every(node, "size")
                yield Same(self._size(one_side.children[0]), self._size(other_side.children[0]))

    def _as_old(self, node: Node) -> Claim:
        explicit = the(node, "other_age")
        inner = first(explicit, "when")
        there = re.search(r" (was|is|will be|were)(?: then)?(?= |$)", explicit.text)
        _check_tense(the(node, "be").text, self.years, self.explicit)
        theirs = self.years
        if inner is not None:
            theirs = _years(inner)
        elif there is not None and there.group(1) == "is" and self.years:
            # "In 12 years he will be twice as old as she is": as she is now, or as she is then?
            raise NotUnderstood("at which moment the other age is meant", explicit.start, "“is now” or “is then”")
        elif there is not None and there.group(1) != "will be" and self.years >= 0:
            raise NotUnderstood("when that was", explicit.start)
        people = list(within(node, "person"))
        one, other = self._pair(people)
        return Same(self._then(one, self.years), _scaled(_fold(the(node, "fold")), self._then(other, theirs)))

    def _set_time(self, node: Node) -> None:
        whens = [when for when in within(node, "when") if not lies_in(node, when, "age_of", "other_age")]
        moments = {_years(when) for when in whens}
        if len(moments) > 1:
            raise NotUnderstood("two moments in one statement", node.start)
        self.years = moments.pop() if moments else Fraction(0)
        self.explicit = bool(whens)

    def _tense(self, node: Node) -> None:
        verb = re.search(r"\b(was|were|will be|will then be|will add|will total|is|are)\b", node.text)
        inner = has_any(node, "when")
        if verb is not None:
            _check_tense(verb.group(1), self.years, self.explicit or inner)

    def _size(self, node: Node) -> Size:
        match node.expr_name:
            case "compared":
                base = self._size(the(node, "size").children[0])
                by = self._number(node)
                return Added((base, by)) if re.match(r"[\d./ ]+(?: years?)? more", node.text) else Taken(base, by)
            case "scaled":
                return _scaled(multiple_of(the(node, "multiple")), self._size(the(node, "size").children[0]))
            case "age_of":
                when = first(node, "when")
                person = first(node, "person")
                if person is None:
                    raise NotUnderstood("whose age", node.start)
                return self._then(self._person(person), _years(when) if when is not None else self.years)
        return self._number(node)

    def _then(self, key: str, years: Fraction) -> Size:
        if not years:
            return Named(key)
        return Later(key, Number(years))

    def _pair(self, people: Sequence[Node]) -> tuple[str, str]:
        """Two people of a comparison; a pronoun is the one of two who is not named."""
        one, other = people
        if all(has(person, "pronoun") for person in people):
            return self._by_kin(one.text), self._by_kin(other.text)
        if has(one, "pronoun") or one.expr_name == "pronoun":
            key = self._person(other)
            return self.cast.only_other([key]), key
        if has(other, "pronoun"):
            key = self._person(one)
            return key, key if len(self.cast.names) == 1 else self.cast.only_other([key])
        return self._person(one), self._person(other)

    def _by_kin(self, pronoun: str) -> str:
        """Who "she" is beside "he", where one of the two is "her brother"."""
        words = " ".join(sentence.text for _, sentence in self.trees)
        found = {(one[1], one[2]) for one in _KIN.finditer(words)}
        if len(found) != 1 or len(self.cast.names) != 2:
            raise NotUnderstood("whom a pronoun means", 0)
        owner, kin = found.pop()
        if (owner == "her") == (kin in _SHE):
            raise NotUnderstood("whom a pronoun means", 0)
        (key,) = [one for one in self.cast.names if kin in one.split()]
        return key if (pronoun == "she") == (kin in _SHE) else self.cast.only_other([key])

    def _person(self, node: Node) -> str:
        if has(node, "pronoun"):
            if len(self.cast.names) != 1:
                raise NotUnderstood("whom a pronoun means", node.start)
            return next(iter(self.cast.names))
        return self.cast.take(node.text)

    def _number(self, node: Node) -> Amount:
        numbers = [one for one in within(node, "number") if not lies_in(node, one, "when", "fold", "multiple")]
        return Amount(number_in(numbers[0].text))

    def _asked(self, node: Node, sentence: Plain) -> None:
        whens = list(within(node, "when"))
        years = _years(whens[0]) if whens else Fraction(0)
        if node.expr_name == "when_ask":
            one, other = (self.cast.find(person.text) for person in every(node, "person"))
            past = "ago" in node.text
            then = [
                Taken(Named(key), Named(_TIME)) if past else Added((Named(key), Named(_TIME))) for key in (one, other)
            ]
            self.claims.append(Said(sentence.said, Same(then[0], _scaled(_fold(the(node, "fold")), then[1]))))
            self.wanted.append(Wanted(Named(_TIME), "the number of years", "year"))
            self.time = True
            return
        if re.match(r"(?:how old|what age) (?:was|were|will)", node.text) and not whens:
            raise NotUnderstood("when that is", node.start)
        people = list(within(node, "person"))
        keys = [self._known(person) for person in people] if people else list(self.cast.names)
        if not people and not (has_any(node, "they") or has_any(node, "all_ages")):
            raise NotUnderstood("whose age is asked for", node.start)
        at = "" if not years else f" in {years} years" if years > 0 else f" {-years} years ago"
        for key in keys:
            self.wanted.append(Wanted(self._then(key, years), f"{self.cast.shown(key)}'s age{at}", "year"))

    def _known(self, node: Node) -> str:
        return self._person(node) if has(node, "pronoun") else self.cast.find(node.text)


def first_people(node: Node) -> list[Node]:
    """The people that a sum or a ratio names."""
    return list(within(node, "person"))


def _years(when: Node) -> Fraction:
    """The moment of "in 5 years", "5 years ago", "now", as years from now."""
    number = first(when, "number")
    if number is None:
        return Fraction(0)
    years = number_in(number.text).value
    return -years if re.search(r"\b(?:ago|earlier|back)\b", when.text) else years


def _check_tense(verb: str, years: Fraction, said: bool) -> None:
    """A verb in the future or past needs its moment: "will be" without "in 5 years" could be any."""
    verb = verb.strip()
    if verb.startswith("will") and (years <= 0 or not said):
        raise NotUnderstood("when that will be", 0)
    if verb.startswith(("was", "were")) and (years >= 0 or not said):
        raise NotUnderstood("when that was", 0)
    if verb.startswith(("is", "are")) and years < 0 and said:
        raise NotUnderstood("when that is", 0)


def _fold(node: Node) -> Number:
    if has_any(node, "twice"):
        return TWICE
    number = next(within(node, "number"), None)
    return number_in(number.text) if number is not None else ONE


def _scaled(factor: Number, size: Size) -> Size:
    return size if factor.value == 1 else Scaled(factor, size)
