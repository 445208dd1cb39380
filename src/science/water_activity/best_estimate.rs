//! The water activity of a composition by the equation that suits it.
//!
//! | composition | equation |
//! |---|---|
//! | sucrose and water, to 6 mol/kg | Robinson-Stokes |
//! | salt and water | Pitzer |
//! | one other solute | Norrish |
//! | several solutes | Norrish with a mixture constant, salt by Ross |
//! | starch, protein or fibre with solutes | the same on the water that the GAB isotherm leaves |
//! | starch, protein or fibre alone | GAB isotherm |

use super::sharing::{self, Sharing, Sugars};
use super::{BinarySolution, sucrose_robinson_stokes};
use super::{CompositionPer100g, Solute, remarks};
use super::{equilibrium_relative_humidity, mixture, norrish, salt_pitzer, sorption, sucrose};
use crate::science::{Estimate, Method, Nonsense};

const WATER: Method =
    Method { name: "pure water", source: "definition of water activity", domain: "water with nothing dissolved: 1" };
const SHARED: Method = Method {
    name: "Norrish with a mixture constant on the water left by a GAB isotherm",
    source: "Ferro Fontan, Chirife and Boquet 1981 (from memory), salt by Pitzer; isotherm of rice starch, desorption, Sci. \
        Technol. Food Ind. (China) 2014, doi 10.13386/j.issn1002-0306.2014.10.036",
    domain: "25 Cel, aw 0.11-0.90 for the isotherm; accuracy not published: for bread, sponge and pound cake it lies inside, \
        0.02 below and 0.01 above the published classes",
};

/// A water activity with what is to be known about it.
#[derive(Debug, Clone, PartialEq)]
pub struct WaterActivityEstimate {
    /// Water activity at 25 °C, 0-1, with all sugar dissolved; its `method` says which equation was chosen.
    pub water_activity: Estimate,
    /// Equilibrium relative humidity, %.
    pub equilibrium_relative_humidity: Estimate,
    /// Water activity if sucrose and lactose crystallise down to their solubility at 25 °C; present when they can.
    pub if_sugar_crystallises: Option<Estimate>,
    /// Water held by starch, protein and fibre, g per 100 g of product.
    pub water_on_biopolymer: f64,
}

/// Water activity of a composition, by the equation of the table above.
///
/// # Errors
/// [`Nonsense`] listing every faulty part of the composition.
pub fn best_estimate(composition: &CompositionPer100g) -> Result<WaterActivityEstimate, Nonsense> {
    composition.check()?;
    let shared = sharing::share(composition, Sugars::Dissolved);
    let water_activity = remarks::add(choose(composition, shared)?, composition, shared);
    let erh = equilibrium_relative_humidity(water_activity.value)?;
    Ok(WaterActivityEstimate {
        equilibrium_relative_humidity: Estimate { outside_domain: water_activity.outside_domain.clone(), ..erh },
        if_sugar_crystallises: crystallised(composition, shared),
        water_on_biopolymer: shared.water_held,
        water_activity,
    })
}

/// Water, g per 100 g of product as it is, at which the composition would have this water activity.
pub(in crate::science) fn water_at_activity(composition: &CompositionPer100g, water_activity: f64) -> f64 {
    sharing::water_at(composition, water_activity)
}

/// Water activity by the mixture equation and the isotherm alone, whatever [`best_estimate`] would choose; unchecked.
pub(in crate::science) fn norrish_activity(composition: &CompositionPer100g) -> f64 {
    sharing::share(composition, Sugars::Dissolved).activity
}

fn choose(composition: &CompositionPer100g, shared: Sharing) -> Result<Estimate, Nonsense> {
    let mut present = composition.solutes().into_iter().filter(|(_, grams)| *grams > 0.0);
    let (first, second) = (present.next(), present.next());
    if composition.biopolymer() > 0.0 {
        let method = if first.is_some() { SHARED } else { sorption::METHOD };
        return Ok(Estimate::new(shared.activity, "1", method));
    }
    let (Some((solute, solute_g)), None) = (first, second) else {
        let method = if first.is_none() { WATER } else { mixture::METHOD };
        return Ok(Estimate::new(shared.activity, "1", method));
    };
    let binary = BinarySolution { solute, solute_g, water_g: composition.water };
    match solute {
        Solute::Sucrose if binary.molality() <= sucrose::HIGHEST_MOLALITY => sucrose_robinson_stokes(binary.molality()),
        Solute::Salt if binary.molality() <= super::salt::HIGHEST_MOLALITY => salt_pitzer(binary.molality()),
        Solute::Salt | Solute::Ethanol => Ok(Estimate::new(shared.activity, "1", mixture::METHOD)),
        _ => norrish(&binary).map(|estimate| Estimate { outside_domain: Vec::new(), ..estimate }),
    }
}

fn crystallised(composition: &CompositionPer100g, dissolved: Sharing) -> Option<Estimate> {
    if !sharing::can_crystallise(composition, dissolved.water_free) {
        return None;
    }
    let shared = sharing::share(composition, Sugars::Crystallised);
    let method = if composition.biopolymer() > 0.0 { SHARED } else { mixture::METHOD };
    let estimate = Estimate::new(shared.activity, "1", method);
    Some(remarks::add(estimate, composition, shared).valid_if(false, || {
        "each sugar is held at its solubility alone in water; together they dissolve less".to_owned()
    }))
}
