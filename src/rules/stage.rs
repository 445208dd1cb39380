//! Which file may declare what, and in which order files are read.

use super::term::Kind;

/// What a file declares, by its name; the order is the order of reading.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) enum Stage {
    Pack,
    Scales,
    Sources,
    Requirements,
    Cautions,
    Products,
    Ingredients,
    Symptoms,
    Facts,
    Readings,
    Limits,
    Actions,
    Causes,
}

impl Stage {
    /// All stages, in order of reading.
    pub(super) const ALL: [Self; 13] = [
        Self::Pack,
        Self::Scales,
        Self::Sources,
        Self::Requirements,
        Self::Cautions,
        Self::Products,
        Self::Ingredients,
        Self::Symptoms,
        Self::Facts,
        Self::Readings,
        Self::Limits,
        Self::Actions,
        Self::Causes,
    ];

    /// The stage of a file; `None` for the functions under `lib/`.
    pub(super) fn of(path: &str) -> Option<Self> {
        if path.starts_with("lib/") {
            return None;
        }
        let name = path.rsplit('/').next().unwrap_or(path);
        Some(Self::ALL.into_iter().find(|stage| stage.file_name() == Some(name)).unwrap_or(Self::Causes))
    }

    /// The file name that belongs to the stage; `None` for causes, which have all other names.
    pub(super) fn file_name(self) -> Option<&'static str> {
        match self {
            Self::Pack => Some("pack.rhai"),
            Self::Scales => Some("scales.rhai"),
            Self::Sources => Some("sources.rhai"),
            Self::Cautions => Some("cautions.rhai"),
            Self::Requirements => Some("requirements.rhai"),
            Self::Products => Some("products.rhai"),
            Self::Ingredients => Some("ingredients.rhai"),
            Self::Symptoms => Some("symptoms.rhai"),
            Self::Facts => Some("facts.rhai"),
            Self::Readings => Some("readings.rhai"),
            Self::Limits => Some("limits.rhai"),
            Self::Actions => Some("actions.rhai"),
            Self::Causes => None,
        }
    }

    /// The words that declare things in files of this stage, and what they make.
    pub(super) fn declaring_words(self) -> &'static [(&'static str, Kind)] {
        match self {
            Self::Pack => &[("pack", Kind::Pack)],
            Self::Scales => &[
                ("prior_word", Kind::Prior),
                ("strength_word", Kind::Strength),
                ("weight_word", Kind::Weight),
                ("cost_word", Kind::Cost),
                ("waste_word", Kind::Waste),
            ],
            Self::Sources => &[("source", Kind::Source)],
            Self::Cautions => &[("caution", Kind::Caution)],
            Self::Requirements => &[("diet", Kind::Diet), ("allergen", Kind::Allergen), ("market", Kind::Market)],
            Self::Products => &[("family", Kind::Family), ("product", Kind::Product)],
            Self::Ingredients => &[("ingredient", Kind::Ingredient)],
            Self::Symptoms => &[("symptom", Kind::Symptom)],
            Self::Facts => &[("fact", Kind::Fact)],
            Self::Readings => &[("reading", Kind::Reading)],
            Self::Limits => &[("limit", Kind::Limit)],
            Self::Actions => &[("action", Kind::Action)],
            Self::Causes => &[("cause", Kind::Cause), ("warn", Kind::Warning)],
        }
    }

    /// The stage that a declaring word belongs to.
    pub(super) fn declared_by(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|stage| stage.declaring_words().iter().any(|(own, _)| *own == word))
    }

    /// The stage that declares things of a kind.
    pub(super) fn declaring(kind: Kind) -> Option<Self> {
        Self::ALL.into_iter().find(|stage| stage.declaring_words().iter().any(|(_, own)| *own == kind))
    }

    /// Advice for a word that stands in a wrong file.
    pub(super) fn belongs_in(self) -> String {
        self.file_name().map_or_else(
            || "causes stand in files of any name that the table of files does not keep".to_owned(),
            |name| format!("it belongs in a file named `{name}`"),
        )
    }
}
