//! The HTTP service, route by route. Most tests ask the application that `whybake serve` starts without a socket;
//! `server` and `shutdown` use real ones.
// Helpers of tests stop, as tests do, at the first thing that is not as it should be.
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod calculations;
mod causes;
mod complaints;
mod diagnoses;
mod docs;
mod entity_tags;
mod facts;
mod formulas;
mod health;
mod ingredients;
mod inquiries;
mod intake_sheets;
mod openapi_json;
mod problems;
mod products;
mod readings;
mod reload;
mod reload_route;
mod reload_signal;
mod reload_under_load;
mod replays;
mod requests;
mod requirements;
mod rule_trials;
mod rules;
mod schema;
mod server;
mod service;
mod shutdown;
mod small_pack;
mod symptoms;
mod trial_sheets;
mod unknown;
mod what_if;
