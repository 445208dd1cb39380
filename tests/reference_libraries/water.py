"""Recomputes tests/reference/water_grid.csv with general-purpose libraries and fails when a stored value has drifted.

The Rust tests check the same file against this project's own equations, so agreement of both is a live comparison.
Needs `pip install pyEQL==1.7.0 iapws==1.5.5 CoolProp==8.0.0 thermo==0.6.1`; run from anywhere:
`python tests/reference_libraries/water.py`.
"""

import csv
import logging
import os
import pathlib
import sys
import warnings

warnings.filterwarnings("ignore")
logging.disable(logging.WARNING)
# pyEQL keeps the unit definitions that pint has read, with the places of their files, in the user's cache: a later run
# from another folder would look for them where they no longer are. A cache of this environment goes with its files.
os.environ["XDG_CACHE_HOME"] = str(pathlib.Path(sys.prefix) / "cache")

import CoolProp.CoolProp as coolprop  # noqa: E402
import pyEQL  # noqa: E402
from iapws import IAPWS97  # noqa: E402
from thermo.unifac import UNIFAC  # noqa: E402

GRID = pathlib.Path(__file__).parent.parent / "reference" / "water_grid.csv"
KELVIN = 273.15
SALT, ETHANOL, WATER = 58.443, 46.069, 18.01528  # g/mol


def salt_water_activity(percent):
    """Pitzer model at 25 C; `native` is pyEQL's own engine."""
    molality = 1000 * percent / (100 - percent) / SALT
    solution = pyEQL.Solution({"Na+": f"{molality} mol/kg", "Cl-": f"{molality} mol/kg"}, engine="native")
    return float(solution.get_water_activity().magnitude)


def ethanol_water_activity(percent):
    """Original UNIFAC at 25 C; group 16 is water, 1, 2 and 14 are CH3, CH2 and OH."""
    ethanol, water = percent / ETHANOL, (100 - percent) / WATER
    share = water / (water + ethanol)
    groups = [{16: 1}, {1: 1, 2: 1, 14: 1}]
    mixture = UNIFAC.from_subgroups(T=298.15, xs=[share, 1 - share], chemgroups=groups)
    return share * mixture.gammas()[0]


RECOMPUTE = {
    "salt_water_activity": salt_water_activity,
    "ethanol_water_activity": ethanol_water_activity,
    "water_boiling_point": lambda pascal: IAPWS97(P=pascal / 1e6, x=0).T - KELVIN,
    "saturation_pressure": lambda celsius: IAPWS97(T=celsius + KELVIN, x=0).P * 1e6,
    "salt_freezing_point": lambda percent: coolprop.PropsSI("T_freeze", "T", 290, "P", 101325, f"INCOMP::MNA[{percent / 100}]") - KELVIN,
    "glycerol_freezing_point": lambda percent: coolprop.PropsSI("T_freeze", "T", 290, "P", 101325, f"INCOMP::MGL[{percent / 100}]")
    - KELVIN,
}


def main():
    passed, failed = 0, 0
    with open(GRID, newline="", encoding="utf-8") as file:
        for row in csv.DictReader(file):
            stored, live = float(row["value"]), RECOMPUTE[row["quantity"]](float(row["input"]))
            if abs(stored - live) <= max(2e-6, 1e-5 * abs(stored)):
                passed += 1
            else:
                failed += 1
                print(f"{row['id']}: stored {stored}, {row['library']} gives {live}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
