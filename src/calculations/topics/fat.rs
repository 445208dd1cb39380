//! Fats: what they are made of, and how much of them is solid.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, DefaultValue, Input, choice, number, percent, rows, text, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::{Values, nonsense};
use crate::science::Nonsense;
use crate::science::fat::{
    AcidShare, Composition, FatForm, FattyAcid, IodinePart, Melt, PlasticRange, SolidsCurve, SolidsReading,
    SolidsScale, Span, blend_iodine_value, compare, consistency, iodine_value, melt_in_the_mouth, plastic_range,
    saponification_value,
};

pub(super) const TEMPERATURE: (f64, f64) = (-60.0, 350.0);
const READINGS: &[Input] =
    &[number("temperature", "Cel", TEMPERATURE, "temperature of the fat"), percent("solids", "solid part")];
const ACIDS: &[Input] = &[
    text("acid", "shorthand of the fatty acid: `18:1` has 18 carbon atoms and one double bond, `18:1t` a trans one"),
    percent("share", "its share of all fatty acids, by mass"),
];
const IODINE_PARTS: &[Input] = &[
    percent("share", "share of the blend, by mass"),
    number("iodine_value", "g/(100.g)", (0.0, 300.0), "iodine value of the fat"),
];
const FORMS: &[Choice] = &[word("triglyceride", "a fat or oil"), word("free_fatty_acids", "free fatty acids")];
const SCALES: &[Choice] = &[
    word("solid_fat_content", "solid fat content by pulsed NMR (AOCS Cd 16b-93, ISO 8292)"),
    word("solid_fat_index", "solid fat index by dilatometry (AOCS Cd 10-57)"),
];

pub(super) const SCALE: Input = choice("scale", SCALES, "scale of the solids, the same for all curves")
    .or(DefaultValue::Word("solid_fat_content"), "common practice: the scale of today's data sheets");
