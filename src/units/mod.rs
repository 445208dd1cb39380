//! Units of measurement: codes of the Unified Code for Units of Measure (UCUM, an open standard), read once and
//! converted with a multiplication, a division and an addition.
//!
//! Where this is stricter than UCUM, because the answer would be nonsense in a bakery:
//! - a scale of its own (`[pH]`, `{FU}`, `[CFU]`) converts only to itself, also as part of a unit (`[CFU]/g`). An
//!   annotation that stands alone names such a scale; turns (`{rev}/min`) are the exception, since `/min` says the same;
//! - an annotation behind a unit says on what basis it is counted: `%{flour}` does not convert to `%{dough}`, but both
//!   convert to `%`, which says nothing about its basis;
//! - amounts of substance are no plain numbers: `mmol/kg` converts neither to `meq/kg` nor to `1/g`;
//! - UCUM codes that here are always a slip are refused with the code that was meant: `C` is the coulomb, `pH` the
//!   picohenry, `ft` the femtotonne, and `g/100.g` is `(g/100).g`.
//!
//! ```
//! use whybake::units::{Unit, convert};
//!
//! let fahrenheit = Unit::parse("[degF]")?;
//! let celsius = Unit::parse("Cel")?;
//! assert_eq!(convert(86.0, &fahrenheit, &celsius)?, 30.0);
//! assert_eq!(celsius.symbol(), "°C");
//! assert_eq!(Unit::parse("degC").unwrap_err().suggestion(), Some("Cel"));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod conversion;
mod definition;
mod faults;
mod kind;
mod scale;
mod solidus;
mod spellings;
mod suggestions;
mod symbols;

use std::fmt;
use std::hash::{Hash, Hasher};
use std::sync::Arc;

pub use conversion::{ConversionFault, convert, convert_difference};
pub use faults::UnitFault;
pub use kind::Kind;

use definition::Definition;

/// The longest unit code that is read, in bytes. Codes of the trade stay under 30; the bound keeps hostile input cheap.
pub const MAX_CODE_LENGTH: usize = 64;

/// A unit of measurement, read from its UCUM code. Cheap to clone; two units are equal when their codes are.
#[derive(Clone)]
pub struct Unit(Arc<Definition>);

impl Unit {
    /// Reads a UCUM code, case sensitive (`Cel`, `[lb_av]`, `kJ/kg`, `{FU}`).
    ///
    /// # Errors
    /// A [`UnitFault`], with the code that was probably meant where one is known.
    pub fn parse(code: &str) -> Result<Self, UnitFault> {
        match definition::define(code) {
            Ok(definition) => Ok(Self(Arc::new(definition))),
            Err(defect) => Err(UnitFault::from_defect(code, defect)),
        }
    }

    /// The UCUM code, as it was written.
    pub fn code(&self) -> &str {
        &self.0.code
    }

    /// The unit as people write it behind a value: `°C` for `Cel`, `cm³/g` for `cm3/g`, nothing for `1`.
    pub fn symbol(&self) -> &str {
        &self.0.symbol
    }

    /// What the unit measures. Units of equal kind convert to each other, unless their annotations name different bases.
    pub fn kind(&self) -> &Kind {
        &self.0.kind
    }

    /// Whether [`convert`] can turn a value in this unit into one in `other`.
    pub fn converts_to(&self, other: &Unit) -> bool {
        self.kind() == other.kind() && !self.0.basis_differs(&other.0)
    }
}

/// The plain number, `1`.
impl Default for Unit {
    fn default() -> Self {
        Self(Arc::new(Definition::plain_number()))
    }
}

impl PartialEq for Unit {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.0, &other.0) || self.code() == other.code()
    }
}

impl Eq for Unit {}

impl Hash for Unit {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.code().hash(state);
    }
}

/// The UCUM code.
impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl fmt::Debug for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Unit({})", self.code())
    }
}
