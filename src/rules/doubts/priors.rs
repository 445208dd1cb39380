//! Priors of a product that cannot all be true.

use super::super::code::Code;
use super::Doubts;

/// Priors add up to the number of causes that are at work, on average, behind one complaint. More than this many at once
/// would leave no cause a cause (common practice: one or two, seldom three).
const MOST_AT_ONCE: f64 = 4.0;

pub(super) fn look(doubts: &mut Doubts<'_>) {
    let things = doubts.things();
    for view in doubts.knowledge.views() {
        let sum: f64 = view.priors.iter().sum();
        let id = &doubts.declared().products[view.product].id;
        let Some(product) = things.iter().find(|thing| thing.id == *id).filter(|_| sum > MOST_AT_ONCE) else {
            continue;
        };
        let message =
            format!("the priors of `{id}` add up to {sum:.1}: so many causes would be at work in every complaint");
        let help = format!("choose rarer priors, so that they add up to {MOST_AT_ONCE} at most");
        doubts.tell_of(Code::HighPriors, product, message, Some(help));
    }
}
