//! The lines of a formula, checked once.

use super::composition::{Component, Composition};
use crate::science::{Nonsense, input_checks};

/// More salt than this in a dough, filling or icing is a wrong unit or a wrong line, % of its mass.
/// Published doughs stay below 3 % on flour: choux has 2.7 % (Labensky S. et al., On Baking, eclair paste formula).
const HIGHEST_SALT_PERCENT: f64 = 15.0;

/// When an ingredient goes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Stage {
    /// Poolish, biga, sour, starter: fermented apart, before the dough.
    Preferment,
    /// Sponge of a sponge-and-dough process.
    Sponge,
    /// Final dough or batter, laminating fat included.
    Dough,
    /// What is put inside.
    Filling,
    /// What is put on top: icing, glaze, fondant, buttercream.
    Icing,
}

/// What is weighed and baked as one mass: its stages share one total flour.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// Preferment, sponge and final dough or batter.
    Dough,
    /// Filling.
    Filling,
    /// Icing.
    Icing,
}

impl Part {
    /// Every part.
    pub const ALL: [Self; 3] = [Self::Dough, Self::Filling, Self::Icing];

    /// Name in snake case: that of its main stage.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Dough => "dough",
            Self::Filling => "filling",
            Self::Icing => "icing",
        }
    }

    /// The part of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|part| part.name() == name)
    }
}

impl Stage {
    /// Every stage.
    pub const ALL: [Self; 5] = [Self::Preferment, Self::Sponge, Self::Dough, Self::Filling, Self::Icing];

    /// Name in snake case.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Preferment => "preferment",
            Self::Sponge => "sponge",
            Self::Dough => "dough",
            Self::Filling => "filling",
            Self::Icing => "icing",
        }
    }

    /// The stage of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|stage| stage.name() == name)
    }

    /// The part that the stage belongs to.
    #[must_use]
    pub fn part(self) -> Part {
        match self {
            Self::Preferment | Self::Sponge | Self::Dough => Part::Dough,
            Self::Filling => Part::Filling,
            Self::Icing => Part::Icing,
        }
    }
}

/// What an ingredient does in the formula. An ingredient may have several roles (self-raising flour leavens too).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// Water as such.
    Water,
    /// Milk, juice and other liquids, water included, egg not.
    Liquid,
    /// Fat in the dough.
    Fat,
    /// Fat rolled in.
    LaminatingFat,
    /// Sugar and syrup.
    Sugar,
    /// Egg in any form.
    Egg,
    /// Salt.
    Salt,
    /// Yeast in any form.
    Yeast,
    /// Soda, baking powder, acids, ammonium bicarbonate.
    Leavening,
    /// Cocoa.
    Cocoa,
    /// Milk, whey and their powders.
    Milk,
    /// Starch, native or modified, as a thickener or flour's partner.
    Starch,
    /// Pectin, gelatin, agar, gums.
    GellingAgent,
    /// Emulsifier.
    Emulsifier,
    /// Enzyme preparation, malt with active enzymes included.
    Enzyme,
    /// Oxidising improver.
    Oxidant,
    /// Reducing improver.
    ReducingAgent,
    /// Preservative.
    Preservative,
    /// Acid or acid salt that is not there to leaven.
    Acid,
    /// Fruit in any form.
    Fruit,
    /// Nuts.
    Nuts,
    /// Seeds.
    Seeds,
    /// Flavours, spices, alcohol for taste.
    Flavour,
    /// Fibre and bran.
    Fibre,
    /// Gluten and other protein that is added as such.
    Protein,
    /// Mineral salts: hardness of the water, fortification, gel setting.
    Mineral,
}

impl Role {
    /// Every role.
    pub const ALL: [Self; 26] = [
        Self::Water,
        Self::Liquid,
        Self::Fat,
        Self::LaminatingFat,
        Self::Sugar,
        Self::Egg,
        Self::Salt,
        Self::Yeast,
        Self::Leavening,
        Self::Cocoa,
        Self::Milk,
        Self::Starch,
        Self::GellingAgent,
        Self::Emulsifier,
        Self::Enzyme,
        Self::Oxidant,
        Self::ReducingAgent,
        Self::Preservative,
        Self::Acid,
        Self::Fruit,
        Self::Nuts,
        Self::Seeds,
        Self::Flavour,
        Self::Fibre,
        Self::Protein,
        Self::Mineral,
    ];

