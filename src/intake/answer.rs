//! What a complaint is taken for.

use serde::Serialize;
use utoipa::ToSchema;

use crate::case::CaseDocument;

/// What a complaint in plain words is taken for, what is left of it, and the case that follows from what is sure.
#[derive(Debug, Serialize, ToSchema)]
#[schema(as = ComplaintReading)]
pub struct Interpretation<'k> {
    /// What to do before anything else, where words of the text are of people's safety and not of baking.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub cautions: Vec<ComplaintCaution>,
    /// The product that the rest is read for: the one given, or the one that the text names beyond doubt.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "hamburger_bun")]
    pub product: Option<&'k str>,
    /// Products that the text may mean, best first; only when none was given.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub products: Vec<PossibleProduct<'k>>,
    /// Symptoms, best first.
    pub symptoms: Vec<PossibleSymptom<'k>>,
    /// Values whose reading is beyond doubt.
    pub readings: Vec<RecognisedReading<'k>>,
    /// Values of which it is not known what was measured, or that cannot be used as they stand.
    pub values: Vec<UnnamedValue<'k>>,
    /// Facts about line and ingredients.
    pub facts: Vec<PossibleFact<'k>>,
    /// What cannot hold together.
    pub contradictions: Vec<ComplaintContradiction<'k>>,
    /// The rest of the text.
    pub not_understood: Vec<Quote>,
    /// A case with what is sure, as `POST /v1/diagnoses` takes it; left out while the product is not known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub draft: Option<CaseDocument>,
}

/// What people's safety asks for first.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ComplaintCaution {
    /// What the words may mean.
    pub kind: AlarmKind,
    /// What to do, and who decides.
    pub text: &'static str,
    /// The words.
    pub quotes: Vec<Quote>,
}

/// Dangers to people that a complaint may tell of. None of them is diagnosed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum AlarmKind {
    /// Metal, glass, stones, insects and whatever else does not belong into food.
    ForeignMatter,
    /// Someone fell ill or was hurt.
    IllnessOrInjury,
    /// A reaction to an allergen, or an allergen that the label does not tell.
    AllergicReaction,
    /// A smell or taste of cleaning agents, fuels and the like.
    ChemicalTaint,
}

/// Words of the text.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, ToSchema)]
pub struct Quote {
    /// The words.
    #[schema(example = "hollow under the lid")]
    pub text: String,
    /// First character, counted in Unicode code points from 0.
    #[schema(example = 0)]
    pub start: usize,
    /// Character behind the last.
    #[schema(example = 20)]
    pub end: usize,
}

/// What the text says about something.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, ToSchema)]
#[serde(rename_all = "snake_case")]
pub enum Saying {
    /// That it is so.
    Present,
    /// That it is hardly so: of next to no certainty.
    Hardly,
    /// That it is not so.
    Absent,
    /// One or the other.
    Unclear,
}

/// A product that the text may mean.
#[derive(Debug, Serialize, ToSchema)]
pub struct PossibleProduct<'k> {
    /// Id.
    #[schema(example = "hamburger_bun")]
    pub product: &'k str,
    /// Title.
    #[schema(example = "Hamburger bun")]
    pub title: &'k str,
    /// How well the words fit, 0 to 1.
    pub score: f64,
    /// The words.
    pub quotes: Vec<Quote>,
}

/// A symptom that the text may mean.
#[derive(Debug, Serialize, ToSchema)]
pub struct PossibleSymptom<'k> {
    /// Id.
    #[schema(example = "hollow_under_crust")]
    pub symptom: &'k str,
    /// Title.
    #[schema(example = "Hollow under the top crust")]
    pub title: &'k str,
    /// How to recognise it.
    pub description: &'k str,
    /// How well the words fit, 0 to 1. It is no probability.
    #[schema(example = 0.87)]
    pub score: f64,
    /// Whether the text says that it is there or that it is not.
    pub said: Saying,
    /// Whether it is beyond doubt, and so in the draft; the others are there to choose from.
    pub sure: bool,
    /// The words.
    pub quotes: Vec<Quote>,
}

/// A value whose reading the words around it name.
#[derive(Debug, Serialize, ToSchema)]
pub struct RecognisedReading<'k> {
    /// Id.
    #[schema(example = "dough_temperature")]
    pub reading: &'k str,
    /// Title.
    #[schema(example = "dough temperature")]
    pub title: &'k str,
    /// Value in the reading's own unit.
    #[schema(example = 31.0)]
    pub value: f64,
    /// UCUM code of that unit.
    #[schema(example = "Cel")]
    pub unit: &'k str,
    /// What was taken for granted.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(example = "the scale is not said: 31 [degF] cannot be true for it")]
    pub note: Option<String>,
    /// The words: the name and the value.
    pub quotes: Vec<Quote>,
}

/// A value without a reading.
#[derive(Debug, Serialize, ToSchema)]
pub struct UnnamedValue<'k> {
    /// Value as it stands in the text.
    #[schema(example = 20.0)]
    pub value: f64,
    /// UCUM code of its unit.
    #[schema(example = "min")]
    pub unit: String,
    /// Why it is not taken for a reading.
    #[schema(example = "the words do not tell what was measured")]
    pub reason: &'static str,
    /// Readings of that kind that may be meant, best first.
    pub suggestions: Vec<SuggestedReading<'k>>,
    /// The units to choose from where the text leaves that open, as "degrees" do.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    #[schema(required = false)]
    pub units: Vec<PossibleUnit<'k>>,
    /// The words.
    pub quote: Quote,
}

/// A unit that a value may have.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct PossibleUnit<'k> {
    /// UCUM code.
    #[schema(example = "[degF]")]
    pub unit: &'static str,
    /// Value of the named reading in the reading's own unit, if this is the unit.
    #[schema(example = 37.8)]
    pub value: f64,
    /// UCUM code of the reading's own unit.
    #[schema(example = "Cel")]
    pub reading_unit: &'k str,
    /// Whether the named reading can have that value.
    pub plausible: bool,
}

/// A reading that a value may belong to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
pub struct SuggestedReading<'k> {
    /// Id.
    #[schema(example = "proof_time")]
    pub reading: &'k str,
    /// Title.
    #[schema(example = "proof time")]
    pub title: &'k str,
}

/// A fact that the text may state.
#[derive(Debug, Serialize, ToSchema)]
pub struct PossibleFact<'k> {
    /// Id.
    #[schema(example = "dough_waits_before_divider")]
    pub fact: &'k str,
    /// The question that it answers.
    #[schema(example = "Does dough stand longer than 15 minutes between mixer and divider, or longer than planned?")]
    pub question: &'k str,
    /// How well the words fit, 0 to 1.
    pub score: f64,
    /// What the text says.
    pub said: Saying,
    /// Whether it is beyond doubt, and so in the draft.
    pub sure: bool,
    /// The words.
    pub quotes: Vec<Quote>,
}

/// Statements that cannot all hold; none of them is in the draft.
#[derive(Debug, PartialEq, Eq, Serialize, ToSchema)]
pub struct ComplaintContradiction<'k> {
    /// Ids of the symptoms or readings.
    #[schema(example = json!(["pale_crust", "dark_crust"]))]
    pub ids: Vec<&'k str>,
    /// What is wrong.
    #[schema(example = "`pale_crust` cannot be present together with `dark_crust`")]
    pub text: String,
}
