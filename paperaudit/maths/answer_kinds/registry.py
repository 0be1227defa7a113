"""Which comparison each kind of answer has."""

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import TypeAlias

from paperaudit.model.ask import Ask
from paperaudit.model.derivation import Answer, Comparison

Comparer: TypeAlias = Callable[[str, tuple[Answer, ...], Ask], Comparison]
"""The setter's text against the derived answers of one part: agrees, differs, or cannot be told."""

COMPARISONS: Mapping[str, tuple[str, str]] = {
    "bound": ("bounds", "compare_bound"),
    "bounds": ("bounds", "compare_bounds"),
    "centre and radius": ("plane", "compare_circle"),
    "choice": ("choice", "compare_choice"),
    "clock": ("clock", "compare_clock"),
    "completed square": ("square_form", "compare_square"),
    "counter-example": ("counter_example", "compare_counter_example"),
    "digits": ("digits", "compare_digits"),
    "domain": ("graphs", "compare_values"),
    "domain and range": ("graphs", "compare_domain_and_range"),
    "equation": ("plane", "compare_equation"),
    "equations": ("plane", "compare_equations"),
    "error interval": ("bounds", "compare_interval"),
    "estimate": ("estimate", "compare_estimate"),
    "expansion and range": ("expansion", "compare_with_range"),
    "expansion": ("expansion", "compare_expansion"),
    "formula": ("formula", "compare_formula"),
    "function": ("function_forms", "compare_function"),
    "general solution": ("waves", "compare_general"),
    "integral": ("function_forms", "compare_integral"),
    "intercept": ("plane", "compare_intercept"),
    "logarithms apart": ("logarithm", "compare_apart"),
    "named values": ("statistic", "compare_statistic"),
    "nature": ("square_form", "compare_nature"),
    "no sum": ("nth_term", "compare_no_sum"),
    "nth term": ("nth_term", "compare_nth_term"),
    "number words": ("digits", "compare_number_words"),
    "numbers in order": ("numbers", "compare_in_order"),
    "numbers": ("numbers", "compare_numbers"),
    "offer": ("offer", "compare_offer"),
    "one of numbers": ("numbers", "compare_one"),
    "open set": ("graphs", "compare_open"),
    "place": ("digits", "compare_place"),
    "point": ("plane", "compare_points"),
    "points": ("plane", "compare_points"),
    "power": ("power", "compare_power"),
    "prime powers": ("prime_product", "compare_powers"),
    "prime product": ("prime_product", "compare_product"),
    "range": ("waves", "compare_range"),
    "ratio": ("ratio", "compare_ratio"),
    "recurring": ("recurring", "compare_recurring"),
    "set": ("members", "compare_members"),
    "side": ("side", "compare_side"),
    "sigma": ("sigma", "compare_sigma"),
    "sign": ("digits", "compare_sign"),
    "single logarithm": ("logarithm", "compare_single"),
    "skewness": ("skewness", "compare_skewness"),
    "solution set": ("solution_set", "compare_set"),
    "solutions": ("pairs", "compare_solutions"),
    "stationary points": ("function_forms", "compare_stationary"),
    "statistic": ("statistic", "compare_statistic"),
    "story": ("story", "compare_story"),
    "transformation": ("graphs", "compare_transformation"),
    "trigonometric form": ("waves", "compare_trigonometric"),
    "undefined": ("plane", "compare_undefined"),
    "vector": ("vectors", "compare_vector"),
    "which term": ("nth_term", "compare_which_term"),
    "word": ("digits", "compare_word"),
}
"""By the `kind` of an Answer: the module of this folder, and its function; loaded when a part has such an answer."""


def comparer_of(kind: str) -> Comparer:
    """The comparison of a kind of answer."""
    module, name = COMPARISONS[kind]
    comparer: Comparer = getattr(import_module(f"{__package__}.{module}"), name)
    return comparer