/// A solids curve under a name.
pub(super) const fn curve_input(name: &'static str, description: &'static str) -> Input {
    rows(name, READINGS, (1, 40), description)
}
const FATTY_ACIDS: Input = rows("fatty_acids", ACIDS, (1, 60), "fatty acids of the fat; traces may be left out");

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "iodine_value",
        title: "Calculated iodine value",
        description: "Iodine value of a fat from its fatty acids: how many double bonds it has.",
        inputs: &[
            FATTY_ACIDS,
            choice("form", FORMS, "whether the acids are bound to glycerol")
                .or(DefaultValue::Word("triglyceride"), "fats and oils are triglycerides"),
            percent("unsaponifiable", "unsaponifiable matter, when it is known").optional(),
        ],
        figures: &[figure("iodine_value", "g/(100.g)", "iodine value")],
        example: r#"{"fatty_acids": [{"acid": "16:0", "share": 44}, {"acid": "18:0", "share": 5}, {"acid": "18:1", "share": 40}, {"acid": "18:2", "share": 10}]}"#,
        science: &["fat::iodine_value"],
        renamed: &[],
        compute: |values| {
            let forms = [("triglyceride", FatForm::Triglyceride), ("free_fatty_acids", FatForm::FreeFattyAcids)];
            let form = values.choice("form", &forms)?;
            Ok(Outcome::of(
                "iodine_value",
                iodine_value(&fatty_acids(values)?, form, values.optional("unsaponifiable"))?,
            ))
        },
    },
    Calculation {
        name: "iodine_value_of_blend",
        title: "Iodine value of a fat blend",
        description: "Iodine value of a blend, by mass; interesterification does not change it.",
        inputs: &[rows("parts", IODINE_PARTS, (1, 30), "fats of the blend")],
        figures: &[figure("iodine_value", "g/(100.g)", "iodine value of the blend")],
        example: r#"{"parts": [{"share": 70, "iodine_value": 52}, {"share": 30, "iodine_value": 110}]}"#,
        science: &["fat::blend_iodine_value"],
        renamed: &[("percent", "share")],
        compute: |values| {
            let part =
                |row: &Values| IodinePart { percent: row.number("share"), iodine_value: row.number("iodine_value") };
            let parts: Vec<IodinePart> = values.rows("parts").iter().map(part).collect();
            Ok(Outcome::of("iodine_value", blend_iodine_value(&parts)?))
        },
    },
    Calculation {
        name: "saponification_value",
        title: "Calculated saponification value",
        description: "Saponification value of a fat from its fatty acids: a measure of the mean length of its chains.",
        inputs: &[FATTY_ACIDS],
        figures: &[figure("saponification_value", "mg/g", "saponification value, as potassium hydroxide")],
        example: r#"{"fatty_acids": [{"acid": "12:0", "share": 48}, {"acid": "14:0", "share": 18}, {"acid": "16:0", "share": 10}, {"acid": "18:1", "share": 20}]}"#,
        science: &["fat::saponification_value"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("saponification_value", saponification_value(&fatty_acids(values)?))),
    },
    Calculation {
        name: "fat_solids_at_temperature",
        title: "Solids of a fat at a temperature",
        description: "Solids between two readings of a curve; beyond the readings the nearest one is repeated, and that is said.",
        inputs: &[
            curve_input("solids", "solids curve of the fat"),
            number("temperature", "Cel", TEMPERATURE, "temperature"),
            SCALE,
        ],
        figures: &[figure("solids", "%", "solid part")],
        example: r#"{"solids": [{"temperature": 10, "solids": 48}, {"temperature": 20, "solids": 24}, {"temperature": 30, "solids": 8}], "temperature": 18}"#,
        science: &[],
        renamed: &[],
        compute: |values| {
            let solids = curve(values, "solids", scale(values)?)?.at(values.number("temperature"))?;
            Ok(Outcome::of("solids", solids))
        },
    },
    Calculation {
        name: "fat_consistency",
        title: "Consistency of a fat at its solids",
        description: "What a share of solids means in work. Texturising and crystal form shift the limits.",
        inputs: &[percent("solids", "solid fat content")],
        figures: &[],
        example: r#"{"solids": 22}"#,
        science: &["fat::consistency"],
        renamed: &[],
        compute: |values| {
            let meaning = consistency(values.number("solids")).meaning();
            Ok(Outcome::default().remark(format!("the fat {meaning} ({CONSISTENCY_SOURCE})")))
        },
    },
    Calculation {
        name: "fat_plastic_range",
        title: "Plastic range and melt of a fat",
        description: "Temperatures at which a fat can be worked, and whether it leaves a waxy film in the mouth.",
        inputs: &[curve_input("solids", "solids curve of the fat"), SCALE],
        figures: &[
            figure(
                "plastic_from",
                "Cel",
                "coldest temperature of 15 to 25 % solids; only when the curve comes into it",
            ),
            figure("plastic_to", "Cel", "warmest temperature of 15 to 25 % solids; only when the curve comes into it"),
            figure(
                "workable_from",
                "Cel",
                "coldest temperature of 10 to 40 % solids; only when the curve comes into it",
            ),
            figure("workable_to", "Cel", "warmest temperature of 10 to 40 % solids; only when the curve comes into it"),
            figure("solids_at_33", "%", "solids at 33.3 °C"),
            figure("solids_at_body_temperature", "%", "solids at 37 °C"),
        ],
        example: r#"{"solids": [{"temperature": 10, "solids": 48}, {"temperature": 20, "solids": 24}, {"temperature": 30, "solids": 8}, {"temperature": 40, "solids": 1}]}"#,
        science: &["fat::plastic_range", "fat::melt_in_the_mouth"],
        renamed: &[],
        compute: |values| {
            let curve = curve(values, "solids", scale(values)?)?;
            Ok(with_melt(with_range(Outcome::default(), plastic_range(&curve), None), melt_in_the_mouth(&curve), None))
        },
    },
    Calculation {
        name: "fat_comparison",
        title: "Two fats side by side",
        description: "Where two fats differ over temperature, and what that does at work and in the mouth.",
        inputs: &[
            curve_input("present", "solids curve of the fat in use"),
            curve_input("other", "solids curve of the other fat"),
            number("working_temperature", "Cel", TEMPERATURE, "temperature at which the fat is worked"),
            SCALE,
        ],
        figures: &[
            figure(
                "difference_at_work",
                "%",
                "solids of the other fat less those of the fat in use, at the working temperature",
            ),
            figure("widest_difference", "%", "the widest difference"),
            figure("difference", "%", "the difference at each temperature"),
            figure("plastic_from", "Cel", "coldest temperature of 15 to 25 % solids"),
            figure("plastic_to", "Cel", "warmest temperature of 15 to 25 % solids"),
            figure("workable_from", "Cel", "coldest temperature of 10 to 40 % solids"),
            figure("workable_to", "Cel", "warmest temperature of 10 to 40 % solids"),
            figure("solids_at_33", "%", "solids at 33.3 °C"),
            figure("solids_at_body_temperature", "%", "solids at 37 °C"),
        ],
        example: r#"{"present": [{"temperature": 10, "solids": 48}, {"temperature": 20, "solids": 24}, {"temperature": 30, "solids": 8}], "other": [{"temperature": 10, "solids": 60}, {"temperature": 20, "solids": 35}, {"temperature": 30, "solids": 12}], "working_temperature": 18}"#,
        science: &["fat::compare"],
        renamed: &[],
        compute: comparison,
    },
];

