"""Recomputes the stored library values of chemistry and water with the libraries themselves.

Needs `pip install molmass==2026.1.8 iapws==1.5.5`. Run from anywhere: `python3 tests/reference_libraries/chemistry.py`.
Prints one line for each value that no longer comes out, then `N passed, N failed`; exits with 1 when one failed.
"""

import csv
import sys
from pathlib import Path

from iapws import IAPWS95
from iapws._iapws import _Ice
from molmass import Formula

REFERENCE = Path(__file__).resolve().parent.parent / "reference"
GAS_CONSTANT = 8.314462618  # J/(mol K), CODATA 2018
ATMOSPHERE = 101325  # Pa
CARBONATES = {"sodium": "NaHCO3", "potassium": "KHCO3", "ammonium": "NH4HCO3"}
GASES = {"carbon dioxide": "CO2", "ammonia": "NH3", "water": "H2O"}
# Moles of carbon dioxide, ammonia and water from one mole of carbonate.
MOLES = {
    ("acid", "sodium"): (1, 0, 1),
    ("acid", "potassium"): (1, 0, 1),
    ("heat", "sodium"): (0.5, 0, 0.5),
    ("heat", "ammonium"): (1, 1, 1),
}


def rows(name):
    with open(REFERENCE / f"{name}.csv", encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def inputs(row):
    return {key: float(value) for key, value in (part.split("=") for part in row["inputs"].split(";") if part)}


def mass(formula):
    return Formula(formula).mass


def gas_yield(release, carbonate, gas):
    moles = dict(zip(GASES, MOLES[release, carbonate]))[gas]
    return 100 * moles * mass(GASES[gas]) / mass(CARBONATES[carbonate])


def gas_volume(release, carbonate, given):
    carbon_dioxide, ammonia, water = MOLES[release, carbonate]
    gas = carbon_dioxide + ammonia + (water if "steam" in given else 0)
    moles = given["g"] / mass(CARBONATES[carbonate]) * gas
    return 1e6 * moles * GAS_CONSTANT * (given["celsius"] + 273.15) / ATMOSPHERE


def latent_heat_of_evaporation(celsius):
    kelvin = max(celsius + 273.15, 273.16)
    return IAPWS95(T=kelvin, x=1).h - IAPWS95(T=kelvin, x=0).h


def latent_heat_of_melting():
    return IAPWS95(T=273.16, x=0).h - _Ice(273.16, 0.000611657)["h"]


def specific_heat_of_water():
    return IAPWS95(T=293.15, P=0.101325).cp


def leavening(row):
    share = mass("CO2") / mass("NaHCO3")
    given = inputs(row)
    match row["calculation"].split(":"):
        case ["yield", release, carbonate, gas]:
            return gas_yield(release, carbonate, gas)
        case ["volume", release, carbonate]:
            return gas_volume(release, carbonate, given)
        case ["carbon dioxide of powder"]:
            return given["soda_percent"] * share
        case ["soda for carbon dioxide"]:
            return given["percent"] / share
        case ["acid for soda"]:
            return 100 * given["soda"] / given["value"]


def yeast(row):
    match row["calculation"]:
        case "carbon dioxide:hexose":
            return inputs(row)["g"] * 2 * mass("CO2") / mass("C6H12O6")
        case "carbon dioxide:disaccharide":
            return inputs(row)["g"] * 4 * mass("CO2") / mass("C12H22O11")


def water(row):
    match row["calculation"]:
        case "melting heat over specific heat of water":
            return latent_heat_of_melting() / specific_heat_of_water()
        case "specific heat of water":
            return specific_heat_of_water()
        case "specific heat of ice":
            return _Ice(273.15, 0.101325)["cp"]
        case "latent heat":
            return latent_heat_of_evaporation(inputs(row)["celsius"])


def stored_values():
    """Yields what it is, what is stored, what the library says, and how far they may be apart."""
    for row in rows("molar_masses"):
        yield row["substance"], float(row["molar_mass"]), mass(row["formula"]), 0.001
        if row["equivalents"]:
            value = 100 * float(row["equivalents"]) * mass("NaHCO3") / mass(row["formula"])
            yield f"{row['substance']} neutralising value", float(row["neutralising_value"]), value, float(row["tolerance"])
    for name, compute in (("leavening", leavening), ("yeast", yeast), ("dough_temperature", water), ("proof_bake", water)):
        for row in rows(name):
            value = compute(row) if row["provenance"] == "library" else None
            if value is not None:
                # Stored values are rounded to their last digit; the tolerance of the row is the method's, not theirs.
                stored = row["published"]
                digits = len(stored.partition(".")[2])
                yield row["id"], float(stored), value, 0.51 * 10**-digits


def main():
    passed = failed = 0
    for name, stored, computed, tolerance in stored_values():
        if abs(stored - computed) <= tolerance:
            passed += 1
        else:
            failed += 1
            print(f"{name}: stored {stored}, computed {computed}")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
