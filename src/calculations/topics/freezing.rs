//! Freezing point, and how much of the water is ice.

use super::water_activity::{COMPOSITION, IN_COMPOSITION, composition_of};
use crate::calculations::calculation::Calculation;
use crate::calculations::input::number;
use crate::calculations::outcome::{Outcome, figure};
use crate::science::freezing::{freezing_point, freezing_point_of, ice_fraction, ice_water_activity};

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "freezing_point",
        title: "Freezing point from water activity",
        description: "Initial freezing point of a dough, filling or syrup whose water activity is known.",
        inputs: &[number("water_activity", "1", (0.65, 1.0), "water activity at room temperature")],
        figures: &[figure("freezing_point", "Cel", "temperature at which ice begins to form")],
        example: r#"{"water_activity": 0.96}"#,
        science: &["freezing::freezing_point"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("freezing_point", freezing_point(values.number("water_activity"))?)),
    },
    Calculation {
        name: "freezing_point_of_composition",
        title: "Freezing point of a composition",
        description: "Initial freezing point by the estimated water activity of a composition.",
        inputs: &[COMPOSITION],
        figures: &[figure("freezing_point", "Cel", "temperature at which ice begins to form")],
        example: r#"{"composition": {"water": 40, "sucrose": 5, "salt": 1, "starch": 40, "protein": 8, "fat": 4}}"#,
        science: &["freezing::freezing_point_of"],
        renamed: IN_COMPOSITION,
        compute: |values| Ok(Outcome::of("freezing_point", freezing_point_of(&composition_of(values))?)),
    },
    Calculation {
        name: "ice_fraction",
        title: "Ice in a product at a temperature",
        description: "How much of the water is ice once the product has come to rest at a temperature.",
        inputs: &[COMPOSITION, number("temperature", "Cel", (-40.0, 20.0), "temperature of the product")],
        figures: &[
            figure("frozen_share_of_water", "1", "share of the water that is ice"),
            figure("ice", "%", "ice in the product"),
            figure("freezing_point", "Cel", "temperature at which ice begins to form"),
        ],
        example: r#"{"composition": {"water": 40, "sucrose": 5, "salt": 1, "starch": 40, "protein": 8, "fat": 4}, "temperature": -18}"#,
        science: &["freezing::ice_fraction"],
        renamed: IN_COMPOSITION,
        compute: |values| {
            let ice = ice_fraction(&composition_of(values), values.number("temperature"))?;
            Ok(Outcome::of("frozen_share_of_water", ice.frozen_share_of_water)
                .and("ice", ice.ice)
                .and("freezing_point", ice.freezing_point))
        },
    },
    Calculation {
        name: "water_activity_with_ice",
        title: "Water activity beside ice",
        description: "Water activity of anything that holds ice, whatever else is in it.",
        inputs: &[number("temperature", "Cel", (-40.0, 0.0), "temperature")],
        figures: &[figure("water_activity", "1", "water activity")],
        example: r#"{"temperature": -18}"#,
        science: &["freezing::ice_water_activity"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("water_activity", ice_water_activity(values.number("temperature"))?)),
    },
];
