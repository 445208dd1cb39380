//! Amounts of a formula that are changed.

use crate::case::{Case, Formula, FormulaLine, LineContent};
use crate::diagnosis::{Diagnostician, measure};
use crate::formulas::Weighed;
use crate::knowledge::{Amount, Basis, Declarations, How, Key, Portion, Reading, Setting};
use crate::science::formula::{Part, Stage};
use crate::units::{Unit, convert};

/// How large an amount is, in the unit of the basis.
#[derive(Debug, Clone, Copy)]
pub(crate) enum Size {
    /// kg in the batch.
    Mass(f64),
    /// % on flour.
    OnFlour(f64),
    /// % of the mass of a part.
    OfPart(Part, f64),
    /// What a computed reading shall read, in its unit.
    Reads(Key<Reading>, f64),
    /// All that is there.
    All,
}

impl Size {
    /// The size that a setting of the rules gives an amount with a value in the setting's unit.
    ///
    /// # Errors
    /// A unit that does not convert to that of the basis, in words.
    pub(crate) fn of(setting: &Setting, amount: &Amount, value: f64, declared: &Declarations) -> Result<Self, String> {
        let converted = |wanted: &Unit| convert(value, &setting.unit, wanted).map_err(|fault| fault.to_string());
        let in_unit = |code: &str| converted(&Unit::parse(code).map_err(|fault| fault.to_string())?);
        Ok(match amount.basis {
            Basis::Batch => Self::Mass(in_unit("kg")?),
            Basis::Flour => Self::OnFlour(in_unit("%")?),
            Basis::Part(part) => Self::OfPart(part, in_unit("%")?),
            Basis::Reading(key) => Self::Reads(key, converted(&declared.readings[key].unit)?),
        })
    }
}

/// An amount before and after, in the unit of the formula.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Changed {
    pub(crate) before: f64,
    pub(crate) after: f64,
}

/// Share of a difference that is no difference.
const TOLERANCE: f64 = 1e-9;

/// Steps after which an amount is given up.
const MOST_STEPS: usize = 60;

/// Changes an amount in the formula of a case.
///
/// # Errors
/// Why it cannot be changed.
pub(crate) fn change(
    case: &mut Case,
    diagnostician: &Diagnostician,
    portion: &Portion,
    how: How,
    size: Size,
) -> Result<Changed, String> {
    let declared = &diagnostician.knowledge().declared;
    let main = declared.main_stage(case.product);
    let Some(formula) = &mut case.formula else { return Err("the case gives no formula".to_owned()) };
    let weighed = Weighed::new(formula, declared, main).map_err(|nonsense| nonsense.to_string())?;
    // A line that goes must not make a whole formula a fragment.
    let whole = weighed.is_whole();
    formula.complete = Some(whole);
    let part = if let Size::OfPart(part, _) = size { Some(part) } else { None };
    let standing = Standing::of(formula, declared, main, portion, part);
    let before = standing.present;
    let after = match size {
        Size::Reads(reading, wanted) => reached(case, diagnostician, portion, &standing, reading, wanted)?,
        Size::All => 0.0,
        _ => standing.after(how, size, formula)?,
    };
    let Some(formula) = &mut case.formula else { return Err("the case gives no formula".to_owned()) };
    standing.set(formula, portion, after)?;
    Ok(Changed { before, after })
}

/// What stands in a formula where an amount is to be changed.
struct Standing {
    /// The lines that are changed.
    lines: Vec<usize>,
    /// What they weigh together.
    present: f64,
    /// All flour of the main part, in the unit of the formula.
    flour: f64,
    /// Flour among the lines that are changed.
    flour_in_lines: f64,
    /// All lines of the part.
    part_mass: f64,
    /// Stage of a line that is added.
    stage: Option<Stage>,
}

impl Standing {
    fn of(formula: &Formula, declared: &Declarations, main: Stage, portion: &Portion, part: Option<Part>) -> Self {
        let part_of = |line: &FormulaLine| line.stage.unwrap_or(main).part();
        let meant = |line: &FormulaLine| matches(line, declared, portion);
        let places = |wanted: Option<Part>| -> Vec<usize> {
            let lines = formula.lines.iter().enumerate();
            let fits = |line: &FormulaLine| meant(line) && wanted.is_none_or(|part| part_of(line) == part);
            lines.filter(|(_, line)| fits(line)).map(|(place, _)| place).collect()
        };
        // Where no part is said, the main one is meant, and another only where the main one has none of it.
        let mut lines = places(Some(part.unwrap_or(main.part())));
        if lines.is_empty() && part.is_none() {
            lines = places(None);
        }
        let sum = |of: &dyn Fn(usize, &FormulaLine) -> bool| -> f64 {
            let lines = formula.lines.iter().enumerate().filter(|(place, line)| of(*place, line));
            lines.map(|(_, line)| line.amount).sum()
        };
        let listed = sum(&|_, line| is_flour(line, declared) && part_of(line) == main.part());
        Self {
            present: sum(&|place, _| lines.contains(&place)),
            // Percentages are on 100 parts of flour, listed or not.
            flour: if listed > 0.0 || formula.in_mass { listed } else { 100.0 },
            flour_in_lines: sum(&|place, line| lines.contains(&place) && is_flour(line, declared)),
            part_mass: sum(&|_, line| part_of(line) == part.unwrap_or(main.part())),
            stage: part.filter(|part| *part != main.part()).map(main_stage),
            lines,
        }
    }

