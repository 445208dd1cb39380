"""The inference against an independent exact Bayesian-network library, pyAgrum (PyPI), on generated cases.

The Rust example `inference_cases` generates networks and cases and answers them; this script solves the same
cases without it. Small ones by pyAgrum's lazy propagation: noisy-OR nodes, virtual evidence as soft evidence,
the next reading as a node of its own. Those with 400 causes, which a general library cannot solve, by Quickscore
(Heckerman 1989) in 80-digit arithmetic (mpmath).
Usage: pip install pyagrum mpmath; python bayesian_network.py [cases.json]
Closes with `N passed, N failed`, and fails if any check failed.
"""

import itertools
import json
import math
import pathlib
import subprocess
import sys

import mpmath
import pyagrum as gum

ROOT = pathlib.Path(__file__).parent.parent.parent
TOLERANCE = 1e-9


def cases():
    if len(sys.argv) > 1:
        return json.loads(pathlib.Path(sys.argv[1]).read_text())
    command = ["cargo", "run", "--quiet", "--example", "inference_cases"]
    return json.loads(subprocess.run(command, cwd=ROOT, check=True, capture_output=True).stdout)


def network(case):
    """Causes c0, c1, ...; noisy-OR symptoms s0, s1, ...; the reading r with P(r | causes) scaled to add up to 1."""
    net = gum.BayesNet()
    for cause, prior in enumerate(case["priors"]):
        net.add(gum.LabelizedVariable(f"c{cause}", "", 2))
        net.cpt(f"c{cause}").fillWith([1 - prior, prior])
    for symptom, leak in enumerate(case["leaks"]):
        # In a "net" the strength is that of the cause alone; in a "compound" the leak would be counted into it.
        net.addNoisyORNet(gum.LabelizedVariable(f"s{symptom}", "", 2), leak)
    for cause, symptom, strength in case["links"]:
        net.addWeightedArc(f"c{cause}", f"s{symptom}", strength)
    usual, weights = case["reading"]["usual"], case["reading"]["weights"]
    net.add(gum.LabelizedVariable("r", "", len(usual)))
    for cause, _ in weights:
        net.addArc(f"c{cause}", "r")
    for states in itertools.product([0, 1], repeat=len(weights)):
        sums = [sum(w[r] for state, (_, w) in zip(states, weights) if state) for r in range(len(usual))]
        shares = [u * 10**s for u, s in zip(usual, sums)]
        given = {f"c{cause}": state for state, (cause, _) in zip(states, weights)}
        net.cpt("r")[given] = [share / sum(shares) for share in shares]
    return net


def evidence(case):
    """Soft evidence on symptoms (likelihoods of absent, present) and, for the weights, on causes."""
    soft = {f"s{symptom}": [1 - t, t] for symptom, t in case["observations"]}
    log10 = {}
    for cause, weight in case["weights"]:
        log10[cause] = log10.get(cause, 0.0) + weight
    scale = 0.0
    for cause, weight in log10.items():
        # The library wants likelihoods up to 1; what is taken out is put back into log P(findings).
        excess = max(weight, 0.0)
        soft[f"c{cause}"] = [10 ** -excess, 10 ** (weight - excess)]
        scale += excess * math.log(10)
    return soft, scale


def bits(table):
    """Mutual information between the rows and the columns of a joint probability table."""
    rows = [sum(row) for row in table]
    columns = [sum(column) for column in zip(*table)]
    return sum(
        cell * math.log2(cell / (rows[i] * columns[j]))
        for i, row in enumerate(table)
        for j, cell in enumerate(row)
        if cell > 0
    )


def joint(engine, names, asked):
    """P(asked, names) as a table: one row a configuration of `names` (first name = lowest bit), one column a state of `asked`."""
    posterior = engine.jointPosterior({*names, asked})
    states = engine.BN().variableFromName(asked).domainSize()
    configurations = range(1 << len(names))
    given = lambda c, state: {**{name: c >> k & 1 for k, name in enumerate(names)}, asked: state}
    return [[posterior[given(c, state)] for state in range(states)] for c in configurations]


