//! Boiling points of water and syrup, and when to stop cooking.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Input, difference, number};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::Values;
use crate::science::boiling::{
    CAUTION, Place, boiling_point_from_water_activity, boiling_point_rise, cook_end_point, solids_at_rise,
    soluble_solids_at, water_boiling_point,
};

const ALTITUDE: Input =
    number("altitude", "m", (-500.0, 5000.0), "height of the kettle above the sea; not used when a pressure is given")
        .or_number(0.0, "sea level, in standard weather (ASHRAE Fundamentals 2017, ch. 1, eq. 3)");
const PRESSURE: Input = number(
    "pressure",
    "Pa",
    (612.0, 22_064_000.0),
    "pressure over the liquid: a barometer reading, or a vacuum kettle",
)
.optional();
const SOLIDS: Input = number("soluble_solids", "%", (0.0, 95.0), "soluble solids, as sucrose, by mass");

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "water_boiling_point",
        title: "Boiling point of water",
        description: "Boiling point of pure water at a pressure.",
        inputs: &[number("pressure", "Pa", (612.0, 22_064_000.0), "pressure over the water")],
        figures: &[figure("boiling_point", "Cel", "boiling point")],
        example: r#"{"pressure": {"value": 845, "unit": "mbar"}}"#,
        science: &["boiling::water_boiling_point"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("boiling_point", water_boiling_point(values.number("pressure"))?)),
    },
    Calculation {
        name: "boiling_point_rise",
        title: "Boiling point rise of a syrup",
        description: "How much hotter than water a syrup or jam boils at about sea level.",
        inputs: &[SOLIDS],
        figures: &[figure("rise", "K", "rise over the boiling point of water")],
        example: r#"{"soluble_solids": 68}"#,
        science: &["boiling::boiling_point_rise"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("rise", boiling_point_rise(values.number("soluble_solids"))?)),
    },
    Calculation {
        name: "solids_from_boiling_point_rise",
        title: "Soluble solids from the boiling point rise",
        description: "Soluble solids of a syrup that boils so much hotter than water in the same place.",
        inputs: &[difference("rise", "K", (0.0, 100.0), "rise over the boiling point of water")],
        figures: &[figure("soluble_solids", "%", "soluble solids, as sucrose")],
        example: r#"{"rise": 4.5}"#,
        science: &["boiling::solids_at_rise"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("soluble_solids", solids_at_rise(values.number("rise"))?)),
    },
    Calculation {
        name: "cook_end_point",
        title: "Temperature at which to stop cooking",
        description: "Thermometer reading at which a syrup or jam has the wanted soluble solids, where the kettle stands. \
            Hot sugar burns deeply: read the remarks.",
        inputs: &[SOLIDS, ALTITUDE, PRESSURE],
        figures: &[
            figure("end_point", "Cel", "thermometer reading at the end point"),
            figure("rise", "K", "rise over the boiling point of water"),
            figure("water_boiling_point", "Cel", "boiling point of water there"),
        ],
        example: r#"{"soluble_solids": 65, "altitude": 500}"#,
        science: &["boiling::cook_end_point"],
        renamed: &[],
        compute: |values| {
            let point = cook_end_point(values.number("soluble_solids"), place(values))?;
            Ok(Outcome::of("end_point", point.end_point)
                .and("rise", point.rise)
                .and("water_boiling_point", point.water)
                .remark(point.caution))
        },
    },
    Calculation {
        name: "soluble_solids_from_boiling_point",
        title: "Soluble solids of a boiling syrup",
        description: "How far a batch has come: soluble solids of a syrup by the temperature at which it boils.",
        inputs: &[
            number("boiling_temperature", "Cel", (-20.0, 400.0), "temperature of the boiling syrup"),
            ALTITUDE,
            PRESSURE,
        ],
        figures: &[figure("soluble_solids", "%", "soluble solids, as sucrose")],
        example: r#"{"boiling_temperature": 104.5}"#,
        science: &["boiling::soluble_solids_at"],
        renamed: &[],
        compute: |values| {
            let solids = soluble_solids_at(values.number("boiling_temperature"), place(values))?;
            Ok(Outcome::of("soluble_solids", solids).remark(CAUTION))
        },
    },
    Calculation {
        name: "boiling_point_from_water_activity",
        title: "Boiling point from water activity",
        description: "Boiling point of a solution that no table lists, from its water activity.",
        inputs: &[
            number("water_activity", "1", (0.2, 1.0), "water activity at 25 °C"),
            number("pressure", "Pa", (20_000.0, 110_000.0), "pressure over the liquid")
                .or_number(101_325.0, "standard atmosphere at sea level, 101 325 Pa (definition)"),
        ],
        figures: &[figure("boiling_point", "Cel", "boiling point")],
        example: r#"{"water_activity": 0.9}"#,
        science: &["boiling::boiling_point_from_water_activity"],
        renamed: &[],
        compute: |values| {
            let (activity, pressure) = (values.number("water_activity"), values.number("pressure"));
            Ok(Outcome::of("boiling_point", boiling_point_from_water_activity(activity, pressure)?))
        },
    },
];

fn place(values: &Values) -> Place {
    let altitude = Place::AltitudeMetres(values.number("altitude"));
    values.optional("pressure").map_or(altitude, Place::PressurePascal)
}
