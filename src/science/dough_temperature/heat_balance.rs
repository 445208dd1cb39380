//! The heat balance: every ingredient counts with its mass and specific heat.

use super::judge_water;
use crate::science::{Estimate, Method, Nonsense, input_checks};

/// Specific heat of water, kJ/(kg K): Cengel, Boles, Thermodynamics, 8th ed., table A-3 (IAPWS-95 gives 4.184 at 20 °C).
pub(super) const WATER_KJ_PER_KG_K: f64 = 4.18;
/// One watt hour in kilojoules.
const KJ_PER_WH: f64 = 3.6;

const HEAT_BALANCE: Method = Method {
    name: "heat balance: dough heat − heat of the ingredients − mixing energy − heat of hydration",
    source: "first law; heat of hydration and its sign as in Cengel Y., Boles M., Thermodynamics: \
             An Engineering Approach, 8th ed., problem 5-157",
    domain: "no exchange with bowl and room except through the share of the mixing energy that the dough keeps; \
             melting of fat not included",
};

/// A published specific heat.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpecificHeat {
    /// What it belongs to.
    pub material: &'static str,
    /// kJ/(kg K) near 20 °C.
    pub kj_per_kg_k: f64,
    /// Publication, `common practice`, or `from memory: <work>`.
    pub source: &'static str,
}

/// Specific heats for [`HeatItem`]. A low and a high figure for flour are both published; they differ by 14 %.
pub const SPECIFIC_HEATS: &[SpecificHeat] = &[
    SpecificHeat {
        material: "water",
        kj_per_kg_k: WATER_KJ_PER_KG_K,
        source: "Cengel, Boles, Thermodynamics, 8th ed.",
    },
    SpecificHeat {
        material: "flour",
        kj_per_kg_k: 1.76,
        source: "Cengel, Boles, Thermodynamics, 8th ed., problem 5-157",
    },
    SpecificHeat {
        material: "flour, component sum",
        kj_per_kg_k: 2.00,
        source: "from memory: Choi Y., Okos M.R. (1986), at 20 °C, 14 % moisture, 12 % protein",
    },
    SpecificHeat {
        material: "fat",
        kj_per_kg_k: 2.01,
        source: "from memory: Choi Y., Okos M.R. (1986), at 20 °C, melting not included",
    },
    SpecificHeat {
        material: "butter",
        kj_per_kg_k: 2.34,
        source: "from memory: Choi Y., Okos M.R. (1986), at 20 °C, melting not included",
    },
    SpecificHeat {
        material: "sugar",
        kj_per_kg_k: 1.24,
        source: "from memory: Hoseney R.C., Principles of Cereal Science and Technology",
    },
    SpecificHeat {
        material: "bread dough, 44 % water",
        kj_per_kg_k: 2.76,
        source: "from memory: Choi Y., Okos M.R. (1986), at 20 °C",
    },
];

/// An ingredient other than the mixing water.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatItem {
    /// Name of the ingredient.
    pub name: String,
    /// Mass, kg.
    pub mass_kg: f64,
    /// Its temperature, °C.
    pub celsius: f64,
    /// Its specific heat, kJ/(kg K); see [`SPECIFIC_HEATS`].
    pub specific_heat_kj_per_kg_k: f64,
}

/// What goes into the mixer.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatBalance {
    /// Everything but the mixing water.
    pub items: Vec<HeatItem>,
    /// Mixing water, kg.
    pub water_kg: f64,
    /// Wanted dough temperature, °C.
    pub dough_celsius: f64,
    /// Mixing energy, Wh per kg of dough.
    pub mixing_energy_wh_per_kg: f64,
    /// Share of the mixing energy that stays in the dough, %.
    pub energy_kept_percent: f64,
    /// Heat of hydration, kJ per kg of dough; 0 leaves it out.
    pub heat_of_hydration_kj_per_kg: f64,
}

impl HeatBalance {
    /// Mass of the dough, kg.
    #[must_use]
    pub fn dough_kg(&self) -> f64 {
        self.water_kg + self.items.iter().map(|item| item.mass_kg).sum::<f64>()
    }

    /// Heat that mixing and hydration bring, kJ.
    fn heat_brought_kj(&self) -> f64 {
        let mixing = self.mixing_energy_wh_per_kg * KJ_PER_WH * self.energy_kept_percent / 100.0;
        (mixing + self.heat_of_hydration_kj_per_kg) * self.dough_kg()
    }

    fn check(&self) -> Nonsense {
        let mut faults = Nonsense::default();
        for (position, item) in self.items.iter().enumerate() {
            check_item(&mut faults, &format!("items[{position}]"), item);
        }
        input_checks::positive(&mut faults, "water_kg", self.water_kg);
        input_checks::temperature(&mut faults, "dough_celsius", self.dough_celsius);
        // 60 Wh/kg would warm a dough by about 80 K: no mixer does.
        let energy = self.mixing_energy_wh_per_kg;
        input_checks::within(&mut faults, "mixing_energy_wh_per_kg", energy, 0.0..=60.0, "W.h/kg");
        input_checks::percent(&mut faults, "energy_kept_percent", self.energy_kept_percent);
        // The published figure is 15 (Cengel, Boles, problem 5-157): several times as much is J for kJ.
        let hydration = self.heat_of_hydration_kj_per_kg;
        input_checks::within(&mut faults, "heat_of_hydration_kj_per_kg", hydration, 0.0..=100.0, "kJ/kg");
        faults
    }
}

/// Water temperature for the wanted dough temperature, °C.
///
/// # Errors
/// Lists every mass, temperature, energy or specific heat that cannot be meant.
pub fn water_by_heat_balance(balance: &HeatBalance) -> Result<Estimate, Nonsense> {
    balance.check().or_ok()?;
    // Relative to the dough temperature: an ingredient that has it already takes no heat.
    let taken: f64 = balance
        .items
        .iter()
        .map(|item| item.mass_kg * item.specific_heat_kj_per_kg_k * (balance.dough_celsius - item.celsius))
        .sum();
    let capacity = balance.water_kg * WATER_KJ_PER_KG_K;
    let water = balance.dough_celsius + (taken - balance.heat_brought_kj()) / capacity;
    Ok(judge_water(Estimate::new(water, "Cel", HEAT_BALANCE)))
}

fn check_item(faults: &mut Nonsense, input: &str, item: &HeatItem) {
    input_checks::not_negative(faults, &format!("{input}.mass_kg"), item.mass_kg);
    input_checks::temperature(faults, &format!("{input}.celsius"), item.celsius);
    // Nothing edible stores more heat than water.
    input_checks::within(
        faults,
        &format!("{input}.specific_heat_kj_per_kg_k"),
        item.specific_heat_kj_per_kg_k,
        0.5..=4.5,
        "kJ/(kg.K)",
    );
}
