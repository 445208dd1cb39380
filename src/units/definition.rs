//! From a UCUM code to what a conversion needs to know about the unit.

use std::collections::BTreeMap;

use octofhir_ucum::{Case, EvalResult, UnitExpr, evaluate, lookup_unit, parse_expression};

use super::MAX_CODE_LENGTH;
use super::kind::Kind;
use super::scale::{Scale, is_temperature};
use super::solidus::dot_after_solidus;
use super::spellings::{LOOKALIKES, Lookalike};
use super::symbols::symbol;

/// Everything about a unit, worked out once.
#[derive(Debug)]
pub(super) struct Definition {
    pub(super) code: Box<str>,
    pub(super) symbol: Box<str>,
    pub(super) kind: Kind,
    pub(super) scale: Scale,
    /// What the unit is counted on, from the annotations behind units: `flour` in `%{flour}`.
    pub(super) basis: Vec<Box<str>>,
}

impl Definition {
    /// `1`.
    pub(super) fn plain_number() -> Self {
        Self {
            code: "1".into(),
            symbol: "".into(),
            kind: Kind::new([0; 7], Vec::new()),
            scale: Scale::IDENTITY,
            basis: Vec::new(),
        }
    }

    /// Whether both units say what they are counted on, and say different things.
    pub(super) fn basis_differs(&self, other: &Self) -> bool {
        !self.basis.is_empty() && !other.basis.is_empty() && self.basis != other.basis
    }
}

/// Why a code is no unit here.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Defect {
    TooLong,
    Unknown,
    Lookalike(&'static Lookalike),
    DotAfterSolidus,
    ScaleInProduct,
    OutOfRange,
}

/// Reads a code. Bounded by [`MAX_CODE_LENGTH`], which also bounds the depth of the expression.
pub(super) fn define(code: &str) -> Result<Definition, Defect> {
    if code.len() > MAX_CODE_LENGTH {
        return Err(Defect::TooLong);
    }
    let expression = parse_expression(code).map_err(|_| Defect::Unknown)?;
    let mut atoms = Atoms::default();
    atoms.collect(&expression, 1);
    if let Some(lookalike) = atoms.lookalike {
        return Err(Defect::Lookalike(lookalike));
    }
    let unit = evaluate(&expression).map_err(|error| match error.kind.code() {
        "special_unit_error" => Defect::ScaleInProduct,
        "precision_overflow" => Defect::OutOfRange,
        _ => Defect::Unknown,
    })?;
    if dot_after_solidus(code).is_some() {
        return Err(Defect::DotAfterSolidus);
    }
    Ok(Definition {
        code: code.into(),
        symbol: symbol(&expression).into(),
        scale: Scale::of(&unit).ok_or(Defect::OutOfRange)?,
        kind: kind_of(&unit, atoms.scales),
        basis: atoms.basis,
    })
}

fn kind_of(unit: &EvalResult, mut scales: BTreeMap<Box<str>, i32>) -> Kind {
    let mut exponents = unit.dim.0;
    for (atom, power) in &unit.arbitrary {
        add(&mut scales, without_brackets(atom), *power);
    }
    if let Some(special) = &unit.special
        && !is_temperature(special.unit.special)
    {
        exponents = [0; 7];
        add(&mut scales, without_brackets(special.unit.code), 1);
    }
    scales.retain(|_, power| *power != 0);
    Kind::new(exponents, scales.into_iter().collect())
}

/// `[CFU]` and `{CFU}` name the same scale.
fn without_brackets(code: &str) -> &str {
    code.strip_prefix('[').and_then(|inner| inner.strip_suffix(']')).unwrap_or(code)
}

fn add(scales: &mut BTreeMap<Box<str>, i32>, name: &str, power: i32) {
    let sum = scales.entry(name.into()).or_default();
    *sum = sum.saturating_add(power);
}

/// What UCUM's arithmetic does not tell apart: annotations and amounts of substance.
#[derive(Default)]
struct Atoms {
    scales: BTreeMap<Box<str>, i32>,
    basis: Vec<Box<str>>,
    lookalike: Option<&'static Lookalike>,
}

impl Atoms {
    fn collect(&mut self, expression: &UnitExpr, power: i32) {
        match expression {
            UnitExpr::Symbol(code) => self.symbol(code, power),
            UnitExpr::Numeric(_) => {}
            UnitExpr::Annotation(text) => self.annotation(text, power),
            UnitExpr::Annotated(inner, text) if is_number(inner) => self.annotation(text, power),
            UnitExpr::Annotated(inner, text) => {
                self.basis.push(text.as_str().into());
                self.collect(inner, power);
            }
            UnitExpr::Power(base, exponent) => self.collect(base, power.saturating_mul(*exponent)),
            UnitExpr::Product(terms) => terms.iter().for_each(|term| self.collect(term, power)),
            UnitExpr::Quotient(numerator, denominator) => {
                self.collect(numerator, power);
                self.collect(denominator, power.saturating_neg());
            }
            UnitExpr::Reciprocal(inner) => self.collect(inner, power.saturating_neg()),
        }
    }

    fn symbol(&mut self, code: &str, power: i32) {
        if let Some(found) = LOOKALIKES.iter().find(|known| known.code == code) {
            self.lookalike = Some(found);
        }
        if let Some(amount) = amount(code) {
            add(&mut self.scales, amount, power);
        }
    }

    /// An annotation that stands for a unit. Turns are plain numbers: ISO 80000-3 gives rotational frequency in `/s`.
    fn annotation(&mut self, text: &str, power: i32) {
        if text != "rev" {
            add(&mut self.scales, text, power);
        }
    }
}

fn is_number(expression: &UnitExpr) -> bool {
    match expression {
        UnitExpr::Numeric(_) => true,
        UnitExpr::Symbol(code) => matches!(code.as_str(), "10*" | "10^"),
        UnitExpr::Power(base, _) => is_number(base),
        _ => false,
    }
}

/// The kind of amount that a unit counts. For UCUM these are plain numbers (1 mol = 6.02214076e23), and 1 eq = 1 mol,
/// which holds only for a valence of one: 1 meq of peroxide oxygen is 0.5 mmol of O2.
fn amount(code: &str) -> Option<&'static str> {
    let (_, unit) = lookup_unit(code, Case::Sensitive)?;
    match unit.code {
        "mol" | "kat" | "U" => Some("amount of substance"),
        "eq" => Some("chemical equivalents"),
        "osm" => Some("osmotic amount"),
        _ => None,
    }
}
