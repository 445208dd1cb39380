//! The interaction of pH and water activity in the definition of time/temperature control for safety (TCS) food.
//!
//! The two tables sort foods into those that may be held without time or temperature control and those that need
//! a product assessment. They say nothing of what else can be wrong with a food.

use super::{Method, Nonsense, input_checks};

const TABLES: Method = Method {
    name: "interaction of pH and water activity, Tables A and B",
    source: "FDA Food Code 2017 and later, definition of time/temperature control for safety food, Tables A and B, as adopted in Tenn. Comp. R. and Regs. 0080-04-09-.01",
    domain: "finished food at equilibrium; the text in force at the place of sale decides",
};

/// What must be said beside every outcome.
pub const CAUTION: &str = "This is the wording of a table, not a finding that a product is safe. The local food authority and the code in force there decide. Readings must come from the finished product at equilibrium, and those near a limit must be repeated; until an assessment says otherwise, treat the food as needing time and temperature control.";

/// How the food was treated: this picks the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Treatment {
    /// Heat-treated to destroy vegetative cells and then packaged: Table A.
    HeatTreatedThenPackaged,
    /// Not heat-treated: Table B.
    NotHeatTreated,
    /// Heat-treated but not packaged: Table B.
    HeatTreatedNotPackaged,
}

/// One of the two tables.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Table {
    /// Control of spores: food heat-treated to destroy vegetative cells and then packaged.
    A,
    /// Control of vegetative cells and spores: food not heat-treated, or heat-treated but not packaged.
    B,
}

/// The outcome in a cell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Designation {
    /// The table designates the food as not needing time/temperature control for safety.
    NonTcs,
    /// Product assessment required.
    ProductAssessmentRequired,
}

impl Designation {
    /// The designation in the words of the table.
    #[must_use]
    pub fn wording(self) -> &'static str {
        match self {
            Self::NonTcs => "non-TCS food",
            Self::ProductAssessmentRequired => "product assessment required",
        }
    }
}

/// Readings of a finished food.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reading {
    /// Equilibrium pH, 0 to 14.
    pub ph: f64,
    /// Water activity, 0 to 1.
    pub water_activity: f64,
    /// How the food was treated.
    pub treatment: Treatment,
}

/// The cell of the table that a food falls in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Outcome {
    /// The table that applies.
    pub table: Table,
    /// The band of water activity, as the table words it.
    pub water_activity_band: &'static str,
    /// The band of pH, as the table words it.
    pub ph_band: &'static str,
    /// What stands in the cell.
    pub designation: Designation,
    /// Where the table comes from.
    pub method: Method,
    /// [`CAUTION`].
    pub caution: &'static str,
}

/// Looks a food up in the table for its treatment. It never declares a product safe.
///
/// # Errors
/// A pH that is not 0 to 14, a water activity that is not 0 to 1.
pub fn designation(reading: &Reading) -> Result<Outcome, Nonsense> {
    let mut nonsense = Nonsense::default();
    input_checks::ph(&mut nonsense, "ph", reading.ph);
    nonsense.unless(
        (0.0..=1.0).contains(&reading.water_activity),
        "water_activity",
        format!("{} is not a water activity between 0 and 1", reading.water_activity),
    );
    nonsense.or_ok()?;
    let table = match reading.treatment {
        Treatment::HeatTreatedThenPackaged => Table::A,
        Treatment::NotHeatTreated | Treatment::HeatTreatedNotPackaged => Table::B,
    };
    let (water_activity_band, ph_band, designation) = match table {
        Table::A => table_a(reading.ph, reading.water_activity),
        Table::B => table_b(reading.ph, reading.water_activity),
    };
    Ok(Outcome { table, water_activity_band, ph_band, designation, method: TABLES, caution: CAUTION })
}

type Cell = (&'static str, &'static str, Designation);

fn table_a(ph: f64, water_activity: f64) -> Cell {
    use Designation::{NonTcs, ProductAssessmentRequired as Pa};
    let (ph_band, column) = match ph {
        ph if ph <= 4.6 => ("4.6 or less", 0),
        ph if ph <= 5.6 => ("above 4.6 to 5.6", 1),
        _ => ("above 5.6", 2),
    };
    let (band, row) = match water_activity {
        aw if aw <= 0.92 => ("0.92 or less", [NonTcs, NonTcs, NonTcs]),
        aw if aw <= 0.95 => ("above 0.92 to 0.95", [NonTcs, NonTcs, Pa]),
        _ => ("above 0.95", [NonTcs, Pa, Pa]),
    };
    (band, ph_band, cell(&row, column))
}

fn table_b(ph: f64, water_activity: f64) -> Cell {
    use Designation::{NonTcs, ProductAssessmentRequired as Pa};
    let (ph_band, column) = match ph {
        ph if ph < 4.2 => ("below 4.2", 0),
        ph if ph <= 4.6 => ("4.2 to 4.6", 1),
        ph if ph <= 5.0 => ("above 4.6 to 5.0", 2),
        _ => ("above 5.0", 3),
    };
    let (band, row) = match water_activity {
        aw if aw < 0.88 => ("below 0.88", [NonTcs, NonTcs, NonTcs, NonTcs]),
        aw if aw <= 0.90 => ("0.88 to 0.90", [NonTcs, NonTcs, NonTcs, Pa]),
        aw if aw <= 0.92 => ("above 0.90 to 0.92", [NonTcs, NonTcs, Pa, Pa]),
        _ => ("above 0.92", [NonTcs, Pa, Pa, Pa]),
    };
    (band, ph_band, cell(&row, column))
}

/// A column that a table does not have cannot be asked for; if it were, the cautious designation stands.
fn cell(row: &[Designation], column: usize) -> Designation {
    row.get(column).copied().unwrap_or(Designation::ProductAssessmentRequired)
}
