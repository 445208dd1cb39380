"""Unit conversions of tests/reference/units.csv by an independent library, pint (PyPI).

The Rust test reads the same file, so both agree with the published values and thereby with each other.
Usage: pip install pint; python units.py
Closes with `N passed, N failed`, and fails if any check failed.
"""

import csv
import pathlib
import sys

import pint

CONVERSIONS = pathlib.Path(__file__).parent.parent / "reference" / "units.csv"

# UCUM code to pint expression, written out one by one: a translation by rule would share the rule's errors.
PINT = {
    "%": "percent",
    "/g": "1/gram",
    "/kg": "1/kilogram",
    "/min": "1/minute",
    "/mm": "1/millimeter",
    "/s": "1/second",
    "1": "dimensionless",
    "Cel": "degree_Celsius",
    "Hz": "hertz",
    "J": "joule",
    "J/(kg.K)": "joule/(kilogram*kelvin)",
    "J/g": "joule/gram",
    "J/kg": "joule/kilogram",
    "J/s": "joule/second",
    "K": "kelvin",
    "K/min": "kelvin/minute",
    "K/s": "kelvin/second",
    "L": "liter",
    "L/h": "liter/hour",
    "L/kg": "liter/kilogram",
    "L/min": "liter/minute",
    "L/s": "liter/second",
    "MJ": "megajoule",
    "N": "newton",
    "N/m2": "newton/meter**2",
    "Pa": "pascal",
    "W": "watt",
    "W/(m2.K)": "watt/(meter**2*kelvin)",
    "W/m2": "watt/meter**2",
    "W.h/kg": "watt*hour/kilogram",
    "[Btu_IT]": "international_british_thermal_unit",
    "[Btu_IT]/(h.[ft_i]2)": "international_british_thermal_unit/(hour*foot**2)",
    "[Btu_IT]/(h.[ft_i]2.[degR])": "international_british_thermal_unit/(hour*foot**2*degree_Rankine)",
    "[Btu_IT]/([lb_av].[degR])": "international_british_thermal_unit/(pound*degree_Rankine)",
    "[Btu_IT]/[lb_av]": "international_british_thermal_unit/pound",
    "[Btu_IT]/h": "international_british_thermal_unit/hour",
    "[Btu_th]": "thermochemical_british_thermal_unit",
    "[HP]": "horsepower",
    "[cft_i]": "foot**3",
    "[cft_i]/min": "foot**3/minute",
    "[cin_i]": "inch**3",
    "[cup_us]": "cup",
    "[degF]": "degree_Fahrenheit",
    "[degR]": "degree_Rankine",
    "[foz_us]": "fluid_ounce",
    "[ft_i]": "foot",
    "[ft_i]/min": "foot/minute",
    "[ft_i]2": "foot**2",
    "[gal_us]": "gallon",
    "[gal_us]/min": "gallon/minute",
    "[gr]": "grain",
    "[in_i'H2O]": "inch_H2O",
    "[in_i]": "inch",
    "[in_i]3": "inch**3",
    "[lb_av]": "pound",
    "[lb_av]/[ft_i]3": "pound/foot**3",
    "[lbf_av]": "force_pound",
    "[mesh_i]": "1/inch",
    "[mi_i]/h": "mile/hour",
    "[oz_av]": "ounce",
    "[ppm]": "ppm",
    "[ppth]": "permille",
    "[psi]": "pound_force_per_square_inch",
    "[pt_us]": "pint",
    "[qt_us]": "quart",
    "[sin_i]": "inch**2",
    "[tbs_us]": "tablespoon",
    "[tsp_us]": "teaspoon",
    "[yd_i]": "yard",
    "atm": "standard_atmosphere",
    "bar": "bar",
    "cP": "centipoise",
    "cal": "calorie",
    "cal_IT": "international_calorie",
    "cal_th": "thermochemical_calorie",
    "cm": "centimeter",
    "cm2": "centimeter**2",
    "cm3": "centimeter**3",
    "cm3/g": "centimeter**3/gram",
    "d": "day",
    "deg": "degree",
    "g": "gram",
    "g/(100.g)": "gram/hectogram",
    "g/L": "gram/liter",
    "g/cm3": "gram/centimeter**3",
    "g/g": "gram/gram",
    "g/m2": "gram/meter**2",
    "h": "hour",
    "kJ": "kilojoule",
    "kJ/kg": "kilojoule/kilogram",
    "kPa": "kilopascal",
    "kW": "kilowatt",
    "kW.h": "kilowatt*hour",
    "kW.h/kg": "kilowatt*hour/kilogram",
    "kcal": "kilocalorie",
    "kg": "kilogram",
    "kg/m3": "kilogram/meter**3",
    "kgf": "kilogram_force",
    "m": "meter",
    "m/min": "meter/minute",
    "m/s": "meter/second",
    "m2": "meter**2",
    "m3": "meter**3",
    "mL": "milliliter",
    "mL/(100.g)": "milliliter/hectogram",
    "mL/g": "milliliter/gram",
    "mL/kg": "milliliter/kilogram",
    "mN": "millinewton",
    "mPa.s": "millipascal*second",
    "mbar": "millibar",
    "mg": "milligram",
    "mg/cm2": "milligram/centimeter**2",
    "mg/kg": "milligram/kilogram",
    "min": "minute",
    "mm": "millimeter",
    "mm[H2O]": "millimeter_H2O",
    "mmol/kg": "millimole/kilogram",
    "mmol/mL": "millimole/milliliter",
    "mol/L": "mole/liter",
    "rad": "radian",
    "s": "second",
    "t": "metric_ton",
    "ug": "microgram",
    "um": "micrometer",
    "umol/g": "micromole/gram",
    "wk": "week",
    # pint's revolution is 2 pi rad; a count of turns is a plain number.
    "{rev}/min": "1/minute",
}

registry = pint.UnitRegistry()


def converted(rule, value, source, target):
    """The value in the target unit as pint computes it."""
    source, target = PINT[source], PINT[target]
    if rule == "difference":
        source, target = (unit.replace("degree_", "delta_degree_") for unit in (source, target))
    return registry.Quantity(value, registry.parse_units(source)).to(registry.parse_units(target)).magnitude


def main():
    passed = failed = 0
    with CONVERSIONS.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            value, expected, tolerance = (float(row[name]) for name in ("value", "expected", "tolerance"))
            found = converted(row["rule"], value, row["from"], row["to"])
            # pint works in plain binary arithmetic: temperatures keep noise of 1e-13 of about 300 kelvins.
            slack = 1e-10 if "deg" in PINT[row["from"]] else 0.0
            if abs(found - expected) <= tolerance * abs(expected) + slack:
                passed += 1
            else:
                failed += 1
                print(f"{row['value']} {row['from']} is {found!r} {row['to']}, not {expected!r} ({row['source']})")
    print(f"{passed} passed, {failed} failed")
    return 1 if failed or not passed else 0


if __name__ == "__main__":
    sys.exit(main())
