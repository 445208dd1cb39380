//! Whether a thickened filling weeps after freezing.
//!
//! No published figure in grams of water per 100 g was found for the pastes of the trade, so this gives a class
//! and what is known to help, never an amount.

use crate::science::{Nonsense, input_checks};

const HANDBOOK: &str =
    "from memory: Phillips and Williams, Handbook of Hydrocolloids; Imeson, Thickening and Gelling Agents";
const TAPIOCA: &str = "Tunnarut et al., Freeze-thaw stability of tapioca starch gels, 2014, abstract: 25 % gel, nine cycles of -25 °C 22 h and 40 °C 2 h";
const MAIZE: &str = "Ferrero et al., Int. J. Food Sci. Technol. 28 (1993) 481-498, abstract: 10 % maize starch paste";

/// What thickens or sets the filling.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Thickener {
    /// Native maize starch.
    NativeMaize,
    /// Native tapioca starch.
    NativeTapioca,
    /// Waxy maize starch, cross-linked and hydroxypropylated.
    ModifiedWaxyMaize,
    /// Agar.
    Agar,
    /// Kappa carrageenan.
    KappaCarrageenan,
    /// Iota carrageenan.
    IotaCarrageenan,
}

/// How a paste or gel stands freezing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stability {
    /// Weeps after the first cycle.
    Poor,
    /// Releases ever more water with every cycle.
    FallsWithCycles,
    /// Stands several cycles.
    Good,
}

/// A filling that is to be frozen.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StarchPaste {
    /// What thickens it.
    pub thickener: Thickener,
    /// Xanthan, % of the filling.
    pub xanthan_percent: f64,
    /// Sucrose, % of the filling.
    pub sucrose_percent: f64,
    /// Speed of the freezing front, mm/h, when it is known.
    pub freezing_front_mm_per_hour: Option<f64>,
    /// pH, when it is known.
    pub ph: Option<f64>,
}

/// What to expect.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FreezeThaw {
    /// Class of the thickener alone.
    pub stability: Stability,
    /// Source of the class.
    pub source: &'static str,
    /// What makes it better or worse here, each with its source.
    pub remarks: Vec<(&'static str, &'static str)>,
}

/// Class of a filling and what helps it.
///
/// # Errors
/// A share that is no percentage, a negative speed, a pH that is not 0 to 14.
pub fn freeze_thaw(paste: &StarchPaste) -> Result<FreezeThaw, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::percent(&mut nonsense, "xanthan", paste.xanthan_percent);
    input_checks::percent(&mut nonsense, "sucrose", paste.sucrose_percent);
    if let Some(speed) = paste.freezing_front_mm_per_hour {
        input_checks::not_negative(&mut nonsense, "freezing_front", speed);
    }
    if let Some(ph) = paste.ph {
        input_checks::ph(&mut nonsense, "ph", ph);
    }
    nonsense.or_ok()?;
    let (stability, source) = class(paste.thickener);
    Ok(FreezeThaw { stability, source, remarks: remarks(paste) })
}

fn class(thickener: Thickener) -> (Stability, &'static str) {
    match thickener {
        Thickener::NativeTapioca => (Stability::FallsWithCycles, TAPIOCA),
        Thickener::NativeMaize | Thickener::Agar | Thickener::KappaCarrageenan => (Stability::Poor, HANDBOOK),
        Thickener::ModifiedWaxyMaize | Thickener::IotaCarrageenan => (Stability::Good, HANDBOOK),
    }
}

fn remarks(paste: &StarchPaste) -> Vec<(&'static str, &'static str)> {
    use Thickener::{KappaCarrageenan, ModifiedWaxyMaize, NativeMaize, NativeTapioca};
    let starch = matches!(paste.thickener, NativeMaize | NativeTapioca | ModifiedWaxyMaize);
    let slow = paste.freezing_front_mm_per_hour.is_some_and(|speed| speed < 1.0);
    let sour = paste.ph.is_some_and(|ph| ph < 3.5);
    let known = [
        (
            paste.thickener == NativeMaize && paste.xanthan_percent >= 0.3,
            ("0.3 % xanthan kept the texture of maize paste on freezing; ice and retrogradation went on", MAIZE),
        ),
        (
            paste.thickener == NativeTapioca && paste.xanthan_percent > 0.0,
            ("xanthan lowers the water that tapioca gel releases", TAPIOCA),
        ),
        (
            paste.thickener == NativeTapioca && paste.sucrose_percent >= 10.0,
            ("10 to 20 % sucrose lowers the water that tapioca gel releases", TAPIOCA),
        ),
        (
            paste.thickener == NativeMaize && slow,
            ("a freezing front slower than 1 mm/h makes maize paste spongy: freeze faster", MAIZE),
        ),
        (paste.thickener == KappaCarrageenan, ("locust bean gum or iota carrageenan lowers the weeping", HANDBOOK)),
        (starch && sour, ("below pH 3.5 hot acid thins starch: cross-linked starch, or acid after cooking", HANDBOOK)),
    ];
    known.into_iter().filter(|(applies, _)| *applies).map(|(_, remark)| remark).collect()
}
