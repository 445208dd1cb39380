"""Compares the stored fat blends with scipy, an independent least-squares library.

The Rust tests hold the blend calculation against the same file, so both must agree with it and thus with each
other. Needs `pip install numpy==2.4.6 scipy==1.17.1`. `--write` stores scipy's answers as the expected ones.

    python tests/reference_libraries/least_squares.py
"""

import json
import sys
from pathlib import Path

import numpy as np
from scipy.optimize import linprog, minimize, nnls

FILE = Path(__file__).parent.parent / "reference" / "fat_blends.json"
HEAVY = 1e7  # weight of a row that must hold exactly
SHARE_TOLERANCE = 0.002  # percentage points of a share
ERROR_TOLERANCE = 0.001  # percentage points of solids


def limits_of(problem):
    """Rows (content - most) that must not be above zero for shares that add up to one."""
    rows = []
    for content in ("trans", "saturated"):
        most = problem.get(f"most_{content}")
        if most is not None:
            rows.append([fat[content] - most for fat in problem["fats"]])
    return np.array(rows, dtype=float).reshape(len(rows), len(problem["fats"]))


def by_nnls(solids, target, limits):
    """Non-negative least squares with heavy rows for the sum and, with a slack each, for the limits."""
    fats, slacks = solids.shape[1], len(limits)
    matrix = np.block(
        [
            [solids, np.zeros((len(target), slacks))],
            [np.full((1, fats), HEAVY), np.zeros((1, slacks))],
            [limits * HEAVY / 100, np.eye(slacks) * HEAVY / 100],
        ]
    )
    right = np.concatenate([target, [HEAVY], np.zeros(slacks)])
    return nnls(matrix, right, maxiter=1000)[0][:fats]


def error_of(solids, target, shares):
    return float(np.sqrt(np.mean((solids @ shares - target) ** 2)))


def by_slsqp(solids, target, limits, start):
    """A general optimiser from a given start; only its error is used."""
    constraints = [{"type": "eq", "fun": lambda x: x.sum() - 1}]
    constraints += [{"type": "ineq", "fun": lambda x, row=row: -row @ x} for row in limits]
    result = minimize(
        lambda x: np.sum(((solids @ x - target) / 100) ** 2),
        start,
        jac=lambda x: 2 * solids.T @ (solids @ x - target) / 1e4,
        method="SLSQP",
        bounds=[(0, 1)] * solids.shape[1],
        constraints=constraints,
        options={"ftol": 1e-14, "maxiter": 1000},
    )
    feasible = abs(result.x.sum() - 1) < 1e-7 and np.all(limits @ result.x < 1e-5)
    return error_of(solids, target, result.x) if feasible else np.inf


def is_possible(limits, fats):
    found = linprog(
        np.zeros(fats),
        A_ub=limits if len(limits) else None,
        b_ub=np.zeros(len(limits)) if len(limits) else None,
        A_eq=np.ones((1, fats)),
        b_eq=[1],
    )
    return found.status == 0


def solve(problem):
    solids = np.array([fat["percent"] for fat in problem["fats"]], dtype=float).T
    target = np.array(problem["target"], dtype=float)
    limits = limits_of(problem)
    if not is_possible(limits, solids.shape[1]):
        return None
    shares = by_nnls(solids, target, limits)
    error = error_of(solids, target, shares)
    fats = solids.shape[1]
    starts = [np.full(fats, 1 / fats), *np.eye(fats)]
    best = min(by_slsqp(solids, target, limits, start) for start in starts)
    return {"percent": [round(100 * x, 4) + 0.0 for x in shares], "error": round(error, 5), "slsqp": best}


def faults(problem):
    found, expected = solve(problem), problem["expected"]
    if found is None or expected is None:
        return [] if found is expected else ["one says impossible, the other not"]
    faults = []
    if abs(found["error"] - expected["error"]) > ERROR_TOLERANCE:
        faults.append(f"error {found['error']} is not {expected['error']}")
    if found["slsqp"] < expected["error"] - ERROR_TOLERANCE:
        faults.append(f"SLSQP finds a better blend: {found['slsqp']}")
    for fat, got, wanted in zip(problem["fats"], found["percent"], expected["percent"], strict=True):
        if abs(got - wanted) > SHARE_TOLERANCE:
            faults.append(f"{fat['name']} {got} % is not {wanted} %")
    return faults


def write(stored):
    """One problem a line, so that a change shows which one changed."""
    lines = ",\n".join(json.dumps(problem) for problem in stored["problems"])
    text = f'{{"note": {json.dumps(stored["note"])},\n"problems": [\n{lines}\n]}}\n'
    FILE.write_text(text, encoding="utf-8")


def main():
    stored = json.loads(FILE.read_text(encoding="utf-8"))
    problems = stored["problems"]
    if "--write" in sys.argv:
        for problem in problems:
            found = solve(problem)
            problem["expected"] = found and {"percent": found["percent"], "error": found["error"]}
        write(stored)
    failed = 0
    for problem in problems:
        found = faults(problem)
        failed += bool(found)
        for fault in found:
            print(f"{problem['name']}: {fault}")
    print(f"{len(problems) - failed} passed, {failed} failed")
    sys.exit(failed > 0 or not problems)


if __name__ == "__main__":
    main()
