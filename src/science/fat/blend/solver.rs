//! Least squares on the simplex: min |S x − t|² with x ≥ 0, Σx = 1 and linear upper limits.
//!
//! A general convex solver is used because it keeps the sum and the limits exactly and *proves* when no blend can
//! meet them. Non-negative least squares alone (Lawson and Hanson 1974) has neither.

use clarabel::algebra::CscMatrix;
use clarabel::solver::SupportedConeT::{NonnegativeConeT, ZeroConeT};
use clarabel::solver::{DefaultSettings, DefaultSolver, IPSolver, SolverStatus};

/// Everything in percent is divided by this: the solver works best with numbers around one.
const PERCENT: f64 = 100.0;
/// Shares below this are the solver's way of saying zero (its tolerance is 1e-8).
const NOTHING: f64 = 1e-6;

/// A least-squares problem on the simplex; all figures in %.
pub(super) struct Problem {
    /// One row a temperature, one column a fat: solids, %.
    pub(super) solids: Vec<Vec<f64>>,
    /// Wanted solids at each temperature, %.
    pub(super) target: Vec<f64>,
    /// Each limit: content of every fat and the most the blend may have, %.
    pub(super) limits: Vec<(Vec<f64>, f64)>,
    /// Number of fats.
    pub(super) fats: usize,
}

/// Why there is no solution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unsolved {
    /// No blend meets the limits.
    LimitsCannotBeMet,
    /// The solver stopped without an answer.
    NoAnswer,
}

/// The shares (0 to 1, sum 1) that come closest.
pub(super) fn solve(problem: &Problem) -> Result<Vec<f64>, Unsolved> {
    let (quadratic, linear) = objective(problem);
    let (constraints, bounds) = constraints(problem);
    let cones = [ZeroConeT(1), NonnegativeConeT(problem.fats + problem.limits.len())];
    let settings = DefaultSettings { verbose: false, ..DefaultSettings::default() };
    let mut solver = DefaultSolver::new(&quadratic, &linear, &constraints, &bounds, &cones, settings)
        .map_err(|_| Unsolved::NoAnswer)?;
    solver.solve();
    match solver.solution.status {
        SolverStatus::Solved | SolverStatus::AlmostSolved => Ok(tidy(&solver.solution.x)),
        SolverStatus::PrimalInfeasible | SolverStatus::AlmostPrimalInfeasible => Err(Unsolved::LimitsCannotBeMet),
        _ => Err(Unsolved::NoAnswer),
    }
}

/// ½ xᵀ(SᵀS)x − (Sᵀt)ᵀx, upper triangle as the solver wants it.
fn objective(problem: &Problem) -> (CscMatrix<f64>, Vec<f64>) {
    let mut entries = Triplets::default();
    for first in 0..problem.fats {
        for second in first..problem.fats {
            let product = problem.solids.iter().map(|row| entry(row, first) * entry(row, second)).sum();
            entries.push(first, second, product);
        }
    }
    let linear = (0..problem.fats).map(|fat| {
        let rows = problem.solids.iter().zip(&problem.target);
        -rows.map(|(row, target)| entry(row, fat) * target / PERCENT).sum::<f64>()
    });
    (entries.matrix(problem.fats, problem.fats), linear.collect())
}

/// Σx = 1, −x ≤ 0 and, for each limit, Σ(content − most) x ≤ 0, which is the limit because Σx = 1.
fn constraints(problem: &Problem) -> (CscMatrix<f64>, Vec<f64>) {
    let mut entries = Triplets::default();
    for fat in 0..problem.fats {
        entries.push(0, fat, 1.0);
        entries.push(1 + fat, fat, -1.0);
        for (place, (contents, most)) in problem.limits.iter().enumerate() {
            entries.push(1 + problem.fats + place, fat, entry(contents, fat) - most / PERCENT);
        }
    }
    let rows = 1 + problem.fats + problem.limits.len();
    let bounds = std::iter::once(1.0).chain(std::iter::repeat(0.0)).take(rows).collect();
    (entries.matrix(rows, problem.fats), bounds)
}

/// Entry of a row as a fraction; a short row counts as zero.
fn entry(row: &[f64], place: usize) -> f64 {
    row.get(place).copied().unwrap_or(0.0) / PERCENT
}

/// Drops the solver's crumbs and brings the sum back to exactly one.
fn tidy(shares: &[f64]) -> Vec<f64> {
    let kept: Vec<f64> = shares.iter().map(|share| if *share < NOTHING { 0.0 } else { *share }).collect();
    let total: f64 = kept.iter().sum();
    kept.iter().map(|share| share / total).collect()
}

#[derive(Default)]
struct Triplets {
    rows: Vec<usize>,
    columns: Vec<usize>,
    values: Vec<f64>,
}

impl Triplets {
    fn push(&mut self, row: usize, column: usize, value: f64) {
        self.rows.push(row);
        self.columns.push(column);
        self.values.push(value);
    }

    fn matrix(self, rows: usize, columns: usize) -> CscMatrix<f64> {
        CscMatrix::new_from_triplets(rows, columns, self.rows, self.columns, self.values)
    }
}
