//! What a technologist computes: one file a calculation, pure functions, each with its published source.
//!
//! Every result is an [`Estimate`]: a value that names its unit, method, source and domain, and says so when it was
//! used outside that domain. Nonsense (a negative mass, an empty formula) is a [`Nonsense`] that lists every faulty input.
//!
//! [`calculations`](crate::calculations) gives each a name, for people, programs and rules.
//!
//! | To find | Look in |
//! |---|---|
//! | baker's percentages, total water, ratios of a formula, batch sizes | [`formula`] |
//! | moisture basis, blends, falling number, absorption, solvent retention | [`flour`] |
//! | water temperature, friction, ice | [`dough_temperature`] |
//! | exchange of yeast forms, gas from sugar | [`yeast`] |
//! | soda and acid in balance, gas of a leavener | [`leavening`] |
//! | bake loss, volume, spread, starch setting, evaporation | [`proof_bake`] |
//! | relative humidity, wet bulb, dew point of a proofer or cooler | [`humidity`] |
//! | water activity of a solution, a composition, a dry good | [`water_activity`] |
//! | days until mould shows | [`mould_free_life`] |
//! | freezing point, ice at a temperature | [`freezing`] |
//! | how much sugar dissolves | [`sugar_solubility`] |
//! | boiling point of water and syrup, when to stop cooking | [`boiling`] |
//! | soluble solids, pectin, gelatin, starch, fruit enzymes | [`filling`] |
//! | iodine value, solids curve, plasticity, blends that match a curve | [`fat`] |
//! | whether water activity and pH call for temperature control | [`food_code`] |
//! | how many pieces show a difference, which runs, in which order | [`trial_design`] |

// The formula and what goes into it.
pub mod dough_temperature;
pub mod flour;
pub mod formula;
pub mod leavening;
pub mod yeast;

// From the proofer to the shelf.
pub mod freezing;
pub mod humidity;
pub mod mould_free_life;
pub mod proof_bake;
pub mod water_activity;

// Syrups, fillings and fats.
pub mod boiling;
pub mod fat;
pub mod filling;
pub mod sugar_solubility;

// What the law asks first.
pub mod food_code;

// Whether a change helped.
pub mod trial_design;

// What they share.
mod bisection;
mod estimate;
mod input_checks;
mod interpolation;

pub use estimate::{Estimate, Fault, Method, Nonsense};
