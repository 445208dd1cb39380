//! Mixing water, friction and ice for a wanted dough temperature.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, Input, choice, difference, number, percent, rows, text, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::Values;
use crate::science::dough_temperature::{
    AdditiveRule, HeatBalance, HeatItem, IceOrder, IcePlan, dough_by_additive_rule, friction_factor, ice_on_top,
    ice_replacing_water, water_by_additive_rule, water_by_heat_balance,
};
use crate::science::{Estimate, Nonsense};

/// Temperatures of doughs and ingredients, °C.
const DOUGH: (f64, f64) = (-10.0, 60.0);
const INGREDIENT: (f64, f64) = (-30.0, 90.0);
/// Figures for the books of mixing water, °C, cold enough for water that is all ice.
const WATER: (f64, f64) = (-250.0, 100.0);
/// Masses of a batch, kg.
const MASS: (f64, f64) = (0.0, 100_000.0);

const FLOUR: Input = number("flour_temperature", "Cel", INGREDIENT, "temperature of the flour");
const ROOM: Input = number("room_temperature", "Cel", INGREDIENT, "temperature of the room");
const PREFERMENT: Input = number(
    "preferment_temperature",
    "Cel",
    INGREDIENT,
    "temperature of a sponge or other preferment; one more factor of the rule when it is given",
)
.optional();
const SOAKER: Input = number(
    "soaker_temperature",
    "Cel",
    INGREDIENT,
    "temperature of a soaker; one more factor of the rule when it is given",
)
.optional();
const FRICTION: Input = difference(
    "friction_factor",
    "K",
    (-100.0, 200.0),
    "friction factor of the mixer, measured on one batch by `friction_factor`; not the rise of the dough",
);

const ICE_WAYS: &[Choice] = &[
    word("in_place_of_water", "the ice replaces part of the water: the dough keeps its hydration"),
    word("on_top_of_water", "the ice comes on top of all the water: the dough gets softer by its mass"),
];

