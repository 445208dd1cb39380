"""Compares the stored sizes and orders of trials with statsmodels, scipy and hashlib.

The Rust tests hold the calculations against the same file, so both must agree with it and thus with each other.
`--write` stores what the libraries say as the expected figures.

    python tests/reference_libraries/trial_sizes.py
"""

import hashlib
import itertools
import json
import math
import sys
from pathlib import Path

from scipy.optimize import brentq
from scipy.stats import nct, t
from statsmodels.stats.power import NormalIndPower, TTestIndPower
from statsmodels.stats.proportion import proportion_effectsize

FILE = Path(__file__).parent.parent / "reference" / "trial_sizes.json"
TOLERANCE = 1e-6  # relative

RISKS = [(0.05, 0.8), (0.01, 0.8), (0.1, 0.9), (0.05, 0.95), (0.001, 0.999), (0.2, 0.5)]


def t_test_power(effect, pieces, alpha):
    """Power as statsmodels tells it; where scipy's lower tail is not a number, its upper tail alone."""
    power = TTestIndPower().power(effect, pieces, alpha)
    if not math.isnan(power):
        return power
    delta, degrees = effect * math.sqrt(pieces / 2), 2 * pieces - 2
    assert delta > 5, "the lower tail counts"  # it is below 1e-10 here
    return float(nct.sf(t.isf(alpha / 2, degrees), degrees, delta))


def root(rising, low, high):
    """The root of a rising function; the bracket grows from below, for far beyond the root scipy gives no number."""
    while rising(high) < 0:
        high *= 1.5
    return brentq(rising, low, high, xtol=1e-13, rtol=1e-13)


def difference(effect, alpha, power):
    """Fractional pieces of each setting; the calculation never goes below two."""
    if t_test_power(effect, 2, alpha) >= power:
        return 2.0
    return root(lambda n: t_test_power(effect, n, alpha) - power, 2, 3)


def solved_difference(effect, alpha, power):
    """The library's own solver, where it converges; less close than the root above."""
    return float(TTestIndPower().solve_power(effect_size=effect, alpha=alpha, power=power))


def detectable(pieces, alpha, power):
    return root(lambda effect: t_test_power(effect, pieces, alpha) - power, 1e-6, 1 / math.sqrt(pieces))


def proportions(now, wanted, alpha, power):
    effect = abs(proportion_effectsize(now / 100, wanted / 100))
    return root(lambda n: NormalIndPower().power(effect, n, alpha) - power, 1e-9, 1)


def solved_proportions(now, wanted, alpha, power):
    effect = abs(proportion_effectsize(now / 100, wanted / 100))
    return float(NormalIndPower().solve_power(effect_size=effect, alpha=alpha, power=power))


def order(seed, block, runs):
    return sorted(range(1, runs + 1), key=lambda run: hashlib.sha256(f"{seed}/{block}/{run}".encode()).digest())


def problems():
    for effect, (alpha, power) in itertools.product((0.05, 0.2, 0.5, 0.8, 1.5, 3.0, 8.0), RISKS):
        yield {"calculation": "difference", "effect": effect, "alpha": alpha, "power": power}
    for pieces, (alpha, power) in itertools.product((2, 3, 5, 12, 64, 1000), RISKS):
        yield {"calculation": "detectable", "pieces": pieces, "alpha": alpha, "power": power}
    for (now, wanted), (alpha, power) in itertools.product([(20, 5), (50, 40), (2, 0), (0.5, 3), (90, 100)], RISKS):
        yield {"calculation": "proportions", "now": now, "wanted": wanted, "alpha": alpha, "power": power}
    for seed, block, runs in [(1, 1, 4), (7, 1, 8), (7, 2, 8), (4294967295, 1, 5), (0, 3, 1)]:
        yield {"calculation": "order", "seed": seed, "block": block, "runs": runs}


def answer(problem):
    inputs = {name: value for name, value in problem.items() if name not in ("calculation", "expected")}
    functions = {"difference": difference, "detectable": detectable, "proportions": proportions, "order": order}
    return functions[problem["calculation"]](**inputs)


def check_solver(problem):
    """Whether the library's `solve_power` gives the same; it does not always converge, and then counts as unknown."""
    solvers = {"difference": solved_difference, "proportions": solved_proportions}
    solver = solvers.get(problem["calculation"])
    inputs = {name: value for name, value in problem.items() if name not in ("calculation", "expected")}
    if solver is None or problem["expected"] <= 2.0:
        return 0
    solved = solver(**inputs)
    if problem["calculation"] == "difference":
        reached = TTestIndPower().power(problem["effect"], solved, problem["alpha"])
        if not math.isclose(reached, problem["power"], rel_tol=1e-6):
            return 0
    assert math.isclose(solved, problem["expected"], rel_tol=TOLERANCE), (problem, solved)
    return 1


def main():
    if "--write" in sys.argv:
        solved = [{**problem, "expected": answer(problem)} for problem in problems()]
        text = ",\n".join(json.dumps(problem) for problem in solved)
        FILE.write_text(f"[\n{text}\n]\n", encoding="utf-8")
    stored = json.loads(FILE.read_text(encoding="utf-8"))
    solved = 0
    for problem in stored:
        own = answer(problem)
        if problem["calculation"] == "order":
            assert own == problem["expected"], problem
        else:
            assert math.isclose(own, problem["expected"], rel_tol=TOLERANCE), (problem, own)
            solved += check_solver(problem)
    assert solved > 50, solved
    print(f"{len(stored)} sizes and orders of trials agree with statsmodels and hashlib, {solved} also with solve_power")


if __name__ == "__main__":
    main()
