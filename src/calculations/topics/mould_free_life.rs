//! Days until mould shows.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Input, number};
use crate::calculations::outcome::{Outcome, figure};
use crate::science::mould_free_life::{CAUTION, highest_erh_for, mould_free_life};

const STORAGE: Input = number("storage_temperature", "Cel", (0.0, 45.0), "storage temperature");

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "mould_free_life",
        title: "Days until mould is seen on a cake",
        description: "Estimate for cakes without preservative at a constant humidity and temperature. It says nothing of \
            whether a product is safe, and sets no shelf life.",
        inputs: &[
            number(
                "equilibrium_relative_humidity",
                "%",
                (65.0, 95.0),
                "equilibrium relative humidity, 100 times the water activity",
            ),
            STORAGE,
        ],
        figures: &[figure("mould_free_life", "d", "days before mould is seen")],
        example: r#"{"equilibrium_relative_humidity": 82, "storage_temperature": 21}"#,
        science: &["mould_free_life::mould_free_life"],
        renamed: &[("erh", "equilibrium_relative_humidity")],
        compute: |values| {
            let erh = values.number("equilibrium_relative_humidity");
            let life = mould_free_life(erh, values.number("storage_temperature"))?;
            Ok(Outcome::of("mould_free_life", life.days).remark(life.caution))
        },
    },
    Calculation {
        name: "humidity_for_mould_free_life",
        title: "Equilibrium humidity for a mould-free life",
        description: "Highest equilibrium relative humidity at which so many days without visible mould are estimated.",
        inputs: &[number("wanted_life", "d", (1.0, 365.0), "wanted days without visible mould"), STORAGE],
        figures: &[figure("equilibrium_relative_humidity", "%", "highest equilibrium relative humidity")],
        example: r#"{"wanted_life": 21, "storage_temperature": 21}"#,
        science: &["mould_free_life::highest_erh_for"],
        renamed: &[("wanted_days", "wanted_life")],
        compute: |values| {
            let erh = highest_erh_for(values.number("wanted_life"), values.number("storage_temperature"))?;
            Ok(Outcome::of("equilibrium_relative_humidity", erh).remark(CAUTION))
        },
    },
];
