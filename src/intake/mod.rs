//! Intake: from a complaint in plain words to a case, and the sheet of what to ask.
//!
//! ```text
//! text --words--> tokens, clauses --matching against the product's own words--> symptoms, readings, facts
//!                                                                                |
//!                        what no match takes in --> not understood               +--> draft of a case
//! ```
//!
//! Words of people's safety raise an alarm beside all that, which becomes the caution that the answer begins with.
//!
//! What is what: a *reading* is a quantity that can be measured, as everywhere in this program; a *value* is a number with a
//! unit in the text, which `assignment` gives to a reading; a *mention* is a symptom or fact that the text names; the
//! *interpretation* is the whole answer.
//!
//! The words are those of the rules: titles, synonyms, descriptions and ids. [`Intake`] indexes them once a product, when
//! it is first asked about, and keeps the index as long as the rules. Nothing of a text is dropped in silence: each clause
//! is taken for something that the answer names, or stands among what was not understood.

mod alarm_words;
mod alarms;
mod answer;
mod assignment;
mod contradictions;
mod draft;
mod earlier;
mod expected;
mod function_words;
mod index;
mod interpreter;
mod kin;
mod kinds;
mod leftovers;
mod matching;
mod mentions;
mod naming;
mod numbers;
mod opposites;
mod parts;
mod phrases;
mod products;
mod request;
mod said;
mod sheet;
mod similes;
mod subjects;
mod told_values;
mod translations;
mod unit_spellings;
mod unit_words;
mod unmeasured;
mod value_text;
mod values;
mod windows;
mod word_forms;
mod words;

pub use answer::*;
pub use interpreter::Intake;
pub use request::{Complaint, ComplaintDocument, MOST_CHARACTERS};
pub use sheet::*;
