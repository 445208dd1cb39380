//! What an ingredient is made of, in percent by mass, where unknown is not zero.

use crate::science::{Nonsense, input_checks};

/// Published analyses round each component and overlap a little: more than this together is an error, %.
/// Rum reaches 100.1 % in the table of the French food safety agency (CIQUAL 2020, food code 1004).
const HIGHEST_SUM_PERCENT: f64 = 101.5;

/// Composition in g per 100 g. `None` means not known, which is never taken for zero; what only few ingredients have is
/// zero unless stated.
///
/// `salt_percent` is sodium chloride or, for leavening, sodium as salt, as food tables give it.
/// `ash_percent` contains the salt and is therefore left out of the sum of components.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Composition {
    /// Water, g/100 g.
    pub water_percent: Option<f64>,
    /// Fat, g/100 g.
    pub fat_percent: Option<f64>,
    /// Protein, g/100 g.
    pub protein_percent: Option<f64>,
    /// Sucrose, g/100 g.
    pub sucrose_percent: Option<f64>,
    /// Glucose, g/100 g.
    pub glucose_percent: Option<f64>,
    /// Fructose, g/100 g.
    pub fructose_percent: Option<f64>,
    /// Lactose, g/100 g.
    pub lactose_percent: Option<f64>,
    /// Maltose, g/100 g.
    pub maltose_percent: Option<f64>,
    /// Starch, g/100 g.
    pub starch_percent: Option<f64>,
    /// Salt, g/100 g.
    pub salt_percent: Option<f64>,
    /// Alcohol, g/100 g.
    pub alcohol_percent: Option<f64>,
    /// Ash, g/100 g, salt included.
    pub ash_percent: Option<f64>,
    /// Dextrins: the higher saccharides of syrups, maltodextrin, g/100 g; few ingredients have any, so zero unless stated.
    pub dextrins_percent: f64,
    /// Glycerol, g/100 g; few ingredients have any, so zero unless stated.
    pub glycerol_percent: f64,
    /// Sorbitol, g/100 g; few ingredients have any, so zero unless stated.
    pub sorbitol_percent: f64,
    /// Citric and other fruit acids, lactic and acetic acid, g/100 g; few ingredients have any, so zero unless stated.
    pub acids_percent: f64,
    /// Fibre, dry, g/100 g; few ingredients have any, so zero unless stated.
    pub fibre_percent: f64,
}

/// One component of a [`Composition`].
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Component {
    /// Water.
    Water,
    /// Fat.
    Fat,
    /// Protein.
    Protein,
    /// Sucrose.
    Sucrose,
    /// Glucose.
    Glucose,
    /// Fructose.
    Fructose,
    /// Lactose.
    Lactose,
    /// Maltose.
    Maltose,
    /// Starch.
    Starch,
    /// Salt.
    Salt,
    /// Alcohol.
    Alcohol,
    /// Ash, salt included.
    Ash,
    /// Dextrins: the higher saccharides of syrups, maltodextrin.
    Dextrins,
    /// Glycerol.
    Glycerol,
    /// Sorbitol.
    Sorbitol,
    /// Citric and other fruit acids, lactic and acetic acid.
    Acids,
    /// Fibre, dry.
    Fibre,
}

impl Component {
    /// Every component, in the order of [`Composition`].
    pub const ALL: [Self; 17] = [
        Self::Water,
        Self::Fat,
        Self::Protein,
        Self::Sucrose,
        Self::Glucose,
        Self::Fructose,
        Self::Lactose,
        Self::Maltose,
        Self::Starch,
        Self::Salt,
        Self::Alcohol,
        Self::Ash,
        Self::Dextrins,
        Self::Glycerol,
        Self::Sorbitol,
        Self::Acids,
        Self::Fibre,
    ];

    /// The sugars that are told apart.
    pub const SUGARS: [Self; 5] = [Self::Sucrose, Self::Glucose, Self::Fructose, Self::Lactose, Self::Maltose];

    /// What dissolves in the water of a dough, filling or icing and raises its boiling point: sugars, salt, dextrins,
    /// polyols and acids.
    pub const DISSOLVED: [Self; 10] = [
        Self::Sucrose,
        Self::Glucose,
        Self::Fructose,
        Self::Lactose,
        Self::Maltose,
        Self::Salt,
        Self::Dextrins,
        Self::Glycerol,
        Self::Sorbitol,
        Self::Acids,
    ];

