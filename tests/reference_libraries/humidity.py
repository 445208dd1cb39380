"""Recomputes tests/reference/humidity_grid.csv with general-purpose libraries and fails when a stored value has drifted.

The Rust tests check the same file against this project's own equations, so agreement of both is a live comparison.
Needs `pip install PsychroLib==2.5.0 CoolProp==8.0.0`; run from anywhere: `python tests/reference_libraries/humidity.py`.
PsychroLib has the ASHRAE perfect-gas relations; CoolProp's humid air (real gas, other basis) is an independent check.
"""

import csv
import pathlib
import sys

import CoolProp.CoolProp as coolprop
import psychrolib

psychrolib.SetUnitSystem(psychrolib.SI)
GRID = pathlib.Path(__file__).parent.parent / "reference" / "humidity_grid.csv"
KELVIN = 273.15


def number(row, name):
    return float(row[name]) if row[name] else None


def recompute(row):
    """Value of one row, in its unit, by the library that the row names."""
    dry, wet = number(row, "dry_bulb_celsius"), number(row, "wet_bulb_celsius")
    humidity, pressure = number(row, "relative_humidity_percent"), number(row, "pressure_pascal")
    by_psychrolib = {
        "relative_humidity": lambda: 100 * psychrolib.GetRelHumFromTWetBulb(dry, wet, pressure),
        "dew_point": lambda: psychrolib.GetTDewPointFromTWetBulb(dry, wet, pressure),
        "wet_bulb": lambda: psychrolib.GetTWetBulbFromRelHum(dry, humidity / 100, pressure),
        "saturation_pressure": lambda: psychrolib.GetSatVapPres(dry),
        "standard_pressure": lambda: psychrolib.GetStandardAtmPressure(number(row, "altitude_metres")),
    }
    by_coolprop = {
        "relative_humidity": lambda: 100
        * coolprop.HAPropsSI("R", "T", dry + KELVIN, "B", wet + KELVIN, "P", pressure),
        "dew_point": lambda: coolprop.HAPropsSI("D", "T", dry + KELVIN, "B", wet + KELVIN, "P", pressure) - KELVIN,
    }
    return {"PsychroLib": by_psychrolib, "CoolProp": by_coolprop}[row["library"]][row["quantity"]]()


def main():
    passed, failed = 0, 0
    with open(GRID, newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            stored, live = float(row["value"]), recompute(row)
            # Iterative solvers of the libraries stop at about 0.001 K.
            if abs(stored - live) <= max(2e-3, 1e-6 * abs(stored)):
                passed += 1
            else:
                failed += 1
                print(f"{row['id']}: stored {stored}, {row['library']} gives {live}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
