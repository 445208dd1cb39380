//! The air of a proofer, cooler or store.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Input, number};
use crate::calculations::outcome::{Outcome, figure};
use crate::science::humidity::{
    BulbReading, air_condition, dew_point, saturation_vapour_pressure, standard_pressure, wet_bulb_for,
};

const AIR: (f64, f64) = (-40.0, 100.0);
const PRESSURE: Input = number("pressure", "Pa", (50_000.0, 110_000.0), "air pressure")
    .or_number(101_325.0, "standard atmosphere at sea level, 101 325 Pa (definition)");

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "relative_humidity",
        title: "Relative humidity from dry and wet bulb",
        description: "Humidity and dew point of the air of a proofer or cooler from two thermometers, one with a clean, wet, \
            ventilated wick.",
        inputs: &[
            number("dry_bulb", "Cel", AIR, "air temperature"),
            number("wet_bulb", "Cel", AIR, "temperature of the wetted thermometer"),
            PRESSURE,
        ],
        figures: &[
            figure("relative_humidity", "%", "relative humidity"),
            figure("dew_point", "Cel", "dew point"),
            figure("humidity_ratio", "1", "kg of vapour a kg of dry air"),
        ],
        example: r#"{"dry_bulb": 38, "wet_bulb": 35}"#,
        science: &["humidity::air_condition"],
        renamed: &[],
        compute: |values| {
            let air = air_condition(BulbReading {
                dry_bulb_celsius: values.number("dry_bulb"),
                wet_bulb_celsius: values.number("wet_bulb"),
                pressure_pascal: values.number("pressure"),
            })?;
            Ok(Outcome::of("relative_humidity", air.relative_humidity)
                .and("dew_point", air.dew_point)
                .and("humidity_ratio", air.humidity_ratio))
        },
    },
    Calculation {
        name: "wet_bulb_for_humidity",
        title: "Wet bulb to set for a relative humidity",
        description: "Wet-bulb temperature that a proofer with two thermometers has to be set to.",
        inputs: &[
            number("dry_bulb", "Cel", (0.0, 100.0), "air temperature"),
            number("relative_humidity", "%", (1.0, 100.0), "wanted relative humidity"),
            PRESSURE,
        ],
        figures: &[figure("wet_bulb", "Cel", "wet bulb to set")],
        example: r#"{"dry_bulb": 38, "relative_humidity": 82}"#,
        science: &["humidity::wet_bulb_for"],
        renamed: &[],
        compute: |values| {
            let [dry, humidity, pressure] =
                ["dry_bulb", "relative_humidity", "pressure"].map(|name| values.number(name));
            Ok(Outcome::of("wet_bulb", wet_bulb_for(dry, humidity, pressure)?))
        },
    },
    Calculation {
        name: "dew_point",
        title: "Dew point",
        description: "Surface temperature below which the air sheds water: on cold dough in a proofer, on a warm loaf in a bag.",
        inputs: &[
            number("dry_bulb", "Cel", AIR, "air temperature"),
            number("relative_humidity", "%", (0.1, 100.0), "relative humidity"),
        ],
        figures: &[figure("dew_point", "Cel", "dew point")],
        example: r#"{"dry_bulb": 28, "relative_humidity": 70}"#,
        science: &["humidity::dew_point"],
        renamed: &[],
        compute: |values| {
            Ok(Outcome::of("dew_point", dew_point(values.number("dry_bulb"), values.number("relative_humidity"))?))
        },
    },
    Calculation {
        name: "air_pressure_at_altitude",
        title: "Air pressure at an altitude",
        description: "Pressure of the standard atmosphere, where no barometer is at hand; weather moves it by some 3 %.",
        inputs: &[number("altitude", "m", (-500.0, 5000.0), "height above the sea")],
        figures: &[figure("pressure", "Pa", "air pressure")],
        example: r#"{"altitude": 1500}"#,
        science: &["humidity::standard_pressure"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("pressure", standard_pressure(values.number("altitude"))?)),
    },
    Calculation {
        name: "saturation_vapour_pressure",
        title: "Saturation vapour pressure",
        description: "Pressure of water vapour over water, or over ice below 0.01 °C.",
        inputs: &[number("temperature", "Cel", (-100.0, 200.0), "temperature")],
        figures: &[figure("pressure", "Pa", "saturation vapour pressure")],
        example: r#"{"temperature": 38}"#,
        science: &["humidity::saturation_vapour_pressure"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("pressure", saturation_vapour_pressure(values.number("temperature"))?)),
    },
];