const CONSISTENCY_SOURCE: &str = "McGee, On Food and Cooking, 2004, for 15 to 25 %; from memory: O'Brien, Fats and Oils; \
    Rajah, Fats in Food Technology, for 10 and 40 %";

fn fatty_acids(values: &Values) -> Result<Composition, Nonsense> {
    let mut faults = Nonsense::default();
    let mut shares = Vec::new();
    for (position, row) in values.rows("fatty_acids").iter().enumerate() {
        match row.text("acid").parse::<FattyAcid>() {
            Ok(acid) => shares.push(AcidShare { acid, percent: row.number("share") }),
            Err(wrong) => {
                for fault in wrong.faults {
                    faults.unless(false, &format!("fatty_acids[{position}].acid"), fault.message);
                }
            }
        }
    }
    faults.or_ok()?;
    Composition::new(shares).map_err(|wrong| told_of("fatty_acids", wrong))
}

/// Faults of the parts of an input, told of the whole input.
fn told_of(input: &str, wrong: Nonsense) -> Nonsense {
    let mut faults = Nonsense::default();
    for fault in wrong.faults {
        let message = if fault.input == input { fault.message } else { format!("{} {}", fault.input, fault.message) };
        faults.unless(false, input, message);
    }
    faults
}

/// The scale that all curves are on.
pub(super) fn scale(values: &Values) -> Result<SolidsScale, Nonsense> {
    let scales = [("solid_fat_content", SolidsScale::SolidFatContent), ("solid_fat_index", SolidsScale::SolidFatIndex)];
    values.choice("scale", &scales)
}

/// A solids curve of an input.
pub(super) fn curve(values: &Values, name: &str, scale: SolidsScale) -> Result<SolidsCurve, Nonsense> {
    let reading = |row: &Values| SolidsReading { celsius: row.number("temperature"), percent: row.number("solids") };
    let readings: Vec<SolidsReading> = values.rows(name).iter().map(reading).collect();
    if readings.is_empty() {
        return Err(nonsense(name, "has no readings".to_owned()));
    }
    SolidsCurve::new(scale, readings).map_err(|wrong| told_of(name, wrong))
}

fn comparison(values: &Values) -> Result<Outcome, Nonsense> {
    let scale = scale(values)?;
    let (present, other) = (curve(values, "present", scale)?, curve(values, "other", scale)?);
    let compared = compare(&present, &other, values.number("working_temperature"))?;
    let at = |celsius: f64| format!("{celsius} °C");
    let mut outcome = Outcome::of("difference_at_work", compared.at_work.points).and_of(
        "widest_difference",
        at(compared.widest.celsius),
        compared.widest.points,
    );
    for difference in compared.differences {
        outcome = outcome.and_of("difference", at(difference.celsius), difference.points);
    }
    let (own, others) = compared.plastic;
    outcome = with_range(with_range(outcome, own, Some("present")), others, Some("other"));
    let (own, others) = compared.melt;
    outcome = with_melt(with_melt(outcome, own, Some("present")), others, Some("other"));
    Ok(outcome.remarks(compared.meaning))
}

fn with_range(outcome: Outcome, range: PlasticRange, of: Option<&str>) -> Outcome {
    let spans = [("plastic_from", "plastic_to", range.good), ("workable_from", "workable_to", range.workable)];
    spans.into_iter().fold(outcome, |outcome, (from_name, to_name, span)| match span {
        Some(Span { from, to }) => outcome.and_of_some(from_name, of, from).and_of_some(to_name, of, to),
        None => outcome,
    })
}

fn with_melt(outcome: Outcome, melt: Melt, of: Option<&str>) -> Outcome {
    let fat = of.map_or("the fat".to_owned(), |of| format!("the {of} fat"));
    let waxy = match melt.waxy {
        Some(true) => "leaves a waxy film in the mouth",
        Some(false) => "melts clean in the mouth",
        None => "has too short a curve to judge its melt in the mouth",
    };
    outcome
        .and_of_some("solids_at_33", of, melt.at_33)
        .and_of_some("solids_at_body_temperature", of, melt.at_body)
        .remark(format!("{fat} {waxy} (limits from memory: after Charteris and Keogh 1991; fat handbooks)"))
}
