//! What repairs do: which order of actions takes a cause away soonest.
//!
//! An action mends each of its causes, when that is at work, with a probability of its own and independently of the other
//! causes and of the other actions. Ordering by probability over cost is optimal where one fault is at work, every repair
//! is judged before the next, and costs do not depend on the order (Heckerman, Breese and Rommelse 1995,
//! "Decision-theoretic troubleshooting", Communications of the ACM 38(3), from memory); with several faults at work it is
//! the usual approximation. The probability of a repair is taken given that those before it took no cause away.

/// An action as the order sees it.
#[derive(Debug, Clone, PartialEq)]
pub struct Repair {
    /// Places of its causes in the joint posterior, each once, with the probability that it mends the cause.
    pub mends: Vec<(usize, f64)>,
    /// What it takes: above 0, in any unit that is the same for all.
    pub cost: f64,
}

/// An action in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Step {
    /// Place of the action among the repairs.
    pub repair: usize,
    /// Probability that it is the first to take a cause away: those before it took none.
    pub adds: f64,
    /// Probability that at least one cause that is at work has been taken away by then.
    pub some: f64,
    /// Probability that causes are at work and that all of them have been taken away by then.
    pub all: f64,
}

/// Probability that at least one cause that is at work is taken away. `joint` is a joint posterior of causes
/// ([`Posterior::joint`](super::Posterior::joint)); `left[k]` is the probability that its cause `k` stays when it is at work.
#[must_use]
pub fn takes_away_some(joint: &[f64], left: &[f64]) -> f64 {
    Fold::default().some(joint, left)
}

/// Probability that causes are at work and that all of them are taken away.
#[must_use]
pub fn takes_away_all(joint: &[f64], left: &[f64]) -> f64 {
    Fold::default().all(joint, left)
}

/// The order of repairs: the first `at_once` of them as they stand; then each place goes to the repair that adds most for
/// its cost, of equals to the first. Of these, repairs that add nothing are left out.
#[must_use]
pub fn order_repairs(joint: &[f64], repairs: &[Repair], at_once: usize, most: usize) -> Vec<Step> {
    let mut order = Order {
        joint,
        repairs,
        left: vec![1.0; causes_of(joint)],
        // What a repair adds only falls as others come before it, so an old figure is a bound.
        bounds: vec![f64::INFINITY; repairs.len()],
        fold: Fold::default(),
    };
    let mut steps: Vec<Step> = Vec::new();
    while steps.len() < most {
        let before = steps.last().map_or(0.0, |step| step.some);
        let given = Some(steps.len()).filter(|place| *place < at_once.min(repairs.len()));
        let next = given.map(|place| (place, order.with(place))).or_else(|| order.best(before));
        let Some((repair, some)) = next else { break };
        order.take(repair);
        let all = order.fold.all(joint, &order.left);
        steps.push(Step { repair, adds: some - before, some, all });
    }
    steps
}

/// Below it a difference of probabilities for a cost is rounding.
const LEAST_RATE: f64 = 1e-12;

/// An order in the making.
struct Order<'a> {
    joint: &'a [f64],
    repairs: &'a [Repair],
    /// Probability of each cause that it stays when it is at work.
    left: Vec<f64>,
    /// Most that each repair can still add for its cost.
    bounds: Vec<f64>,
    fold: Fold,
}

