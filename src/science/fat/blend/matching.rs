//! The closest blend to a wanted solids curve, with its residuals, what it contains and what to beware of.

use super::solver::{self, Problem, Unsolved};
use super::{AvailableFat, InteractionWarning, LeftOut, Requirements, known_interactions};
use crate::science::fat::SolidsCurve;
use crate::science::{Estimate, Method, Nonsense, input_checks};

const LEAST_SQUARES: Method = Method {
    name: "closest blend by least squares with shares of zero or more that add up to 100 %",
    source: "constrained linear least squares: Lawson and Hanson, Solving Least Squares Problems, 1974; ideal mixing of compatible fats: Blending of European shortening fats, University of Liege (abstract)",
    domain: "compatible fats; each fat measured on the lot in hand at the temperatures of the target",
};

const BY_MASS: Method = Method { name: "content of a blend, by mass", source: "mass balance", domain: "any blend" };

/// The share of one fat.
#[derive(Debug, Clone, PartialEq)]
pub struct FatShare {
    /// Name of the fat.
    pub name: String,
    /// Share of the blend, % by mass.
    pub percent: f64,
}

/// How the blend fits at one temperature.
#[derive(Debug, Clone, PartialEq)]
pub struct FitPoint {
    /// Temperature, °C.
    pub celsius: f64,
    /// Wanted solids, %.
    pub target: f64,
    /// Solids of the blend by ideal mixing, %; flagged when a curve had to be stretched.
    pub predicted: Estimate,
    /// Predicted less wanted, percentage points.
    pub residual: f64,
}

/// A blend and how good it is.
#[derive(Debug, Clone, PartialEq)]
pub struct FatBlend {
    /// Every usable fat in the order given; shares are zero or more and add up to 100 %.
    pub shares: Vec<FatShare>,
    /// Fit at each temperature of the target.
    pub fit: Vec<FitPoint>,
    /// Root mean square of the residuals, percentage points.
    pub root_mean_square_error: Estimate,
    /// Trans fatty acids of the blend, %; `None` when a fat in it is not known.
    pub trans: Option<Estimate>,
    /// Saturated fatty acids of the blend, %; `None` when a fat in it is not known.
    pub saturated: Option<Estimate>,
    /// Fats that the requirements ruled out.
    pub left_out: Vec<LeftOut>,
    /// Pairs in the blend that do not mix ideally.
    pub interactions: Vec<InteractionWarning>,
    /// Whether there are more usable fats than temperatures, so that other blends may fit as well.
    pub others_may_fit: bool,
}

/// Finds the blend of `fats` that comes closest to `target` at the target's temperatures.
///
/// # Errors
/// No fats, a fat with a faulty content, two fats of one name, a fat or target on another scale of solids, a
/// limit that is no percentage; also when the requirements leave no fat, or no blend can meet the limits.
pub fn match_curve(
    fats: &[AvailableFat],
    target: &SolidsCurve,
    requirements: &Requirements,
) -> Result<FatBlend, Nonsense> {
    check(fats, target, requirements)?;
    let (usable, left_out) = requirements.sort(fats);
    let mut nonsense = Nonsense::default();
    nonsense.unless(!usable.is_empty(), "requirements", "they rule out every fat");
    nonsense.or_ok()?;
    let shares = solver::solve(&problem(&usable, target, requirements)).map_err(refusal)?;
    Ok(describe(&usable, &shares, target, left_out))
}

fn check(fats: &[AvailableFat], target: &SolidsCurve, requirements: &Requirements) -> Result<(), Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::not_empty(&mut nonsense, "fats", fats);
    for (place, fat) in fats.iter().enumerate() {
        fat.check(&mut nonsense);
        let twice = fats.iter().take(place).any(|earlier| earlier.name == fat.name);
        nonsense.unless(!twice, &fat.name, "is given twice");
        nonsense.unless(
            fat.solids.scale() == target.scale(),
            &fat.name,
            "its solids are on another scale than the target",
        );
    }
    requirements.check(&mut nonsense);
    nonsense.or_ok()
}

