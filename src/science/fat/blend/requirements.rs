//! What a blend must respect, and which fats that rules out.

use super::AvailableFat;
use crate::science::{Nonsense, input_checks};

/// What the blend must respect. The default asks for nothing.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Requirements {
    /// Leave out every fat with partially hydrogenated oil, as the law of many markets asks.
    pub no_partially_hydrogenated: bool,
    /// Leave out every fat from an animal, milk fat included.
    pub no_animal_fat: bool,
    /// Most trans fatty acids, % of the blend. Laws that set a limit mostly set 2 g per 100 g fat
    /// ((EU) 2019/649, which does not count natural ruminant trans; WHO REPLACE); check the law of the market.
    pub most_trans_percent: Option<f64>,
    /// Most saturated fatty acids, % of the blend.
    pub most_saturated_percent: Option<f64>,
}

/// A fat that was not considered.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftOut {
    /// Name of the fat.
    pub name: String,
    /// Why, lower case.
    pub reason: &'static str,
}

impl Requirements {
    pub(super) fn check(&self, nonsense: &mut Nonsense) {
        if let Some(percent) = self.most_trans_percent {
            input_checks::percent(nonsense, "most_trans", percent);
        }
        if let Some(percent) = self.most_saturated_percent {
            input_checks::percent(nonsense, "most_saturated", percent);
        }
    }

    /// Why a fat is left out. An unknown content under a limit rules the fat out: unknown is not zero.
    fn against(&self, fat: &AvailableFat) -> Option<&'static str> {
        if self.no_partially_hydrogenated && fat.partially_hydrogenated {
            Some("is partially hydrogenated")
        } else if self.no_animal_fat && fat.kind.is_animal() {
            Some("is an animal fat")
        } else if self.most_trans_percent.is_some() && fat.trans_percent.is_none() {
            Some("its trans fatty acids are not known")
        } else if self.most_saturated_percent.is_some() && fat.saturated_percent.is_none() {
            Some("its saturated fatty acids are not known")
        } else {
            None
        }
    }

    /// The fats that may be used, and those that may not.
    pub(super) fn sort<'a>(&self, fats: &'a [AvailableFat]) -> (Vec<&'a AvailableFat>, Vec<LeftOut>) {
        let mut usable = Vec::new();
        let mut left_out = Vec::new();
        for fat in fats {
            match self.against(fat) {
                Some(reason) => left_out.push(LeftOut { name: fat.name.clone(), reason }),
                None => usable.push(fat),
            }
        }
        (usable, left_out)
    }
}