const HEAT_ITEM: &[Input] = &[
    text("name", "name of the ingredient"),
    number("mass", "kg", MASS, "its mass"),
    number("temperature", "Cel", INGREDIENT, "its temperature"),
    number(
        "specific_heat",
        "kJ/(kg.K)",
        (0.5, 4.5),
        "its specific heat: flour 1.76 to 2.0, water 4.18, fat 2.01, sugar 1.24",
    ),
];

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "mixing_water_temperature",
        title: "Mixing water temperature by the additive rule",
        description: "Temperature of the mixing water for a wanted dough temperature, with a friction factor that was \
            measured on one batch of the same mixer. Below 0 °C it is a figure for the books: `ice_for_mixing_water` \
            turns it into ice.",
        inputs: &[
            number("dough_temperature", "Cel", DOUGH, "wanted dough temperature"),
            FLOUR,
            ROOM,
            FRICTION,
            PREFERMENT,
            SOAKER,
        ],
        figures: &[figure("water_temperature", "Cel", "temperature of the mixing water")],
        example: r#"{"dough_temperature": 26, "flour_temperature": 22, "room_temperature": 24, "friction_factor": {"value": 12, "unit": "K"}}"#,
        science: &["dough_temperature::water_by_additive_rule"],
        renamed: RENAMED,
        compute: |values| {
            let rule =
                AdditiveRule { other_celsius: others(values), friction_kelvin: values.number("friction_factor") };
            let water = water_by_additive_rule(&rule, values.number("dough_temperature"))?;
            Ok(Outcome::of("water_temperature", water))
        },
    },
    Calculation {
        name: "expected_dough_temperature",
        title: "Dough temperature that the additive rule expects",
        description: "Dough temperature that comes of a mixing water temperature and a measured friction factor.",
        inputs: &[
            number("water_temperature", "Cel", WATER, "temperature of the mixing water"),
            FLOUR,
            ROOM,
            FRICTION,
            PREFERMENT,
            SOAKER,
        ],
        figures: &[figure("dough_temperature", "Cel", "expected dough temperature")],
        example: r#"{"water_temperature": 20, "flour_temperature": 22, "room_temperature": 24, "friction_factor": 12}"#,
        science: &["dough_temperature::dough_by_additive_rule"],
        renamed: RENAMED,
        compute: |values| {
            let rule =
                AdditiveRule { other_celsius: others(values), friction_kelvin: values.number("friction_factor") };
            let dough = dough_by_additive_rule(&rule, values.number("water_temperature"))?;
            Ok(Outcome::of("dough_temperature", dough))
        },
    },
    Calculation {
        name: "friction_factor",
        title: "Friction factor from a measured batch",
        description: "Friction factor of the additive rule from one batch that was mixed and measured. Mixer, speed, time \
            and batch size must stay the same.",
        inputs: &[
            number("dough_temperature", "Cel", DOUGH, "measured dough temperature"),
            number("water_temperature", "Cel", WATER, "temperature of the mixing water"),
            FLOUR,
            ROOM,
            PREFERMENT,
            SOAKER,
        ],
        figures: &[figure("friction_factor", "K", "friction factor, a difference")],
        example: r#"{"dough_temperature": 28, "water_temperature": 24, "flour_temperature": 22, "room_temperature": 24}"#,
        science: &["dough_temperature::friction_factor"],
        renamed: RENAMED,
        compute: |values| {
            let (water, dough) = (values.number("water_temperature"), values.number("dough_temperature"));
            Ok(Outcome::of("friction_factor", friction_factor(&others(values), water, dough)?))
        },
    },
    Calculation {
        name: "mixing_water_by_heat_balance",
        title: "Mixing water temperature by a heat balance",
        description: "Temperature of the mixing water when every ingredient counts with its mass and specific heat, and \
            mixing and hydration bring heat. For formulas that the additive rule does not fit.",
        inputs: &[
            rows("ingredients", HEAT_ITEM, (1, 50), "everything but the mixing water"),
            number("water", "kg", MASS, "mixing water"),
            number("dough_temperature", "Cel", DOUGH, "wanted dough temperature"),
            number("mixing_energy", "W.h/kg", (0.0, 60.0), "mixing energy a kg of dough"),
            percent("energy_kept", "share of the mixing energy that stays in the dough")
                .or_number(100.0, "first law: no loss to bowl and room assumed"),
            number("heat_of_hydration", "kJ/kg", (0.0, 100.0), "heat of hydration a kg of dough; 0 leaves it out")
                .or_number(0.0, "left out unless given; Cengel, Boles, Thermodynamics, 8th ed., problem 5-157 has 15"),
        ],
        figures: &[figure("water_temperature", "Cel", "temperature of the mixing water")],
        example: r#"{"ingredients": [{"name": "flour", "mass": 50, "temperature": 22, "specific_heat": 1.76}, {"name": "sugar", "mass": 4, "temperature": 22, "specific_heat": 1.24}], "water": 30, "dough_temperature": 26, "mixing_energy": 8}"#,
        science: &["dough_temperature::water_by_heat_balance"],
        renamed: &[
            ("items", "ingredients"),
            ("mass_kg", "mass"),
            ("celsius", "temperature"),
            ("specific_heat_kj_per_kg_k", "specific_heat"),
            ("water_kg", "water"),
            ("dough_celsius", "dough_temperature"),
            ("mixing_energy_wh_per_kg", "mixing_energy"),
            ("energy_kept_percent", "energy_kept"),
            ("heat_of_hydration_kj_per_kg", "heat_of_hydration"),
        ],
        compute: |values| Ok(Outcome::of("water_temperature", water_by_heat_balance(&balance(values))?)),
    },
    Calculation {
        name: "ice_for_mixing_water",
        title: "Ice for mixing water",
        description: "Ice and tap water for mixing water that must be colder than the tap. Ice must be potable, and all \
            of it must melt before mixing ends.",
        inputs: &[
            number("water", "kg", MASS, "mixing water by the formula"),
            number("tap_temperature", "Cel", (0.0, 60.0), "temperature of the tap water"),
            number("wanted_temperature", "Cel", WATER, "water temperature that the dough asks for; may be below 0"),
            number("ice_temperature", "Cel", (-40.0, 0.0), "temperature of the ice")
                .or_number(0.0, "melting ice, as the trade's ice tables take it"),
            choice("way", ICE_WAYS, "how the ice is used").or(
                crate::calculations::input::DefaultValue::Word("in_place_of_water"),
                "common practice: the dough keeps its hydration",
            ),
        ],
        figures: &[
            figure("ice", "kg", "ice; 0 when the tap is cold enough"),
            figure("tap_water", "kg", "tap water"),
            figure("short_by", "K", "how much too warm the water still counts when all of it is ice"),
        ],
        example: r#"{"water": 30, "tap_temperature": 18, "wanted_temperature": 4}"#,
        science: &["dough_temperature::ice_replacing_water", "dough_temperature::ice_on_top"],
        renamed: &[
            ("water_kg", "water"),
            ("tap_celsius", "tap_temperature"),
            ("wanted_celsius", "wanted_temperature"),
            ("ice_celsius", "ice_temperature"),
        ],
        compute: ice,
    },
];