impl Order<'_> {
    /// The repair that adds most for its cost, and the probability that some cause is gone after it.
    fn best(&mut self, before: f64) -> Option<(usize, f64)> {
        let mut best: Option<(usize, f64, f64)> = None;
        let mut tried = self.left.clone();
        for (place, (repair, bound)) in self.repairs.iter().zip(&mut self.bounds).enumerate() {
            if *bound <= best.map_or(LEAST_RATE, |(_, rate, _)| rate) {
                continue;
            }
            tried.copy_from_slice(&self.left);
            apply(repair, &mut tried);
            let some = self.fold.some(self.joint, &tried);
            *bound = (some - before) / repair.cost;
            if *bound > best.map_or(LEAST_RATE, |(_, rate, _)| rate) {
                best = Some((place, *bound, some));
            }
        }
        best.map(|(place, _, some)| (place, some))
    }

    /// Probability that some cause is gone when a repair is done too.
    fn with(&mut self, place: usize) -> f64 {
        let mut tried = self.left.clone();
        if let Some(repair) = self.repairs.get(place) {
            apply(repair, &mut tried);
        }
        self.fold.some(self.joint, &tried)
    }

    /// Gives a repair its place.
    fn take(&mut self, place: usize) {
        if let (Some(repair), Some(bound)) = (self.repairs.get(place), self.bounds.get_mut(place)) {
            apply(repair, &mut self.left);
            *bound = f64::NEG_INFINITY;
        }
    }
}

/// What is left of the causes after a repair.
fn apply(repair: &Repair, left: &mut [f64]) {
    for (cause, works) in &repair.mends {
        if let Some(left) = left.get_mut(*cause) {
            *left *= 1.0 - works;
        }
    }
}

/// Expectations over a joint posterior; keeps its memory.
#[derive(Default)]
struct Fold {
    table: Vec<f64>,
}

impl Fold {
    fn some(&mut self, joint: &[f64], left: &[f64]) -> f64 {
        1.0 - self.expectation(joint, |cause| left.get(cause).copied().unwrap_or(1.0))
    }

    fn all(&mut self, joint: &[f64], left: &[f64]) -> f64 {
        let none = joint.first().copied().unwrap_or(0.0);
        self.expectation(joint, |cause| 1.0 - left.get(cause).copied().unwrap_or(1.0)) - none
    }

    /// Expectation of the product of `factor` over the causes that are present: the table is folded cause by cause.
    fn expectation(&mut self, joint: &[f64], factor: impl Fn(usize) -> f64) -> f64 {
        let table = &mut self.table;
        table.clear();
        table.extend_from_slice(joint);
        for cause in (0..causes_of(joint)).rev() {
            let (absent, present) = table.split_at_mut(1 << cause);
            let factor = factor(cause);
            for (absent, present) in absent.iter_mut().zip(present.iter()) {
                *absent += factor * present;
            }
            table.truncate(1 << cause);
        }
        table.first().copied().unwrap_or(1.0)
    }
}

/// Causes of a joint posterior.
fn causes_of(joint: &[f64]) -> usize {
    joint.len().checked_ilog2().unwrap_or(0) as usize
}

#[cfg(test)]
mod tests {
    use super::{Repair, order_repairs};

    #[test]
    fn of_one_fault_the_order_is_by_probability_over_cost() {
        // Exactly one of three causes is at work, as Heckerman, Breese and Rommelse assume.
        let joint = [0.0, 0.5, 0.3, 0.0, 0.2, 0.0, 0.0, 0.0];
        let repair = |cause, cost| Repair { mends: vec![(cause, 1.0)], cost };
        let repairs = [repair(0, 50.0), repair(1, 10.0), repair(2, 10.0)];
        let steps = order_repairs(&joint, &repairs, 0, 8);
        assert_eq!(steps.iter().map(|step| step.repair).collect::<Vec<_>>(), [1, 2, 0]);
        assert!((steps[0].adds - 0.3).abs() < 1e-12 && (steps[2].adds - 0.5).abs() < 1e-12);
        assert!((steps[2].all - 1.0).abs() < 1e-12);
    }

    #[test]
    fn what_adds_nothing_is_left_out() {
        let repairs = vec![Repair { mends: vec![(0, 0.0)], cost: 1.0 }, Repair { mends: Vec::new(), cost: 1.0 }];
        assert_eq!(order_repairs(&[0.4, 0.6], &repairs, 0, 8), []);
        assert_eq!(order_repairs(&[1.0], &repairs, 0, 8), []);
    }
}
