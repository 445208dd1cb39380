//! Two-level factorial designs and their half fractions.
//!
//! Full designs of two and three factors, and the halves 2^(3-1) and 2^(4-1), in standard (Yates) order (Box, Hunter and
//! Hunter, Statistics for Experimenters, 2005, chapters 5 and 6 with the table of two-level fractional factorials;
//! NIST/SEMATECH e-Handbook of Statistical Methods, 5.3.3.4). Of the two halves the one is taken that contains the run
//! with every factor low: that run is today's setting, the control. For three factors this is C = -AB.

use crate::science::Nonsense;

/// Letters of the factors.
const LETTERS: [char; 4] = ['A', 'B', 'C', 'D'];

/// Whether every combination is run.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fraction {
    /// All combinations.
    Full,
    /// Half of them.
    Half,
}

/// A two-level design; the factors are A, B, C, D.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TwoLevelDesign {
    /// Name, for example `2^(4-1)`.
    pub name: String,
    /// Number of factors.
    pub factors: usize,
    /// Levels of each run, factor by factor, in standard order; `true` is high.
    pub runs: Vec<Vec<bool>>,
    /// Generator of the last factor, for example `D = ABC`; none in a full design.
    pub generator: Option<String>,
    /// Defining relation, for example `I = ABCD`.
    pub defining_relation: Option<String>,
    /// Resolution in Roman figures.
    pub resolution: Option<&'static str>,
    /// Effects that cannot be told apart, main effects first.
    pub aliases: Vec<Alias>,
}

/// Two effects that the design cannot tell apart.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Alias {
    /// The one, of one or two factors.
    pub effect: String,
    /// The other; with a sign where it counts the other way.
    pub with: String,
}

impl TwoLevelDesign {
    /// A run in Yates' notation: the small letters of the factors that are high, `(1)` where all are low.
    #[must_use]
    pub fn label(levels: &[bool]) -> String {
        let high = LETTERS.iter().zip(levels).filter(|(_, high)| **high);
        let label: String = high.map(|(letter, _)| letter.to_ascii_lowercase()).collect();
        if label.is_empty() { "(1)".to_owned() } else { label }
    }
}

/// The design of so many factors: 2 (full), 3 (full or half) or 4 (half).
///
/// # Errors
/// [`Nonsense`] for any other number of factors or fraction.
pub fn two_level_design(factors: f64, fraction: Fraction) -> Result<TwoLevelDesign, Nonsense> {
    let mut nonsense = Nonsense::default();
    let known = match fraction {
        Fraction::Full => [2_usize, 3],
        Fraction::Half => [3, 4],
    };
    #[allow(clippy::cast_precision_loss)] // two to four
    let found = known.into_iter().find(|count| *count as f64 == factors);
    let [fewest, most] = known;
    nonsense.unless(found.is_some(), "factors", format!("`{factors}` is not {fewest} or {most}"));
    nonsense.or_ok()?;
    let count = found.unwrap_or(fewest);
    Ok(match fraction {
        Fraction::Full => full(count),
        Fraction::Half => half(count),
    })
}

fn full(factors: usize) -> TwoLevelDesign {
    TwoLevelDesign {
        name: format!("2^{factors}"),
        factors,
        runs: combinations(factors),
        generator: None,
        defining_relation: None,
        resolution: None,
        aliases: Vec::new(),
    }
}

fn half(factors: usize) -> TwoLevelDesign {
    let all = (1_usize << factors) - 1;
    let last = 1 << (factors - 1);
    // The control has every factor low: their product has this sign in it, and so in the whole half.
    let is_even = factors.is_multiple_of(2);
    let sign = if is_even { "" } else { "-" };
    let runs = combinations(factors - 1).into_iter().map(|mut levels| {
        let is_odd = levels.iter().filter(|high| **high).count() % 2 == 1;
        levels.push(is_odd);
        levels
    });
    let letters = LETTERS.iter().take(factors).count();
    let pairs = (0..letters).flat_map(|one| (one + 1..letters).map(move |other| (1 << one) | (1 << other)));
    // Each pair of effects once: a pair of factors whose partner has been told is left out.
    let told = (0..letters).map(|one| 1_usize << one).chain(pairs.filter(|pair| *pair < all ^ pair && factors > 3));
    let aliases =
        told.map(|effect| Alias { effect: name(effect), with: format!("{sign}{}", name(all ^ effect)) }).collect();
    TwoLevelDesign {
        name: format!("2^({factors}-1)"),
        factors,
        runs: runs.collect(),
        generator: Some(format!("{} = {sign}{}", name(last), name(all ^ last))),
        defining_relation: Some(format!("I = {sign}{}", name(all))),
        resolution: Some(if is_even { "IV" } else { "III" }),
        aliases,
    }
}

/// All combinations in standard order: the first factor changes fastest.
fn combinations(factors: usize) -> Vec<Vec<bool>> {
    (0..1_usize << factors).map(|run| (0..factors).map(|factor| run >> factor & 1 == 1).collect()).collect()
}

/// Letters of the factors of an effect, one bit a factor.
fn name(effect: usize) -> String {
    LETTERS.iter().enumerate().filter(|(place, _)| effect >> place & 1 == 1).map(|(_, letter)| letter).collect()
}