const RENAMED: &[(&str, &str)] = &[
    ("other_celsius[0]", "flour_temperature"),
    ("other_celsius[1]", "room_temperature"),
    ("dough_celsius", "dough_temperature"),
    ("water_celsius", "water_temperature"),
    ("friction_kelvin", "friction_factor"),
];

/// The temperatures that count beside the water.
fn others(values: &Values) -> Vec<f64> {
    let always = ["flour_temperature", "room_temperature"].map(|name| values.number(name));
    let sometimes =
        ["preferment_temperature", "soaker_temperature"].into_iter().filter_map(|name| values.optional(name));
    always.into_iter().chain(sometimes).collect()
}

fn balance(values: &Values) -> HeatBalance {
    let item = |row: &Values| HeatItem {
        name: row.text("name"),
        mass_kg: row.number("mass"),
        celsius: row.number("temperature"),
        specific_heat_kj_per_kg_k: row.number("specific_heat"),
    };
    HeatBalance {
        items: values.rows("ingredients").iter().map(item).collect(),
        water_kg: values.number("water"),
        dough_celsius: values.number("dough_temperature"),
        mixing_energy_wh_per_kg: values.number("mixing_energy"),
        energy_kept_percent: values.number("energy_kept"),
        heat_of_hydration_kj_per_kg: values.number("heat_of_hydration"),
    }
}

fn ice(values: &Values) -> Result<Outcome, Nonsense> {
    let order = IceOrder {
        water_kg: values.number("water"),
        tap_celsius: values.number("tap_temperature"),
        wanted_celsius: values.number("wanted_temperature"),
        ice_celsius: values.number("ice_temperature"),
    };
    let by = values.choice::<fn(&IceOrder) -> Result<IcePlan, Nonsense>>(
        "way",
        &[("in_place_of_water", ice_replacing_water), ("on_top_of_water", ice_on_top)],
    )?;
    Ok(match by(&order)? {
        IcePlan::NoIce { water } => {
            let mass = |value: f64| Estimate { value, unit: "kg", ..water.clone() };
            Outcome::of("ice", mass(0.0))
                .and("tap_water", mass(order.water_kg))
                .remark(format!("the tap is cold enough: bring the water to {:.1} °C, without ice", water.value))
        }
        IcePlan::Ice { ice, tap_water } => Outcome::of("ice", ice).and("tap_water", tap_water),
        IcePlan::NotEnough { ice, short_by } => {
            let none = Estimate { value: 0.0, ..ice.clone() };
            Outcome::of("ice", ice).and("tap_water", none).and("short_by", short_by).remark(
                "not even all the water as ice is cold enough: chill flour, room or preferment, or mix with less energy",
            )
        }
    })
}
