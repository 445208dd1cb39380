//! Ice for mixing water that has to be colder than the tap.

use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Heat that melts ice over specific heat of water, K: the trade's 144 BTU/lb over 1 BTU/(lb °F).
/// ice temperature table for bakers, of a bakery supplier; IAPWS-95 and IAPWS-06 give 79.7 K.
const MELTING_KELVIN: f64 = 80.0;
/// Specific heat of ice over that of water: 2.1 over 4.18 kJ/(kg K) (IAPWS-06 gives 2.097 at 0 °C).
const ICE_OVER_WATER: f64 = 2.1 / 4.18;
/// Warmest mixing water that makes sense to cool with ice, °C; above it the reading is a wrong unit.
const WARMEST_TAP_CELSIUS: f64 = 60.0;

const REPLACING: Method = Method {
    name: "ice in place of water: water × (tap − wanted) / (tap + 80 K)",
    source: "ice temperature table for bakers, of a bakery supplier (there in °F, denominator tap + 112)",
    domain: "all ice melts before mixing ends; colder ice adds half a kelvin per kelvin",
};
const ON_TOP: Method = Method {
    name: "ice on top of all the water: water × (tap − wanted) / (80 K + wanted)",
    source: "Argyriou D., article on ice in dough, whose figure is this denominator",
    domain: "all ice melts before mixing ends; the dough gets that much more water",
};

/// Mixing water and how cold it is to be.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct IceOrder {
    /// Mixing water by the formula, kg.
    pub water_kg: f64,
    /// Temperature of the tap water, °C.
    pub tap_celsius: f64,
    /// Water temperature that the dough asks for, °C; below zero as a figure for the books.
    pub wanted_celsius: f64,
    /// Temperature of the ice, °C, zero or below.
    pub ice_celsius: f64,
}

/// What to do about it.
#[derive(Debug, Clone, PartialEq)]
pub enum IcePlan {
    /// The tap is cold enough: no ice, bring the water to this temperature (°C).
    NoIce {
        /// Temperature to bring the water to.
        water: Estimate,
    },
    /// Ice and tap water, kg.
    Ice {
        /// Ice.
        ice: Estimate,
        /// Tap water.
        tap_water: Estimate,
    },
    /// Not even all the water as ice is cold enough: chill flour, room or preferment, or mix with less energy.
    NotEnough {
        /// All the water, as ice, kg.
        ice: Estimate,
        /// How much too warm the water then still counts, K.
        short_by: Estimate,
    },
}

impl IceOrder {
    fn check(&self) -> Nonsense {
        let mut faults = Nonsense::default();
        input_checks::positive(&mut faults, "water_kg", self.water_kg);
        let tap = self.tap_celsius;
        input_checks::within(&mut faults, "tap_celsius", tap, 0.0..=WARMEST_TAP_CELSIUS, "Cel");
        input_checks::within(&mut faults, "wanted_celsius", self.wanted_celsius, -250.0..=100.0, "Cel");
        input_checks::within(&mut faults, "ice_celsius", self.ice_celsius, -40.0..=0.0, "Cel");
        faults
    }

    /// What one kg of ice takes up before it is water at 0 °C, in kelvins of one kg of water.
    fn melting_kelvin(&self) -> f64 {
        MELTING_KELVIN - ICE_OVER_WATER * self.ice_celsius
    }

    fn no_ice(&self, method: Method) -> Option<IcePlan> {
        (self.wanted_celsius >= self.tap_celsius)
            .then(|| IcePlan::NoIce { water: super::judge_water(Estimate::new(self.wanted_celsius, "Cel", method)) })
    }

    fn not_enough(&self, method: Method) -> IcePlan {
        let short = -self.melting_kelvin() - self.wanted_celsius;
        IcePlan::NotEnough {
            ice: Estimate::new(self.water_kg, "kg", method),
            short_by: Estimate::new(short, "K", method),
        }
    }
}

/// Ice that takes the place of part of the water, so that the dough keeps its hydration.
///
/// # Errors
/// Water that is not above zero, tap water below 0 or above 60 °C, ice above 0 °C, a figure that is not a number.
pub fn ice_replacing_water(order: &IceOrder) -> Result<IcePlan, Nonsense> {
    order.check().or_ok()?;
    if let Some(plan) = order.no_ice(REPLACING) {
        return Ok(plan);
    }
    let melting = order.melting_kelvin();
    let cooling = order.tap_celsius - order.wanted_celsius;
    let ice = order.water_kg * cooling / (order.tap_celsius + melting);
    if ice > order.water_kg {
        return Ok(order.not_enough(REPLACING));
    }
    Ok(IcePlan::Ice {
        ice: Estimate::new(ice, "kg", REPLACING),
        tap_water: Estimate::new(order.water_kg - ice, "kg", REPLACING),
    })
}

/// Ice that is added on top of all the water, so that the dough gets softer by its mass.
///
/// # Errors
/// As for [`ice_replacing_water`].
pub fn ice_on_top(order: &IceOrder) -> Result<IcePlan, Nonsense> {
    order.check().or_ok()?;
    if let Some(plan) = order.no_ice(ON_TOP) {
        return Ok(plan);
    }
    let melting = order.melting_kelvin();
    let cooling = order.tap_celsius - order.wanted_celsius;
    // At or below −80 °C no amount of ice on top of liquid water gets there.
    if order.wanted_celsius <= -melting {
        return Ok(order.not_enough(ON_TOP));
    }
    let ice = order.water_kg * cooling / (melting + order.wanted_celsius);
    let estimate = Estimate::new(ice, "kg", ON_TOP).valid_if(ice <= order.water_kg, || {
        format!(
            "{ice:.1} kg of ice on {:.1} kg of water: more ice than water, use ice in place of water",
            order.water_kg
        )
    });
    Ok(IcePlan::Ice { ice: estimate, tap_water: Estimate::new(order.water_kg, "kg", ON_TOP) })
}