    /// Name in the trade, lower case.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Water => "water",
            Self::Fat => "fat",
            Self::Protein => "protein",
            Self::Sucrose => "sucrose",
            Self::Glucose => "glucose",
            Self::Fructose => "fructose",
            Self::Lactose => "lactose",
            Self::Maltose => "maltose",
            Self::Starch => "starch",
            Self::Salt => "salt",
            Self::Alcohol => "alcohol",
            Self::Ash => "ash",
            Self::Dextrins => "dextrins",
            Self::Glycerol => "glycerol",
            Self::Sorbitol => "sorbitol",
            Self::Acids => "acids",
            Self::Fibre => "fibre",
        }
    }
}

impl Composition {
    /// Drinking water.
    pub const WATER: Self = Self {
        water_percent: Some(100.0),
        fat_percent: Some(0.0),
        protein_percent: Some(0.0),
        sucrose_percent: Some(0.0),
        glucose_percent: Some(0.0),
        fructose_percent: Some(0.0),
        lactose_percent: Some(0.0),
        maltose_percent: Some(0.0),
        starch_percent: Some(0.0),
        salt_percent: Some(0.0),
        alcohol_percent: Some(0.0),
        ash_percent: Some(0.0),
        dextrins_percent: 0.0,
        glycerol_percent: 0.0,
        sorbitol_percent: 0.0,
        acids_percent: 0.0,
        fibre_percent: 0.0,
    };

    /// Share of one component, g/100 g; `None` when it is not known.
    #[must_use]
    pub fn percent(&self, component: Component) -> Option<f64> {
        match component {
            Component::Water => self.water_percent,
            Component::Fat => self.fat_percent,
            Component::Protein => self.protein_percent,
            Component::Sucrose => self.sucrose_percent,
            Component::Glucose => self.glucose_percent,
            Component::Fructose => self.fructose_percent,
            Component::Lactose => self.lactose_percent,
            Component::Maltose => self.maltose_percent,
            Component::Starch => self.starch_percent,
            Component::Salt => self.salt_percent,
            Component::Alcohol => self.alcohol_percent,
            Component::Ash => self.ash_percent,
            Component::Dextrins => Some(self.dextrins_percent),
            Component::Glycerol => Some(self.glycerol_percent),
            Component::Sorbitol => Some(self.sorbitol_percent),
            Component::Acids => Some(self.acids_percent),
            Component::Fibre => Some(self.fibre_percent),
        }
    }

    /// Least share of `components` together, and most: what the other known components leave over. g/100 g.
    pub(super) fn bounds_percent(&self, components: &[Component]) -> (f64, f64) {
        let known = |component: &Component| self.percent(*component).unwrap_or(0.0);
        let least: f64 = components.iter().map(known).sum();
        if self.knows_all(components) {
            return (least, least);
        }
        let others = Component::ALL
            .iter()
            .filter(|component| !components.contains(component) && !shares_ash(**component, components));
        let most = (100.0 - others.map(known).sum::<f64>()).max(least);
        (least, most)
    }

    /// Whether every one of `components` is known.
    fn knows_all(&self, components: &[Component]) -> bool {
        components.iter().all(|component| self.percent(*component).is_some())
    }

    /// Collects a fault for each share that cannot be meant.
    pub(super) fn check(&self, faults: &mut Nonsense, input: &str) {
        for component in Component::ALL {
            if let Some(share) = self.percent(component) {
                input_checks::percent(faults, &format!("{input}.{}", component.name()), share);
            }
        }
        let sum: f64 = Component::ALL
            .iter()
            .filter(|component| **component != Component::Ash)
            .filter_map(|component| self.percent(*component))
            .sum();
        faults.unless(
            !sum.is_finite() || sum <= HIGHEST_SUM_PERCENT,
            input,
            format!("components add up to {sum:.1} %, more than the ingredient itself"),
        );
    }
}

/// Ash contains the salt: neither takes room from the other.
fn shares_ash(other: Component, components: &[Component]) -> bool {
    other == Component::Ash || (other == Component::Salt && components.contains(&Component::Ash))
}
