//! The lines of a case's formula as science takes them.

use crate::case::{Formula, FormulaLine, FormulaRequest, LineContent, faults_of};
use crate::json::DocumentFaults;
use crate::knowledge::{Composition, Declarations, Leavening};
use crate::science::Nonsense;
use crate::science::formula::{self, Line, Part, Role, Stage};

/// Fewest ingredients of a whole formula: flour, water, yeast and salt make the leanest bread (common practice).
const FEWEST_INGREDIENTS: usize = 4;

/// Flour of a formula in percent that lists no flour: percentages are on 100 parts of it by definition.
const UNLISTED_FLOUR: f64 = 100.0;

/// A formula, resolved against the rules and checked.
#[derive(Debug, Clone)]
pub struct Weighed<'a> {
    pub(super) declared: &'a Declarations,
    pub(super) given: &'a Formula,
    pub(super) formula: formula::Formula,
    /// Stage of lines that name none.
    pub(super) main: Stage,
    /// Whether the lines are all there is.
    pub(super) whole: bool,
}

impl<'a> Weighed<'a> {
    /// Resolves a formula; lines without a stage belong to `main`.
    ///
    /// # Errors
    /// Masses that cannot be meant, for example a part without mass or one that is half salt.
    pub fn new(given: &'a Formula, declared: &'a Declarations, main: Stage) -> Result<Self, Nonsense> {
        let mut lines: Vec<Line> = given.lines.iter().map(|line| resolve(line, declared, main)).collect();
        let whole = given.complete.unwrap_or(given.lines.len() >= FEWEST_INGREDIENTS);
        if lacks_flour(given, &lines) {
            lines.push(unlisted_flour());
        }
        Ok(Self { declared, given, formula: formula::Formula::new(lines)?, main, whole })
    }

    /// Resolves the formula of a request; faults are told at their places in it.
    ///
    /// # Errors
    /// As [`Self::new`].
    pub fn of(request: &'a FormulaRequest, declared: &'a Declarations) -> Result<Self, DocumentFaults> {
        let main = request.product.map_or(Stage::Dough, |product| declared.main_stage(product));
        Self::new(&request.formula, declared, main).map_err(|nonsense| DocumentFaults::Faulty(faults_of(&nonsense)))
    }

    /// The lines as science takes them.
    #[must_use]
    pub fn formula(&self) -> &formula::Formula {
        &self.formula
    }

    /// The part that lines without a stage belong to.
    #[must_use]
    pub fn main_part(&self) -> Part {
        self.main.part()
    }

    /// Whether the lines may be taken for all that goes into the product: the caller's word, else their number.
    #[must_use]
    pub fn is_whole(&self) -> bool {
        self.whole
    }

    /// Whether amounts are kg, not percent.
    #[must_use]
    pub fn in_mass(&self) -> bool {
        self.given.in_mass
    }

    /// The lines as given, with their parts.
    pub(super) fn lines(&self) -> impl Iterator<Item = (&'a FormulaLine, Part)> {
        let main = self.main;
        self.given.lines.iter().map(move |line| (line, line.stage.unwrap_or(main).part()))
    }

    /// Roles of a line; `None` when nobody says what it does. Flour needs no other role.
    pub(super) fn roles(&self, line: &'a FormulaLine) -> Option<&'a [Role]> {
        let (roles, is_flour) = match &line.content {
            LineContent::Declared(key) => {
                let ingredient = &self.declared.ingredients[*key];
                (Some(ingredient.roles.as_slice()).filter(|roles| !roles.is_empty()), ingredient.is_flour)
            }
            LineContent::Described { roles, is_flour, .. } => (roles.as_deref(), *is_flour),
        };
        roles.or(is_flour.then_some(&[]))
    }

    /// Soda and acids of a line; `None` when they are not known.
    pub(super) fn leavening(&self, line: &'a FormulaLine) -> Option<Leavening> {
        let (stated, roles) = match &line.content {
            LineContent::Declared(key) => (self.declared.ingredients[*key].leavening, self.roles(line)),
            LineContent::Described { leavening, .. } => (*leavening, self.roles(line)),
        };
        let leavens = roles.is_none_or(|roles| roles.contains(&Role::Leavening));
        stated.or_else(|| (!leavens).then(Leavening::default))
    }

    /// Name of a line for people.
    pub(super) fn name(&self, line: &'a FormulaLine) -> &'a str {
        name(line, self.declared)
    }
}

fn name<'a>(line: &'a FormulaLine, declared: &'a Declarations) -> &'a str {
    match &line.content {
        LineContent::Declared(key) => &declared.ingredients[*key].title,
        LineContent::Described { name, .. } => name,
    }
}

fn resolve(line: &FormulaLine, declared: &Declarations, main: Stage) -> Line {
    let (is_flour, composition, roles) = match &line.content {
        LineContent::Declared(key) => {
            let ingredient = &declared.ingredients[*key];
            (ingredient.is_flour, &ingredient.composition, ingredient.roles.clone())
        }
        LineContent::Described { is_flour, composition, roles, .. } => {
            (*is_flour, composition.as_ref(), roles.clone().unwrap_or_default())
        }
    };
    Line {
        name: name(line, declared).to_owned(),
        stage: line.stage.unwrap_or(main),
        mass_kg: line.amount,
        composition: of_science(composition),
        is_flour,
        roles,
    }
}

/// Whether percentages are given on a flour that is not listed: the dough has lines, none of them flour, and nobody says
/// that these are all.
fn lacks_flour(given: &Formula, lines: &[Line]) -> bool {
    let mut dough = lines.iter().filter(|line| line.stage.part() == Part::Dough).peekable();
    !given.in_mass && given.complete != Some(true) && dough.peek().is_some() && dough.all(|line| !line.is_flour)
}

fn unlisted_flour() -> Line {
    Line {
        name: "flour (not listed)".to_owned(),
        stage: Stage::Dough,
        mass_kg: UNLISTED_FLOUR,
        composition: formula::Composition::default(),
        is_flour: true,
        roles: Vec::new(),
    }
}

fn of_science(composition: &Composition) -> formula::Composition {
    let stated = *composition != Composition::default();
    formula::Composition {
        water_percent: composition.water,
        fat_percent: composition.fat,
        protein_percent: composition.protein,
        sucrose_percent: composition.sucrose,
        glucose_percent: composition.glucose,
        fructose_percent: composition.fructose,
        lactose_percent: composition.lactose,
        maltose_percent: composition.maltose,
        starch_percent: composition.starch,
        salt_percent: composition.salt,
        alcohol_percent: composition.alcohol.or(stated.then_some(0.0)),
        ash_percent: composition.ash,
        dextrins_percent: composition.dextrins.unwrap_or(0.0),
        glycerol_percent: composition.glycerol.unwrap_or(0.0),
        sorbitol_percent: composition.sorbitol.unwrap_or(0.0),
        acids_percent: composition.acids.unwrap_or(0.0),
        fibre_percent: composition.fibre.unwrap_or(0.0),
    }
}
