//! The formula of a case.

use std::ops::RangeInclusive;

use super::parse::find;
use super::types::{Formula, FormulaLine, LineContent};
use crate::json::{FaultCode, Faults, Node, Object, listing};
use crate::knowledge::{Composition, Declarations, Leavening};
use crate::science::formula::{Role, Stage};
use crate::science::leavening::HIGHEST_NEUTRALISING_VALUE;
use crate::units::{Unit, convert};

/// Most lines of a formula: the richest filled and iced cake has some thirty; the bound keeps hostile input cheap.
const MOST_LINES: usize = 200;

/// What an amount may be beside 0, kg or % on flour: from a microgram to a million tonnes. What lies outside is a slip of the
/// pen, and its shares could not be computed.
pub(super) const AMOUNTS: RangeInclusive<f64> = 1e-9..=1e9;

/// Members of a line that describe an ingredient of the caller's own.
const OWN: [&str; 5] = ["flour", "composition", "roles", "soda", "neutralising_value"];

/// All members of a line.
const LINE: [&str; 10] =
    ["ingredient", "name", "flour", "composition", "roles", "soda", "neutralising_value", "amount", "unit", "stage"];

/// What an amount is counted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Basis {
    Mass,
    BakersPercent,
}

impl Basis {
    /// Its unit, for people.
    fn unit(self) -> &'static str {
        match self {
            Self::Mass => "kg",
            Self::BakersPercent => "% on flour",
        }
    }
}

pub(super) fn read(node: &Node<'_>, declared: &Declarations, faults: &mut Faults) -> Option<Formula> {
    let object = node.object(faults, &["ingredients", "complete"])?;
    let ingredients = object.required(faults, "ingredients", None)?;
    let (mut lines, mut bases, mut count) = (Vec::new(), Vec::new(), 0_usize);
    ingredients.items(faults, |faults, item| {
        count += 1;
        if count > MOST_LINES {
            return;
        }
        if let Some((line, basis)) = read_line(&item, declared, faults) {
            check_double(&line, &lines, &item, faults);
            lines.push(line);
            bases.push(basis);
        }
    });
    if count == 0 {
        ingredients.fault(faults, FaultCode::Missing, "the formula has no ingredients".to_owned(), None);
    }
    if count > MOST_LINES {
        let detail = format!("the formula has {count} lines, at most {MOST_LINES} are read");
        ingredients.fault(faults, FaultCode::OutOfRange, detail, None);
    }
    let in_mass = bases.first() == Some(&Basis::Mass);
    if bases.iter().any(|basis| (*basis == Basis::Mass) != in_mass) {
        let help = Some("give every amount as a mass, or every amount in % on flour".to_owned());
        ingredients.fault(faults, FaultCode::Contradiction, "masses and percentages are mixed".to_owned(), help);
    }
    let complete = object.optional("complete").and_then(|node| node.boolean(faults));
    Some(Formula { lines, in_mass, complete })
}

fn read_line(item: &Node<'_>, declared: &Declarations, faults: &mut Faults) -> Option<(FormulaLine, Basis)> {
    let object = item.object(faults, &LINE)?;
    let content = read_content(&object, declared, faults);
    let node = object.required(faults, "amount", None);
    let given = node.and_then(|node| Some((node, node.number_within(faults, 0.0, f64::INFINITY)?)));
    let unit = object
        .required(faults, "unit", Some("a mass, for example `kg`, or `%` on flour".to_owned()))
        .and_then(|node| read_basis(&node, faults));
    let stage = object.optional("stage").and_then(|node| read_stage(&node, faults));
    let (basis, factor) = unit?;
    let amount = given.and_then(|(node, given)| within_amounts(&node, given * factor, basis.unit(), faults));
    Some((FormulaLine { content: content?, amount: amount?, stage }, basis))
}

/// An amount in `unit` that a formula can hold; another one is a fault at `node`.
pub(super) fn within_amounts(node: &Node<'_>, amount: f64, unit: &str, faults: &mut Faults) -> Option<f64> {
    if amount == 0.0 || AMOUNTS.contains(&amount) {
        return Some(amount);
    }
    let detail = format!("the amount is not 0 or between {:e} and {:e} {unit}", AMOUNTS.start(), AMOUNTS.end());
    node.fault(faults, FaultCode::OutOfRange, detail, Some("check the amount and its unit".to_owned()));
    None
}