def solve(case):
    """The same answers as the Rust example gives, by the library."""
    engine = gum.LazyPropagation(network(case))
    engine.addAllTargets()
    soft, scale = evidence(case)
    read = [f"c{cause}" for cause, _ in case["reading"]["weights"]]
    looked = f"s{case['look_for']}"
    for targets in ({*read, "r"}, {"c0", "c1", looked}, {"c0", "c1", "c2"}):
        engine.addJointTarget(targets)
    engine.setEvidence(soft)
    engine.makeInference()
    three = joint(engine, ["c0", "c1"], "c2")
    looked_for = joint(engine, ["c0", "c1"], looked)
    return {
        "present": [engine.posterior(f"c{cause}")[1] for cause in range(len(case["priors"]))],
        "log_probability": math.log(engine.evidenceProbability()) + scale,
        "joint_of_first_three": [three[c][state] for state in (0, 1) for c in range(4)],
        "reading_bits": bits(joint(engine, read, "r")),
        "symptom_probability": sum(present for _, present in looked_for),
        "symptom_bits_about_first_two": bits(looked_for),
    }


def quickscore(case):
    """Posteriors by inclusion and exclusion over the subsets of the present symptoms, in 80 digits."""
    mpmath.mp.dps = 80
    one = mpmath.mpf(1)
    present = [symptom for symptom, t in case["observations"] if t == 1]
    absent = {symptom for symptom, t in case["observations"] if t == 0}
    odds = [(one - mpmath.mpf(p), mpmath.mpf(p)) for p in case["priors"]]
    for cause, weight in case["weights"]:
        odds[cause] = (odds[cause][0], odds[cause][1] * mpmath.mpf(10) ** mpmath.mpf(weight))
    misses = {}
    for cause, symptom, strength in case["links"]:
        if symptom in absent:
            odds[cause] = (odds[cause][0], odds[cause][1] * (one - mpmath.mpf(strength)))
        elif symptom in present:
            misses.setdefault(cause, {})[symptom] = one - mpmath.mpf(strength)
    total, masses = mpmath.mpf(0), {cause: mpmath.mpf(0) for cause in misses}
    for bit_set in range(1 << len(present)):
        subset = [symptom for k, symptom in enumerate(present) if bit_set >> k & 1]
        term = mpmath.mpf(-1) ** len(subset)
        for symptom in subset:
            term *= one - mpmath.mpf(case["leaks"][symptom])
        shares = {}
        for cause, links in misses.items():
            with_cause = odds[cause][1]
            for symptom in subset:
                with_cause *= links.get(symptom, one)
            both = odds[cause][0] + with_cause
            shares[cause] = with_cause / both
            term *= both
        total += term
        for cause, share in shares.items():
            masses[cause] += term * share
    linked = lambda cause: masses[cause] / total
    plain = lambda cause: odds[cause][1] / (odds[cause][0] + odds[cause][1])
    return {"present": [float((linked if c in misses else plain)(c)) for c in range(len(odds))]}


def compare(name, ours, theirs):
    """Checks every number of an answer; gives (passed, failed)."""
    flat = lambda value: value if isinstance(value, list) else [value]
    passed = failed = 0
    for key, expected in theirs.items():
        for place, (a, b) in enumerate(zip(flat(ours[key]), flat(expected), strict=True)):
            if abs(a - b) <= TOLERANCE:
                passed += 1
            else:
                failed += 1
                print(f"{name}: {key}[{place}] is {a!r}, expected {b!r}")
    return passed, failed


def main():
    given = cases()
    results = [
        compare(f"{size} case {place}", case["answer"], method(case))
        for size, method in (("small", solve), ("big", quickscore))
        for place, case in enumerate(given[size])
    ]
    passed, failed = (sum(counts) for counts in zip(*results))
    print(f"{passed} passed, {failed} failed")
    sys.exit(failed > 0 or passed == 0)


if __name__ == "__main__":
    main()
