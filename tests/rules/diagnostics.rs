//! What the loader says of each kind of fault: message, help, place and underlined text.

mod arguments;
mod calculations;
mod cascades;
mod changes;
mod declarations;
mod formulas;
mod law;
mod names;
mod numbers;
mod scripts;
mod whole;