    /// Name in snake case.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Water => "water",
            Self::Liquid => "liquid",
            Self::Fat => "fat",
            Self::LaminatingFat => "laminating_fat",
            Self::Sugar => "sugar",
            Self::Egg => "egg",
            Self::Salt => "salt",
            Self::Yeast => "yeast",
            Self::Leavening => "leavening",
            Self::Cocoa => "cocoa",
            Self::Milk => "milk",
            Self::Starch => "starch",
            Self::GellingAgent => "gelling_agent",
            Self::Emulsifier => "emulsifier",
            Self::Enzyme => "enzyme",
            Self::Oxidant => "oxidant",
            Self::ReducingAgent => "reducing_agent",
            Self::Preservative => "preservative",
            Self::Acid => "acid",
            Self::Fruit => "fruit",
            Self::Nuts => "nuts",
            Self::Seeds => "seeds",
            Self::Flavour => "flavour",
            Self::Fibre => "fibre",
            Self::Protein => "protein",
            Self::Mineral => "mineral",
        }
    }

    /// The role of a name.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|role| role.name() == name)
    }
}

/// One weighed ingredient.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// Name of the ingredient, as the case gives it.
    pub name: String,
    /// When it goes in.
    pub stage: Stage,
    /// Mass, kg.
    pub mass_kg: f64,
    /// What it is made of.
    pub composition: Composition,
    /// Whether it counts as flour, the 100 % of baker's percentages.
    pub is_flour: bool,
    /// What it does.
    pub roles: Vec<Role>,
}

impl Line {
    /// Whether the line has one of `roles`.
    #[must_use]
    pub fn has_any(&self, roles: &[Role]) -> bool {
        self.roles.iter().any(|role| roles.contains(role))
    }

    /// Least mass of a component, kg: zero where its share is unknown.
    fn known_kg(&self, component: Component) -> f64 {
        self.mass_kg * self.composition.percent(component).unwrap_or(0.0) / 100.0
    }
}

/// Lines of which every figure can be meant.
#[derive(Debug, Clone, PartialEq)]
pub struct Formula {
    lines: Vec<Line>,
}

impl Formula {
    /// Checks the lines.
    ///
    /// # Errors
    /// Lists every fault: no lines, a part without mass, a name left out, a mass or share that is negative or not a
    /// number, components that add up to more than the ingredient, more than 15 % salt in a part of several lines.
    pub fn new(lines: Vec<Line>) -> Result<Self, Nonsense> {
        let mut faults = Nonsense::default();
        faults.unless(!lines.is_empty(), "formula", "is empty, name at least one ingredient");
        for (position, line) in lines.iter().enumerate() {
            check_line(&mut faults, position, line);
        }
        if faults.faults.is_empty() {
            for part in Part::ALL {
                check_part(&mut faults, part, &lines);
            }
        }
        faults.or_ok()?;
        Ok(Self { lines })
    }

    /// The lines, in the order given.
    #[must_use]
    pub fn lines(&self) -> &[Line] {
        &self.lines
    }

    /// The lines of one part.
    pub fn part(&self, part: Part) -> impl Iterator<Item = &Line> + Clone {
        self.lines.iter().filter(move |line| line.stage.part() == part)
    }
}

fn check_line(faults: &mut Nonsense, position: usize, line: &Line) {
    let input = format!("formula[{position}]");
    faults.unless(!line.name.trim().is_empty(), &format!("{input}.name"), "is empty");
    input_checks::not_negative(faults, &format!("{input}.mass_kg"), line.mass_kg);
    line.composition.check(faults, &format!("{input}.composition"));
}

fn check_part(faults: &mut Nonsense, part: Part, lines: &[Line]) {
    let of_part = || lines.iter().filter(|line| line.stage.part() == part);
    if of_part().next().is_none() {
        return;
    }
    let mass: f64 = of_part().map(|line| line.mass_kg).sum();
    faults.unless(mass.is_finite() && mass > 0.0, "formula", format!("has no mass in its {part:?}").to_lowercase());
    let salt: f64 = of_part().map(|line| line.known_kg(Component::Salt)).sum();
    let percent = 100.0 * salt / mass;
    // A part of one line is what it is: coarse salt on top.
    let is_mixed = of_part().nth(1).is_some();
    faults.unless(
        !(is_mixed && mass > 0.0 && percent > HIGHEST_SALT_PERCENT),
        "formula",
        format!("is {percent:.0} % salt, more than {HIGHEST_SALT_PERCENT} % cannot be meant; check the unit"),
    );
}
