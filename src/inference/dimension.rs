//! A symptom that is present or uncertain, as a dimension of the cover table.

use super::odds::Odds;

/// A certainty below this is taken for 0, so that dividing by it cannot overflow.
pub(super) const LEAST_CERTAINTY: f64 = 1e-100;

/// What a symptom counts for, by whether it ends up explained.
#[derive(Debug, Clone, Copy)]
pub(super) struct Credit {
    pub(super) unexplained: f64,
    pub(super) explained: f64,
}

impl Credit {
    pub(super) const PRESENT: Self = Self { unexplained: 0.0, explained: 1.0 };
    pub(super) const ABSENT: Self = Self { unexplained: 1.0, explained: 0.0 };
    pub(super) const IGNORED: Self = Self { unexplained: 1.0, explained: 1.0 };
}

/// A symptom with a dimension in the cover table.
#[derive(Debug, Clone, Copy)]
pub(super) struct Dimension {
    pub(super) symptom: usize,
    /// The leak, widened by doubt: P(explained) and P(not explained) without any cause.
    pub(super) leak: Odds,
    pub(super) credit: Credit,
}

impl Dimension {
    pub(super) fn present(symptom: usize, leak: f64) -> Self {
        Self { symptom, leak: Odds::from_probability(leak), credit: Credit::PRESENT }
    }

    /// Virtual evidence and its constant factor.
    ///
    /// A likely symptom (t > 1/2) is a present one that doubt u = (1 − t)/t may explain as well:
    /// t·(1 − A) + (1 − t)·A = t·(1 − (1 − u)·A). That is one more leak. An unlikely symptom
    /// cannot be written so without a negative leak; it counts 1 when unexplained and t/(1 − t)
    /// when explained.
    pub(super) fn uncertain(symptom: usize, leak: f64, certainty: f64) -> (Self, f64) {
        let doubt = 1.0 - certainty;
        let plain = Self::present(symptom, leak);
        if certainty > 0.5 {
            let ignored = doubt / certainty;
            let present = leak + (1.0 - leak) * ignored;
            let absent = (1.0 - leak) * ((certainty - doubt) / certainty);
            (Self { leak: Odds { present, absent }, ..plain }, certainty)
        } else {
            let credit = Credit { unexplained: 1.0, explained: certainty / doubt };
            (Self { credit, ..plain }, doubt)
        }
    }

    /// True when an unexplained symptom counts for something, too.
    pub(super) fn is_tolerant(&self) -> bool {
        self.credit.unexplained > 0.0
    }
}
