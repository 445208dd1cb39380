//! Volume, spread, bake loss, starch setting, evaporation.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{number, percent};
use crate::calculations::outcome::{Outcome, figure};
use crate::science::proof_bake::{
    CookieStack, bake_loss, dough_for_baked_mass, evaporation_heat, evaporative_cooling, specific_volume,
    spread_factor, volume_yield, wheat_starch_onset,
};

const MASS: (f64, f64) = (0.0, 1_000_000.0);
const VOLUME: (f64, f64) = (0.0, 1_000_000.0);
const LENGTH: (f64, f64) = (0.0, 2000.0);
const WATER: (f64, f64) = (0.0, 100.0);

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "bake_loss",
        title: "Bake loss",
        description: "Mass that a piece loses in the oven, and in cooling when it is weighed cold; say which.",
        inputs: &[
            number("dough", "g", MASS, "mass of the dough piece"),
            number("baked", "g", MASS, "mass after the bake"),
        ],
        figures: &[figure("bake_loss", "%", "bake loss, of the dough")],
        example: r#"{"dough": 450, "baked": 400}"#,
        science: &["proof_bake::bake_loss"],
        renamed: &[("dough_g", "dough"), ("baked_g", "baked")],
        compute: |values| Ok(Outcome::of("bake_loss", bake_loss(values.number("dough"), values.number("baked"))?)),
    },
    Calculation {
        name: "dough_for_baked_mass",
        title: "Dough to scale for a baked mass",
        description: "Scaling weight for a wanted baked mass. For a declared weight the law of the market sets tolerances.",
        inputs: &[
            number("baked", "g", MASS, "wanted mass after the bake"),
            number("bake_loss", "%", (0.0, 99.9), "bake loss, of the dough"),
        ],
        figures: &[figure("dough", "g", "dough to scale")],
        example: r#"{"baked": 400, "bake_loss": 11}"#,
        science: &["proof_bake::dough_for_baked_mass"],
        renamed: &[("baked_g", "baked"), ("bake_loss_percent", "bake_loss")],
        compute: |values| {
            Ok(Outcome::of("dough", dough_for_baked_mass(values.number("baked"), values.number("bake_loss"))?))
        },
    },
    Calculation {
        name: "specific_volume",
        title: "Specific volume",
        description: "Volume over mass of the cooled product, by seed displacement or scanner.",
        inputs: &[
            number("volume", "mL", VOLUME, "volume of the piece"),
            number("mass", "g", MASS, "its mass at the same time"),
        ],
        figures: &[figure("specific_volume", "mL/g", "specific volume")],
        example: r#"{"volume": 1900, "mass": 450}"#,
        science: &["proof_bake::specific_volume"],
        renamed: &[("volume_ml", "volume"), ("mass_g", "mass")],
        compute: |values| {
            Ok(Outcome::of("specific_volume", specific_volume(values.number("volume"), values.number("mass"))?))
        },
    },
    Calculation {
        name: "volume_yield",
        title: "Volume yield on flour",
        description: "Volume a 100 g of flour, as baking tests of wheat report it.",
        inputs: &[
            number("volume", "mL", VOLUME, "volume of the piece"),
            number("flour", "g", MASS, "flour in it, of all stages"),
        ],
        figures: &[figure("volume_yield", "mL", "volume per 100 g of flour")],
        example: r#"{"volume": 900, "flour": 100}"#,
        science: &["proof_bake::volume_yield"],
        renamed: &[("volume_ml", "volume"), ("flour_g", "flour")],
        compute: |values| {
            Ok(Outcome::of("volume_yield", volume_yield(values.number("volume"), values.number("flour"))?))
        },
    },
    Calculation {
        name: "spread_factor",
        title: "Cookie spread factor",
        description: "Width of six cookies edge to edge over the height of six stacked. Often printed ten times as large.",
        inputs: &[
            number("width", "mm", LENGTH, "width of six cookies edge to edge, mean of re-arrangements"),
            number("thickness", "mm", LENGTH, "height of six cookies stacked, mean of re-stackings"),
            number(
                "pressure_correction",
                "1",
                (0.5, 1.5),
                "correction for barometric pressure, from the table of the method",
            )
            .or_number(1.0, "leaves the correction out"),
        ],
        figures: &[figure("spread_factor", "1", "spread factor")],
        example: r#"{"width": 480, "thickness": 56}"#,
        science: &["proof_bake::spread_factor"],
        renamed: &[("width_mm", "width"), ("thickness_mm", "thickness")],
        compute: |values| {
            let stack = CookieStack {
                width_mm: values.number("width"),
                thickness_mm: values.number("thickness"),
                pressure_correction: values.number("pressure_correction"),
            };
            Ok(Outcome::of("spread_factor", spread_factor(&stack)?))
        },
    },
    Calculation {
        name: "starch_gelatinisation_onset",
        title: "Gelatinisation onset of wheat starch in syrup",
        description: "Sugar lifts the temperature at which starch gelatinises: why a sweet batter sets late. Low \
            confidence; never a limit to release on.",
        inputs: &[percent("sucrose_in_liquid", "sucrose in the liquid, of water and sucrose together")],
        figures: &[
            figure("onset_low", "Cel", "lower end of published onsets"),
            figure("onset_high", "Cel", "upper end of published onsets"),
        ],
        example: r#"{"sucrose_in_liquid": 50}"#,
        science: &["proof_bake::wheat_starch_onset"],
        renamed: &[("sucrose_in_liquid_percent", "sucrose_in_liquid")],
        compute: |values| {
            let onset = wheat_starch_onset(values.number("sucrose_in_liquid"))?;
            Ok(Outcome::of("onset_low", onset.low).and("onset_high", onset.high))
        },
    },
    Calculation {
        name: "evaporation_heat",
        title: "Heat that evaporating water takes",
        description: "Heat for a mass of water that leaves dough or filling, without the heat that warms it.",
        inputs: &[
            number("water", "kg", MASS, "water that evaporates"),
            number("temperature", "Cel", WATER, "temperature at which it does"),
        ],
        figures: &[figure("heat", "kJ", "heat of evaporation")],
        example: r#"{"water": 5, "temperature": 100}"#,
        science: &["proof_bake::evaporation_heat"],
        renamed: &[("water_kg", "water"), ("celsius", "temperature")],
        compute: |values| {
            Ok(Outcome::of("heat", evaporation_heat(values.number("water"), values.number("temperature"))?))
        },
    },
    Calculation {
        name: "evaporative_cooling",
        title: "Cooling by evaporation",
        description: "By how much a product cools itself when it loses water, under vacuum or in moving air.",
        inputs: &[
            percent("loss", "mass that it loses as water"),
            number("temperature", "Cel", WATER, "temperature at which it does"),
            number(
                "specific_heat",
                "kJ/(kg.K)",
                (0.5, 4.5),
                "specific heat of the product; bread dough of 44 % water has 2.76",
            ),
        ],
        figures: &[figure("cooling", "K", "fall of the temperature")],
        example: r#"{"loss": 3, "temperature": 60, "specific_heat": 2.76}"#,
        science: &["proof_bake::evaporative_cooling"],
        renamed: &[
            ("loss_percent", "loss"),
            ("celsius", "temperature"),
            ("specific_heat_kj_per_kg_k", "specific_heat"),
        ],
        compute: |values| {
            let [loss, temperature, heat] = ["loss", "temperature", "specific_heat"].map(|name| values.number(name));
            Ok(Outcome::of("cooling", evaporative_cooling(loss, temperature, heat)?))
        },
    },
];
