//! # whybake
//!
//! Tells a baking technologist why a bake went wrong, what to change, and what to measure next.
//!
//! ## The way of one case
//!
//! ```text
//! rules/*.rhai --rules, once at load--> Knowledge --+
//!                                                   +--> Diagnostician --> Diagnosis
//! JSON --case: parse, check, convert units--> Case -+
//! ```
//!
//! 1. [`rules`] runs the rule files once and links what they declare into an immutable [`knowledge::Knowledge`].
//! 2. [`case`] reads one case against it: names, units, limits; every fault at once.
//! 3. [`diagnosis`] lays out what is known, computes what can be computed ([`formulas`], [`science`]), weighs the evidence, asks [`inference`] for
//!    exact posteriors, and puts the answer into words.
//!    Before that, [`intake`] makes a case of a complaint in plain words, and tells what to ask.
//! 4. [`what_if`] diagnoses the same case with hypothetical readings, amounts and actions; [`trial_sheet`] plans the trial bake that tells
//!    whether an action helps; [`replay`] tells whether a stored answer still holds.
//! 5. [`rule_tests`] judges the rules themselves: cases beside the rules, with what the answer must say.
//! 6. [`live_rules`] exchanges the rules while a service runs; [`rule_trial`] and [`comparison`] tell what a change would do.
//! 7. [`http`] and [`commands`] carry cases in and diagnoses out.
//!
//! ## Glossary
//!
//! - **cause**: what may have gone wrong; has a *prior*, the probability for the product before anything is known.
//! - **symptom**: what people see, feel or taste. A cause *shows* it with a *strength*; the *leak* is everything unmodelled.
//! - **reading**: what can be measured; **fact**: a yes or no about line or ingredients; **finding**: any of these in a case.
//! - **evidence**: a condition with weights in *decibans* (10·log10 of the likelihood ratio) for or against a cause.
//! - **explaining away**: a cause that is confirmed makes the other explanations of the same symptom less probable.

pub mod calculations;
pub mod case;
pub mod commands;
pub mod comparison;
pub mod diagnosis;
pub mod formulas;
pub mod http;
pub mod inference;
pub mod intake;
pub mod json;
pub mod knowledge;
mod listings;
pub mod live_rules;
mod numeral;
mod paragraphs;
pub mod replay;
pub mod rule_set;
pub mod rule_tests;
pub mod rule_trial;
pub mod rules;
pub mod science;
pub mod settings;
pub mod suggest;
pub mod trial_sheet;
pub mod units;
pub mod what_if;
