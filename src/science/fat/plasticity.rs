//! What a share of solids means in the hand and in the mouth.

use super::{SolidsCurve, SolidsScale};
use crate::science::Estimate;

// Source: McGee, On Food and Cooking, 2004, fat consistency: good plasticity at 15 to 25 % solids.
const PLASTIC: (f64, f64) = (15.0, 25.0);
// From memory: O'Brien, Fats and Oils; Rajah, Fats in Food Technology. Below 10 % oily, above 40 % brittle;
// other texts say 12 to 40 and 15 to 35.
const WORKABLE: (f64, f64) = (10.0, 40.0);
/// Limit at 33.3 °C. From memory: after Charteris and Keogh 1991.
const NOT_WAXY_AT_33: f64 = 3.5;
/// Limit at 35 to 37 °C. From memory: fat handbooks, 3 to 6 by author.
const NOT_WAXY_AT_BODY: f64 = 5.0;

/// How a fat handles at a share of solids.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Consistency {
    /// Below 10 % solids: the fat oils out and smears.
    Oily,
    /// 10 to 15 %: soft.
    Soft,
    /// 15 to 25 %: good plasticity.
    Plastic,
    /// 25 to 40 %: firm, still workable; roll-in fats stand here.
    Firm,
    /// Above 40 %: it cracks when bent.
    Brittle,
}

impl Consistency {
    /// What to expect of the fat in work.
    #[must_use]
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Oily => "is oily: it smears and holds little air",
            Self::Soft => "is soft, close to oiling out",
            Self::Plastic => "is plastic: it creams and sheets well",
            Self::Firm => "is firm but workable, as a roll-in fat",
            Self::Brittle => "is brittle: it cracks and tears instead of stretching",
        }
    }
}

/// Consistency at a share of solids (solid fat content, %). Texturising and crystal form shift the limits: two
/// fats with equal solids can differ.
#[must_use]
pub fn consistency(solids_percent: f64) -> Consistency {
    match solids_percent {
        solids if solids > WORKABLE.1 => Consistency::Brittle,
        solids if solids > PLASTIC.1 => Consistency::Firm,
        solids if solids >= PLASTIC.0 => Consistency::Plastic,
        solids if solids >= WORKABLE.0 => Consistency::Soft,
        _ => Consistency::Oily,
    }
}

/// A range of temperatures, °C.
#[derive(Debug, Clone, PartialEq)]
pub struct Span {
    /// Coldest temperature; flagged when the curve begins inside the range.
    pub from: Estimate,
    /// Warmest temperature; flagged when the curve ends inside the range.
    pub to: Estimate,
}

/// The temperatures at which a fat can be worked.
#[derive(Debug, Clone, PartialEq)]
pub struct PlasticRange {
    /// 15 to 25 % solids; `None` when the curve never comes into it.
    pub good: Option<Span>,
    /// 10 to 40 % solids; `None` when the curve never comes into it.
    pub workable: Option<Span>,
}

/// The plastic range of a fat, read off its solids curve. On the solid fat index the limits do not hold, and
/// every temperature is flagged.
#[must_use]
pub fn plastic_range(curve: &SolidsCurve) -> PlasticRange {
    PlasticRange { good: span(curve, PLASTIC), workable: span(curve, WORKABLE) }
}

fn span(curve: &SolidsCurve, (least, most): (f64, f64)) -> Option<Span> {
    let coldest = curve.readings().first()?;
    let to = curve.warmest_with(least)?;
    let from = match curve.warmest_with(most) {
        // The warmest reading is still harder than the range, so the curve never comes into it.
        Some(from) if !from.outside_domain.is_empty() && curve.read(from.value).value > most => {
            return None;
        }
        Some(from) => Estimate { outside_domain: Vec::new(), ..from },
        None => Estimate { value: coldest.celsius, outside_domain: Vec::new(), ..to.clone() }
            .valid_if(false, || format!("the coldest reading is already below {most} % solids")),
    };
    let content = curve.scale() == SolidsScale::SolidFatContent;
    let remark = || "the limits are for solid fat content, not for the solid fat index".to_owned();
    Some(Span { from: from.valid_if(content, remark), to: to.valid_if(content, remark) })
}

/// How a fat melts when eaten.
#[derive(Debug, Clone, PartialEq)]
pub struct Melt {
    /// Solids at 33.3 °C, %; a waxy film is felt above 3.5.
    pub at_33: Estimate,
    /// Solids at 37 °C, %; a waxy film is felt above about 5 (3 to 6 by author).
    pub at_body: Estimate,
    /// Whether either limit is passed; `None` when the curve ends too early to tell. Both limits are from memory
    /// of named works.
    pub waxy: Option<bool>,
}

/// Judges the melt of a fat at mouth and body temperature.
#[must_use]
pub fn melt_in_the_mouth(curve: &SolidsCurve) -> Melt {
    let limits = [(33.3, NOT_WAXY_AT_33), (37.0, NOT_WAXY_AT_BODY)];
    let judged = limits.map(|(celsius, limit)| exceeds(curve, celsius, limit));
    let waxy = if judged.contains(&Some(true)) {
        Some(true)
    } else if judged.contains(&None) {
        None
    } else {
        Some(false)
    };
    Melt { at_33: curve.read(33.3), at_body: curve.read(37.0), waxy }
}

/// Beyond its warmest reading a curve can only fall, below its coldest only rise: that decides some cases.
fn exceeds(curve: &SolidsCurve, celsius: f64, limit: f64) -> Option<bool> {
    let solids = curve.read(celsius).value;
    let measured = |warm: bool| {
        curve.readings().iter().any(
            |reading| {
                if warm { reading.celsius >= celsius } else { reading.celsius <= celsius }
            },
        )
    };
    match (measured(false), measured(true)) {
        (true, true) => Some(solids > limit),
        (true, false) => (solids <= limit).then_some(false),
        (false, _) => (solids > limit).then_some(true),
    }
}