fn problem(usable: &[&AvailableFat], target: &SolidsCurve, requirements: &Requirements) -> Problem {
    let temperatures = target.readings().iter();
    let row = |celsius: f64| usable.iter().map(|fat| fat.solids.read(celsius).value).collect();
    let limit = |most: Option<f64>, content: fn(&AvailableFat) -> Option<f64>| {
        most.map(|most| (usable.iter().map(|fat| content(fat).unwrap_or(0.0)).collect(), most))
    };
    Problem {
        solids: temperatures.map(|reading| row(reading.celsius)).collect(),
        target: target.readings().iter().map(|reading| reading.percent).collect(),
        limits: [
            limit(requirements.most_trans_percent, |fat| fat.trans_percent),
            limit(requirements.most_saturated_percent, |fat| fat.saturated_percent),
        ]
        .into_iter()
        .flatten()
        .collect(),
        fats: usable.len(),
    }
}

fn refusal(unsolved: Unsolved) -> Nonsense {
    let mut nonsense = Nonsense::default();
    let message = match unsolved {
        Unsolved::LimitsCannotBeMet => "no blend of the fats that remain keeps within the limits",
        Unsolved::NoAnswer => "the least-squares solver found no blend",
    };
    nonsense.unless(false, "requirements", message);
    nonsense
}

fn describe(usable: &[&AvailableFat], shares: &[f64], target: &SolidsCurve, left_out: Vec<LeftOut>) -> FatBlend {
    let mixed: Vec<(&AvailableFat, f64)> =
        usable.iter().copied().zip(shares.iter().copied()).filter(|(_, share)| *share > 0.0).collect();
    let fit: Vec<FitPoint> =
        target.readings().iter().map(|wanted| fit_point(&mixed, wanted.celsius, wanted.percent)).collect();
    let squares: f64 = fit.iter().map(|point| point.residual.powi(2)).sum();
    let error = (squares / fit.len() as f64).sqrt();
    let in_blend: Vec<&AvailableFat> = mixed.iter().map(|(fat, _)| *fat).collect();
    let stretched = fit.iter().any(|point| !point.predicted.outside_domain.is_empty());
    let interactions = known_interactions(&in_blend);
    FatBlend {
        root_mean_square_error: Estimate::new(error, "%", LEAST_SQUARES)
            .valid_if(!stretched, || "a fat was not measured at every temperature of the target".to_owned())
            .valid_if(interactions.is_empty(), || "fats in the blend do not mix ideally".to_owned()),
        shares: usable
            .iter()
            .zip(shares)
            .map(|(fat, share)| FatShare { name: fat.name.clone(), percent: share * 100.0 })
            .collect(),
        trans: content(&mixed, |fat| fat.trans_percent),
        saturated: content(&mixed, |fat| fat.saturated_percent),
        others_may_fit: usable.len() > target.readings().len(),
        fit,
        left_out,
        interactions,
    }
}

fn fit_point(mixed: &[(&AvailableFat, f64)], celsius: f64, target: f64) -> FitPoint {
    let mut predicted = Estimate::new(0.0, "%", LEAST_SQUARES);
    for (fat, share) in mixed {
        let solids = fat.solids.read(celsius);
        predicted.value += share * solids.value;
        let remarks = solids.outside_domain.iter().map(|remark| format!("{}: {remark}", fat.name));
        predicted.outside_domain.extend(remarks);
    }
    FitPoint { celsius, target, residual: predicted.value - target, predicted }
}

fn content(mixed: &[(&AvailableFat, f64)], of: fn(&AvailableFat) -> Option<f64>) -> Option<Estimate> {
    let contents = mixed.iter().map(|(fat, share)| Some(of(fat)? * share));
    let value = contents.sum::<Option<f64>>()?;
    Some(Estimate::new(value, "%", BY_MASS))
}
