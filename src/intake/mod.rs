//! Intake: from a complaint in plain words to a case, and the sheet of what to ask.
//!
//! ```text
//! text --words--> tokens, clauses --matching against the product's own words--> symptoms, readings, facts
//!                                                                                |
//!                        what no match takes in --> not understood               +--> draft of a case
//! ```
//!
//! The words are those of the rules: titles, synonyms, descriptions and ids. [`Intake`] indexes them once a product, when
//! it is first asked about, and keeps the index as long as the rules. Nothing of a text is dropped in silence: each clause
//! is taken for something that the answer names, or stands among what was not understood.

mod answer;
mod contradictions;
mod draft;
mod earlier;
mod expected;
mod function_words;
mod index;
mod kin;
mod leftovers;
mod matching;
mod naming;
mod numbers;
mod opposites;
mod parts;
mod phrases;
mod products;
mod reader;
mod readings;
mod request;
mod said;
mod sheet;
mod similes;
mod symptoms;
mod taking;
mod unit_spellings;
mod unit_words;
mod unmeasured;
mod value_text;
mod values;
mod windows;
mod words;

pub use answer::*;
pub use reader::Intake;
pub use request::{Complaint, ComplaintDocument, ComplaintFaults, MOST_CHARACTERS};
pub use sheet::*;
