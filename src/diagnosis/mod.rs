//! Puts it together: knowledge and a case in, a ranked and argued [`Diagnosis`] out.
//!
//! ```text
//! Case --laid_out--> Circumstances --weighing--> Findings --inference--> Posterior --+--> ranking, arguments
//!                    (computed readings,                                             +--> next readings and questions
//!                     raised symptoms)                                               +--> actions, cautions, words
//! ```

mod advice;
mod answer;
mod arguments;
mod calculations;
mod cautions;
mod changes;
mod circumstances;
mod computed;
mod deciding;
mod diagnostician;
mod displaced;
mod exclusion;
mod inquiry;
mod law;
mod leading;
mod missing;
mod model;
mod names;
mod numbers;
mod opened;
mod order;
mod prepared;
mod prescribed;
mod raised;
mod ranked;
mod regions;
mod remarks;
mod said;
mod sentence;
mod terminal;
mod usual_information;
mod weighing;
mod words;

pub use answer::*;
pub use changes::change_text;
pub use diagnostician::{DiagnosisFault, Diagnostician, UnusableRules};
pub use inquiry::*;
pub(crate) use names::{needed, quantity_name};
pub(crate) use numbers::measure;
pub use prescribed::Prescribed;
pub(crate) use remarks::percent;
pub use said::Said;
pub(crate) use sentence::in_sentence;
pub use terminal::render;
pub(crate) use terminal::with_symbol;
pub use usual_information::UsualInformation;
pub use words::{describe_condition, describe_regions};