fn read_content(object: &Object<'_>, declared: &Declarations, faults: &mut Faults) -> Option<LineContent> {
    match (object.optional("ingredient"), object.optional("name")) {
        (Some(node), None) => {
            for name in OWN {
                if let Some(extra) = object.optional(name) {
                    let help = Some("describe an ingredient of your own under `name`".to_owned());
                    extra.fault(
                        faults,
                        FaultCode::Contradiction,
                        format!("the rules say what a declared ingredient is: no `{name}` here"),
                        help,
                    );
                }
            }
            find(&node, &declared.ingredients, "ingredient", faults).map(LineContent::Declared)
        }
        (None, Some(node)) => {
            let name = node.text(faults)?.to_owned();
            let is_flour = object.optional("flour").map_or(Some(false), |node| node.boolean(faults))?;
            let composition = object
                .optional("composition")
                .map_or(Some(Composition::default()), |node| read_composition(&node, faults))?;
            let roles = object.optional("roles").map(|node| read_roles(&node, faults));
            let leavening = read_leavening(object, faults);
            Some(LineContent::Described { name, is_flour, composition: Box::new(composition), roles, leavening })
        }
        (Some(_), Some(node)) => {
            node.fault(faults, FaultCode::Contradiction, "give either `ingredient` or `name`".to_owned(), None);
            None
        }
        (None, None) => {
            let help = Some("name a declared ingredient, or describe one with `name` and `composition`".to_owned());
            object.node.fault(faults, FaultCode::Missing, "`ingredient` is missing".to_owned(), help);
            None
        }
    }
}

fn read_stage(node: &Node<'_>, faults: &mut Faults) -> Option<Stage> {
    let name = node.text(faults)?;
    let found = Stage::named(name);
    if found.is_none() {
        let names = Stage::ALL.map(Stage::name);
        node.unknown_name(faults, "stage", name, names, || Some(format!("the stages are {}", listing(&names))));
    }
    found
}

fn read_roles(node: &Node<'_>, faults: &mut Faults) -> Vec<Role> {
    let mut roles = Vec::new();
    node.items(faults, |faults, item| {
        let Some(name) = item.text(faults) else { return };
        match Role::named(name) {
            Some(role) => roles.push(role),
            None => {
                let names = Role::ALL.map(Role::name);
                item.unknown_name(faults, "role", name, names, || Some(format!("the roles are {}", listing(&names))));
            }
        }
    });
    roles
}

/// Soda and acids of an ingredient in place; stating one of them means that there is none of the other.
fn read_leavening(object: &Object<'_>, faults: &mut Faults) -> Option<Leavening> {
    let mut within =
        |name, most| object.optional(name).map(|node| node.number_within(faults, 0.0, most).unwrap_or(0.0));
    let (soda, value) = (within("soda", 100.0), within("neutralising_value", HIGHEST_NEUTRALISING_VALUE));
    (soda.is_some() || value.is_some()).then(|| Leavening {
        soda: soda.unwrap_or(0.0),
        neutralising_value: value.unwrap_or(0.0),
        ..Leavening::default()
    })
}

fn read_composition(node: &Node<'_>, faults: &mut Faults) -> Option<Composition> {
    let names = Composition::COMPONENTS.map(|(name, ..)| name);
    let object = node.object(faults, &names)?;
    let mut composition = Composition::default();
    for (name, _, set) in Composition::COMPONENTS {
        if let Some(share) = object.optional(name).and_then(|node| node.number_within(faults, 0.0, 100.0)) {
            set(&mut composition, share);
        }
    }
    let total = composition.known_total();
    if total > Composition::MOST {
        node.fault(faults, FaultCode::OutOfRange, format!("the components add up to {total} g in 100 g"), None);
    }
    Some(composition)
}

fn read_basis(node: &Node<'_>, faults: &mut Faults) -> Option<(Basis, f64)> {
    let unit = node.unit(faults, None)?;
    if unit.code() == "%" {
        return Some((Basis::BakersPercent, 1.0));
    }
    let kilogram = Unit::parse("kg").ok()?;
    match convert(1.0, &unit, &kilogram) {
        Ok(factor) => Some((Basis::Mass, factor)),
        Err(fault) => {
            let help = Some("a mass, for example `kg`, or `%` on flour".to_owned());
            node.fault(faults, FaultCode::WrongKindOfUnit, fault.to_string(), help);
            None
        }
    }
}

/// The same ingredient twice in one stage is a slip of the pen more often than a recipe.
fn check_double(line: &FormulaLine, earlier: &[FormulaLine], item: &Node<'_>, faults: &mut Faults) {
    let LineContent::Declared(key) = line.content else { return };
    let double = earlier
        .iter()
        .any(|other| other.stage == line.stage && matches!(other.content, LineContent::Declared(own) if own == key));
    if double {
        let help = Some("add the amounts, or name the `stage` of each".to_owned());
        item.fault(faults, FaultCode::Duplicate, "the ingredient stands twice in this stage".to_owned(), help);
    }
}
