//! The intake sheet of a product: what to ask, in the order of what it usually tells.

mod answer;
mod build;
mod html;
mod page;

pub use answer::*;
pub use page::page;