    /// The amount after a change, in the unit of the formula.
    fn after(&self, how: How, size: Size, formula: &Formula) -> Result<f64, String> {
        let by = match size {
            Size::Mass(mass) if formula.in_mass => mass,
            Size::Mass(_) => return Err("the formula is in % on flour, the quantity in kg".to_owned()),
            Size::OnFlour(_) if self.flour <= 0.0 => return Err("the formula names no flour".to_owned()),
            // A flour that is dosed has its share once it stands among the others.
            Size::OnFlour(share) if how == How::Doses && self.flour_in_lines > 0.0 => {
                shared(share, self.flour - self.flour_in_lines)?
            }
            Size::OnFlour(share) => self.flour * share / 100.0,
            Size::OfPart(_, share) if how == How::Doses => shared(share, self.part_mass - self.present)?,
            Size::OfPart(_, share) => self.part_mass * share / 100.0,
            Size::Reads(..) | Size::All => 0.0,
        };
        let after = match how {
            How::Doses => by,
            How::Adds => self.present + by,
            How::TakesOut => self.present - by,
        };
        if after < -TOLERANCE * self.present.max(1.0) {
            return Err("it would take out more than stands there".to_owned());
        }
        Ok(after.max(0.0))
    }

    /// Sets the lines to an amount together, in proportion.
    fn set(&self, formula: &mut Formula, portion: &Portion, after: f64) -> Result<(), String> {
        if self.present > 0.0 {
            let factor = after / self.present;
            let lines = formula.lines.iter_mut().enumerate();
            lines.filter(|(place, _)| self.lines.contains(place)).for_each(|(_, line)| line.amount *= factor);
        } else if after > 0.0 {
            self.add(formula, portion, after)?;
        } else {
            return Err("there is none of it to take out".to_owned());
        }
        formula.lines.retain(|line| line.amount > 0.0);
        Ok(())
    }

    fn add(&self, formula: &mut Formula, portion: &Portion, amount: f64) -> Result<(), String> {
        if let Some(line) = self.lines.first().and_then(|place| formula.lines.get_mut(*place)) {
            line.amount = amount;
            return Ok(());
        }
        let Portion::Ingredients(keys) = portion else {
            return Err("no line of the formula has the role".to_owned());
        };
        let Some(key) = keys.first() else { return Err("no ingredient is named".to_owned()) };
        formula.lines.push(FormulaLine { content: LineContent::Declared(*key), amount, stage: self.stage });
        Ok(())
    }
}

/// The amount with which a share of the whole is reached beside the others.
fn shared(share: f64, others: f64) -> Result<f64, String> {
    if (0.0..100.0).contains(&share) && others > 0.0 {
        Ok(others * share / (100.0 - share))
    } else {
        Err(format!("{share} % leaves no room for the rest"))
    }
}

/// The amount with which a computed reading reads what is wanted, by secants.
fn reached(
    case: &Case,
    diagnostician: &Diagnostician,
    portion: &Portion,
    standing: &Standing,
    reading: Key<Reading>,
    wanted: f64,
) -> Result<f64, String> {
    let declared = &diagnostician.knowledge().declared;
    let own = &declared.readings[reading];
    let read = |amount: f64| -> Result<f64, String> {
        let mut tried = case.clone();
        tried.readings.retain(|measured| measured.reading != reading);
        if let Some(formula) = &mut tried.formula
            && amount != standing.present
        {
            standing.set(formula, portion, amount)?;
        }
        let (circumstances, _) = diagnostician.known(&tried);
        let value = own.computed.as_ref().and_then(|quantity| quantity.value(&circumstances));
        value.ok_or_else(|| format!("{} cannot be computed from this formula", own.title))
    };
    let close = |value: f64| (value - wanted).abs() <= TOLERANCE * wanted.abs().max(1.0);
    let (mut last, mut last_value) = (standing.present, read(standing.present)?);
    let mut amount = if last > 0.0 { last * 1.05 } else { standing.part_mass * 0.01 };
    for _ in 0..MOST_STEPS {
        if close(last_value) {
            return Ok(last);
        }
        let value = read(amount)?;
        let slope = (value - last_value) / (amount - last);
        (last, last_value) = (amount, value);
        // What all of it does not reach, a negative amount would.
        amount = (amount + (wanted - value) / slope).max(0.0);
        if !amount.is_finite() || amount == last {
            break;
        }
    }
    if close(last_value) {
        return Ok(last);
    }
    Err(format!("no amount of it brings {} to {}", own.title, measure(wanted, &own.unit)))
}

fn matches(line: &FormulaLine, declared: &Declarations, portion: &Portion) -> bool {
    match (&line.content, portion) {
        (LineContent::Declared(key), Portion::Ingredients(keys)) => keys.contains(key),
        (LineContent::Declared(key), Portion::Role(role)) => declared.ingredients[*key].roles.contains(role),
        (LineContent::Described { roles, .. }, Portion::Role(role)) => {
            roles.as_ref().is_some_and(|roles| roles.contains(role))
        }
        (LineContent::Described { .. }, Portion::Ingredients(_)) => false,
    }
}

pub(super) fn is_flour(line: &FormulaLine, declared: &Declarations) -> bool {
    match &line.content {
        LineContent::Declared(key) => declared.ingredients[*key].is_flour,
        LineContent::Described { is_flour, .. } => *is_flour,
    }
}

fn main_stage(part: Part) -> Stage {
    match part {
        Part::Dough => Stage::Dough,
        Part::Filling => Stage::Filling,
        Part::Icing => Stage::Icing,
    }
}
