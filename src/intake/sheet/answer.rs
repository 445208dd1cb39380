//! The sheet as it is told.

use serde::Serialize;
use utoipa::ToSchema;

/// What to ask about a product that went wrong.
#[derive(Debug, Serialize, ToSchema)]
pub struct IntakeSheet<'k> {
    /// Id of the product.
    #[schema(example = "hamburger_bun")]
    pub product: &'k str,
    /// Title of the product.
    #[schema(example = "Hamburger bun")]
    pub title: &'k str,
    /// How the order was found.
    pub method: &'static str,
    /// Symptoms to look for, by part of the product; parts and symptoms in the order of what they usually tell.
    pub symptoms: Vec<SheetPart<'k>>,
    /// The other symptoms of the product, in the order of the rules.
    pub other_symptoms: Vec<SheetChoice<'k>>,
    /// Readings worth having first, by what they usually tell a minute.
    pub readings: Vec<SheetReading<'k>>,
    /// Questions about line and ingredients, by what they usually tell a minute.
    pub facts: Vec<SheetFact<'k>>,
    /// What the formula is wanted for.
    pub formula: SheetFormula<'k>,
    /// What answers must respect.
    pub requirements: SheetRequirements<'k>,
    /// What identifies the case.
    pub reference: Vec<SheetBlank>,
    /// Read before looking, smelling or tasting.
    pub cautions: Vec<&'k str>,
}

/// Symptoms of a part.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetPart<'k> {
    /// Part of the product.
    #[schema(example = "crust")]
    pub part: &'k str,
    /// Its symptoms.
    pub symptoms: Vec<SheetSymptom<'k>>,
}

/// A symptom to look for.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetSymptom<'k> {
    /// Id.
    #[schema(example = "hollow_under_crust")]
    pub symptom: &'k str,
    /// Title.
    pub title: &'k str,
    /// How to recognise it.
    pub description: &'k str,
    /// What looking for it usually tells, bits.
    #[schema(example = 0.031)]
    pub information_bits: f64,
}

/// A reading worth having.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetReading<'k> {
    /// Id.
    #[schema(example = "dough_temperature")]
    pub reading: &'k str,
    /// Title.
    pub title: &'k str,
    /// What is measured, where and when.
    pub description: &'k str,
    /// UCUM code of the unit that the rules use.
    #[schema(example = "Cel")]
    pub unit: &'k str,
    /// The unit as people write it.
    #[schema(example = "°C")]
    pub symbol: String,
    /// How to take it.
    pub method: &'k str,
    /// Minutes to take it.
    pub effort_minutes: f64,
    /// What it usually tells, bits.
    pub information_bits: f64,
}

/// A question about line or ingredients.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetFact<'k> {
    /// Id.
    #[schema(example = "dough_waits_before_divider")]
    pub fact: &'k str,
    /// The question.
    pub question: &'k str,
    /// Minutes to find out.
    pub effort_minutes: f64,
    /// What it usually tells, bits.
    pub information_bits: f64,
}

/// What is wanted of the formula.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetFormula<'k> {
    /// What to give.
    pub note: &'static str,
    /// What it gives without any measuring, by what that usually tells.
    pub gives: Vec<SheetGiven<'k>>,
    /// Ingredients whose shares the rules of the product ask for by name: most asked for first.
    pub ingredients: Vec<SheetIngredient<'k>>,
}

/// A reading that follows from the formula.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetGiven<'k> {
    /// Id.
    #[schema(example = "salt_on_flour")]
    pub reading: &'k str,
    /// Title.
    pub title: &'k str,
    /// What it usually tells, bits.
    pub information_bits: f64,
}

/// An ingredient of the formula.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetIngredient<'k> {
    /// Id.
    #[schema(example = "water")]
    pub ingredient: &'k str,
    /// Title.
    pub title: &'k str,
}

/// What a case may require.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetRequirements<'k> {
    /// Diets.
    pub diets: Vec<SheetChoice<'k>>,
    /// Allergens to avoid.
    pub allergens: Vec<SheetChoice<'k>>,
    /// Markets whose law may apply.
    pub markets: Vec<SheetChoice<'k>>,
}

/// Something to choose.
#[derive(Debug, Serialize, ToSchema)]
pub struct SheetChoice<'k> {
    /// Id.
    #[schema(example = "halal")]
    pub id: &'k str,
    /// Title.
    pub title: &'k str,
}

/// A blank to fill in; it goes to the `reference` of a case.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
pub struct SheetBlank {
    /// Name of the member.
    #[schema(example = "lot")]
    pub name: &'static str,
    /// What to write.
    #[schema(example = "Lot or batch")]
    pub title: &'static str,
}
