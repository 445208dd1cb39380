//! Saponification value: how much alkali a fat takes, a measure of the mean length of its chains.

use super::Composition;
use super::fatty_acid::triglyceride_molar_mass;
use crate::science::{Estimate, Method};

/// Molar mass of potassium hydroxide, g/mol. Source: IUPAC, Atomic weights of the elements 2021.
const POTASSIUM_HYDROXIDE: f64 = 56.106;

/// Below this much of the acids named, the mean chain is a guess. Source: common practice.
const ENOUGH_NAMED: f64 = 95.0;

const CALCULATED: Method = Method {
    name: "calculated saponification value",
    source: "stoichiometry of a triglyceride: SV = 3 M(KOH) 1000 / M(TG); the method is AOCS Cd 3a-94, from memory",
    domain: "triglycerides with little free acid, mono- or diglyceride and unsaponifiable matter; named acids are scaled to 100 %",
};

/// Calculated saponification value, mg KOH/g, of the triglyceride whose acids have the mean molar mass of the
/// composition, M = Σw / Σ(w/M).
#[must_use]
pub fn saponification_value(composition: &Composition) -> Estimate {
    let named = composition.named_percent();
    let shares = composition.shares().iter();
    let moles: f64 = shares.map(|share| share.percent / share.acid.molar_mass()).sum();
    let triglyceride = triglyceride_molar_mass(named / moles);
    let value = 3.0 * POTASSIUM_HYDROXIDE * 1000.0 / triglyceride;
    Estimate::new(value, "mg/g", CALCULATED)
        .valid_if(named >= ENOUGH_NAMED, || format!("only {named:.1} % of the fatty acids are named"))
}
