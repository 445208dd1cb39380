//! Flour: moisture basis, blends, Falling Number, absorption, solvent retention.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Input, number, percent, rows, text};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::Values;
use crate::science::Nonsense;
use crate::science::flour::{
    BlendLot, FallingNumberLot, FarinographReading, absorption_at_moisture, blend_falling_number, blend_for_protein,
    blend_value, falling_number, farinograph_absorption, farinograph_sample, gluten_performance_index,
    liquefaction_number, share_of_high, share_of_sprouted_lot, solvent_retention, to_moisture_basis,
};

const MOISTURE: (f64, f64) = (0.0, 30.0);
/// Stirring alone takes 60 s; 900 s is a wrong unit.
const SECONDS: (f64, f64) = (60.0, 900.0);
const PARTS: (f64, f64) = (0.0, 1_000_000.0);
const RETENTION: (f64, f64) = (0.0, 500.0);
/// Parts of a blend are counted in any unit of mass, the same for all.
const MASS_PARTS: &str = "parts by mass, for example kg";
const STANDARD: &str = "the moisture that flour figures are reported at (AACC and ICC practice)";

const LOT: &[Input] = &[
    text("name", "name of the lot"),
    percent("protein", "protein as is"),
    number("moisture", "%", MOISTURE, "moisture"),
    number("parts", "1", PARTS, "parts by mass in which the lots of its group are wanted, for example the stock in kg"),
];
const VALUE_LOT: &[Input] = &[
    number("parts", "1", PARTS, MASS_PARTS),
    number("value", "%", (0.0, 300.0), "protein, ash or absorption, all on one moisture basis"),
];
const FALLING_LOT: &[Input] =
    &[number("parts", "1", PARTS, MASS_PARTS), number("falling_number", "s", SECONDS, "Falling Number of the lot")];

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "flour_moisture_basis",
        title: "Flour figure at another moisture",
        description: "Protein, ash, gluten or starch damage of a flour at another moisture, so that figures can be compared.",
        inputs: &[
            percent("share", "protein, ash, gluten or starch damage as is"),
            number("moisture", "%", (0.0, 99.9), "moisture of the flour"),
            number("wanted_moisture", "%", (0.0, 99.9), "moisture of the wanted basis; 0 is the dry basis")
                .or_number(14.0, STANDARD),
        ],
        figures: &[figure("share", "%", "share at the wanted moisture")],
        example: r#"{"share": 12.0, "moisture": 12.5}"#,
        science: &["flour::to_moisture_basis", "flour::to_standard_moisture"],
        renamed: &[
            ("share_percent", "share"),
            ("moisture_percent", "moisture"),
            ("wanted_moisture_percent", "wanted_moisture"),
        ],
        compute: |values| {
            let [share, moisture, wanted] = ["share", "moisture", "wanted_moisture"].map(|name| values.number(name));
            Ok(Outcome::of("share", to_moisture_basis(share, moisture, wanted)?))
        },
    },
    Calculation {
        name: "flour_pair_share",
        title: "Share of the high flour in a blend of two",
        description: "Share of the higher of two flours that brings a blend to a target of protein, ash or absorption, all \
            on one moisture basis. Not for Falling Number: see `sprouted_lot_share`.",
        inputs: &[
            number("low", "%", (0.0, 300.0), "value of the lower flour"),
            number("high", "%", (0.0, 300.0), "value of the higher flour"),
            number("target", "%", (0.0, 300.0), "wanted value of the blend"),
        ],
        figures: &[figure("share_of_high", "%", "share of the higher flour")],
        example: r#"{"low": 9.5, "high": 13.5, "target": 11}"#,
        science: &["flour::share_of_high"],
        renamed: &[],
        compute: |values| {
            let [low, high, target] = ["low", "high", "target"].map(|name| values.number(name));
            Ok(Outcome::of("share_of_high", share_of_high(low, high, target)?))
        },
    },
    Calculation {
        name: "flour_blend_value",
        title: "Protein, ash or absorption of a flour blend",
        description: "Mean by mass of a property that adds up. Not for Falling Number: see `falling_number_of_blend`.",
        inputs: &[rows("lots", VALUE_LOT, (1, 30), "lots of the blend")],
        figures: &[figure("value", "%", "value of the blend")],
        example: r#"{"lots": [{"parts": 60, "value": 13.2}, {"parts": 40, "value": 10.1}]}"#,
        science: &["flour::blend_value"],
        renamed: &[],
        compute: |values| {
            let lot = |row: &Values| (row.number("parts"), row.number("value"));
            let lots: Vec<(f64, f64)> = values.rows("lots").iter().map(lot).collect();
            Ok(Outcome::of("value", blend_value(&lots, "%")?))
        },
    },
    Calculation {
        name: "flour_blend_for_protein",
        title: "Flour blend for a protein",
        description: "Shares of two or more lots of flour (gluten counts as one) for a wanted protein at 14 % moisture. With \
            more than two lots it is one of many blends: each group, below and above the target, in its given parts.",
        inputs: &[
            rows("lots", LOT, (2, 30), "lots that may go in"),
            percent("target_protein", "wanted protein at 14 % moisture"),
        ],
        figures: &[
            figure("protein", "%", "protein of the blend at 14 % moisture"),
            figure("moisture", "%", "moisture of the blend"),
            figure("share", "%", "share of each lot, by mass as is"),
        ],
        example: r#"{"lots": [{"name": "strong", "protein": 13.5, "moisture": 14, "parts": 1}, {"name": "weak", "protein": 9.5, "moisture": 13, "parts": 1}], "target_protein": 11.5}"#,
        science: &["flour::blend_for_protein"],
        renamed: &[
            ("protein_percent", "protein"),
            ("moisture_percent", "moisture"),
            ("target_protein_percent", "target_protein"),
        ],
        compute: protein_blend,
    },
    Calculation {
        name: "falling_number_of_blend",
        title: "Falling Number of a blend",
        description: "Falling Number of a blend by way of the liquefaction number, lower than the mean of its lots.",
        inputs: &[rows("lots", FALLING_LOT, (1, 30), "lots of the blend")],
        figures: &[figure("falling_number", "s", "Falling Number of the blend")],
        example: r#"{"lots": [{"parts": 80, "falling_number": 350}, {"parts": 20, "falling_number": 90}]}"#,
        science: &["flour::blend_falling_number"],
        renamed: &[("falling_number_s", "falling_number")],
        compute: |values| {
            let lot = |row: &Values| FallingNumberLot {
                parts: row.number("parts"),
                falling_number_s: row.number("falling_number"),
            };
            let lots: Vec<FallingNumberLot> = values.rows("lots").iter().map(lot).collect();
            Ok(Outcome::of("falling_number", blend_falling_number(&lots)?))
        },
    },
    Calculation {
        name: "sprouted_lot_share",
        title: "Share of a low Falling Number lot",
        description: "Share of a lot of low Falling Number (sprouted grain, malt flour) that brings a sound lot to a target.",
        inputs: &[
            number("sprouted", "s", SECONDS, "Falling Number of the sprouted or malted lot"),
            number("sound", "s", SECONDS, "Falling Number of the sound lot"),
            number("target", "s", SECONDS, "wanted Falling Number"),
        ],
        figures: &[figure("share_of_sprouted", "%", "share of the sprouted lot, by mass")],
        example: r#"{"sprouted": 80, "sound": 380, "target": 250}"#,
        science: &["flour::share_of_sprouted_lot"],
        renamed: &[("sprouted_s", "sprouted"), ("sound_s", "sound"), ("target_s", "target")],
        compute: |values| {
            let [sprouted, sound, target] = ["sprouted", "sound", "target"].map(|name| values.number(name));
            Ok(Outcome::of("share_of_sprouted", share_of_sprouted_lot(sprouted, sound, target)?))
        },
    },
    Calculation {
        name: "liquefaction_number",
        title: "Liquefaction number of a Falling Number",
        description: "A measure of amylase that adds up by mass, where the Falling Number does not.",
        inputs: &[number("falling_number", "s", SECONDS, "Falling Number")],
        figures: &[figure("liquefaction_number", "1", "liquefaction number")],
        example: r#"{"falling_number": 250}"#,
        science: &["flour::liquefaction_number"],
        renamed: &[("falling_number_s", "falling_number")],
        compute: |values| Ok(Outcome::of("liquefaction_number", liquefaction_number(values.number("falling_number"))?)),
    },
    Calculation {
        name: "falling_number",
        title: "Falling Number of a liquefaction number",
        description: "Turns a liquefaction number, for example the mean of a blend, back into a Falling Number.",
        inputs: &[number("liquefaction_number", "1", (0.0, 600.0), "liquefaction number")],
        figures: &[figure("falling_number", "s", "Falling Number")],
        example: r#"{"liquefaction_number": 30}"#,
        science: &["flour::falling_number"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("falling_number", falling_number(values.number("liquefaction_number"))?)),
    },
    Calculation {
        name: "farinograph_sample",
        title: "Flour to weigh in for the farinograph",
        description: "Flour for the large bowl that has the dry matter of 300 g at 14 % moisture.",
        inputs: &[number("moisture", "%", MOISTURE, "moisture of the flour")],
        figures: &[figure("sample", "g", "flour to weigh in")],
        example: r#"{"moisture": 13.2}"#,
        science: &["flour::farinograph_sample"],
        renamed: &[("moisture_percent", "moisture")],
        compute: |values| Ok(Outcome::of("sample", farinograph_sample(values.number("moisture"))?)),
    },
    Calculation {
        name: "farinograph_absorption",
        title: "Farinograph absorption",
        description: "Water absorption at 500 FU and 14 % moisture from a titration in the large bowl.",
        inputs: &[
            number("moisture", "%", MOISTURE, "moisture of the flour; the sample is that of `farinograph_sample`"),
            number("water", "mL", (100.0, 300.0), "water added"),
            number("consistency", "{FU}", (200.0, 1000.0), "maximum consistency"),
        ],
        figures: &[figure("absorption", "%", "absorption at 500 FU, on flour of 14 % moisture")],
        example: r#"{"moisture": 13.2, "water": 183, "consistency": 510}"#,
        science: &["flour::farinograph_absorption"],
        renamed: &[("moisture_percent", "moisture"), ("water_ml", "water"), ("consistency_fu", "consistency")],
        compute: |values| {
            let reading = FarinographReading {
                moisture_percent: values.number("moisture"),
                water_ml: values.number("water"),
                consistency_fu: values.number("consistency"),
            };
            Ok(Outcome::of("absorption", farinograph_absorption(&reading)?))
        },
    },
    Calculation {
        name: "absorption_at_moisture",
        title: "Absorption of a drier or moister flour",
        description: "The same dough on the same dry flour: 1 % drier flour takes about 1.9 % more water.",
        inputs: &[
            number("absorption", "%", (0.0, 300.0), "absorption on the flour as it is"),
            number("moisture", "%", MOISTURE, "its moisture"),
            number("wanted_moisture", "%", MOISTURE, "moisture of the other flour").or_number(14.0, STANDARD),
        ],
        figures: &[figure("absorption", "%", "absorption on the other flour")],
        example: r#"{"absorption": 60, "moisture": 14, "wanted_moisture": 12.5}"#,
        science: &["flour::absorption_at_moisture"],
        renamed: &[
            ("absorption_percent", "absorption"),
            ("moisture_percent", "moisture"),
            ("wanted_moisture_percent", "wanted_moisture"),
        ],
        compute: |values| {
            let [absorption, moisture, wanted] =
                ["absorption", "moisture", "wanted_moisture"].map(|name| values.number(name));
            Ok(Outcome::of("absorption", absorption_at_moisture(absorption, moisture, wanted)?))
        },
    },
    Calculation {
        name: "solvent_retention_capacity",
        title: "Solvent retention capacity",
        description: "Solvent retention capacity at 14 % moisture from the drained gel.",
        inputs: &[
            number("gel", "g", (0.0, 1000.0), "drained gel"),
            number("flour", "g", (0.0, 1000.0), "flour weighed in"),
            number("moisture", "%", (0.0, 99.9), "moisture of the flour"),
        ],
        figures: &[figure("retention", "%", "solvent retention capacity")],
        example: r#"{"gel": 9.1, "flour": 5, "moisture": 13}"#,
        science: &["flour::solvent_retention"],
        renamed: &[("gel_g", "gel"), ("flour_g", "flour"), ("moisture_percent", "moisture")],
        compute: |values| {
            let [gel, flour, moisture] = ["gel", "flour", "moisture"].map(|name| values.number(name));
            Ok(Outcome::of("retention", solvent_retention(gel, flour, moisture)?))
        },
    },
    Calculation {
        name: "gluten_performance_index",
        title: "Gluten performance index",
        description: "Lactic acid retention over the sum of sucrose and sodium carbonate retention.",
        inputs: &[
            number("lactic_acid", "%", RETENTION, "solvent retention capacity in lactic acid"),
            number("sucrose", "%", RETENTION, "solvent retention capacity in sucrose"),
            number("sodium_carbonate", "%", RETENTION, "solvent retention capacity in sodium carbonate"),
        ],
        figures: &[figure("index", "1", "gluten performance index")],
        example: r#"{"lactic_acid": 125, "sucrose": 95, "sodium_carbonate": 75}"#,
        science: &["flour::gluten_performance_index"],
        renamed: &[
            ("lactic_acid_percent", "lactic_acid"),
            ("sucrose_percent", "sucrose"),
            ("sodium_carbonate_percent", "sodium_carbonate"),
        ],
        compute: |values| {
            let [lactic, sucrose, carbonate] =
                ["lactic_acid", "sucrose", "sodium_carbonate"].map(|name| values.number(name));
            Ok(Outcome::of("index", gluten_performance_index(lactic, sucrose, carbonate)?))
        },
    },
];

fn protein_blend(values: &Values) -> Result<Outcome, Nonsense> {
    let lot = |row: &Values| BlendLot {
        name: row.text("name"),
        protein_percent: row.number("protein"),
        moisture_percent: row.number("moisture"),
        parts: row.number("parts"),
    };
    let lots: Vec<BlendLot> = values.rows("lots").iter().map(lot).collect();
    let blend = blend_for_protein(&lots, values.number("target_protein"))?;
    let whole = Outcome::of("protein", blend.protein).and("moisture", blend.moisture);
    Ok(blend.shares.into_iter().fold(whole, |outcome, lot| outcome.and_of("share", lot.name, lot.share)))
}
