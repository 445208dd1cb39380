"""Recomputes the stored humidities of proofer air with PsychroLib (ASHRAE).

Needs `pip install PsychroLib==2.5.0`. Prints `N passed, N failed`; exits with 1 when one failed.
"""

import csv
import sys
from pathlib import Path

import psychrolib

REFERENCE = Path(__file__).resolve().parent.parent / "reference"
ATMOSPHERE = 101325  # Pa


def compute(row):
    given = {key: float(value) for key, value in (part.split("=") for part in row["inputs"].split(";") if part)}
    match row["calculation"]:
        case "relative humidity":
            return 100 * psychrolib.GetRelHumFromTWetBulb(given["dry"], given["wet"], ATMOSPHERE)
        case "dew point from wet bulb":
            return psychrolib.GetTDewPointFromTWetBulb(given["dry"], given["wet"], ATMOSPHERE)
        case "dew point":
            return psychrolib.GetTDewPointFromRelHum(given["dry"], given["rh"] / 100)
        case "wet bulb":
            return psychrolib.GetTWetBulbFromRelHum(given["dry"], given["rh"] / 100, ATMOSPHERE)


def main():
    psychrolib.SetUnitSystem(psychrolib.SI)
    passed = failed = 0
    with open(REFERENCE / "proof_bake.csv", encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            value = compute(row) if row["provenance"] == "library" else None
            if value is None:
                continue
            if abs(value - float(row["published"])) <= 0.051:
                passed += 1
            else:
                failed += 1
                print(f"{row['id']}: stored {row['published']}, computed {value}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
