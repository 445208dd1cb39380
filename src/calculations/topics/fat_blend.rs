//! Blends of fats: their solids, and the blend that comes closest to a wanted curve.

use super::fat::{SCALE, curve, curve_input, scale};
use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, DefaultValue, Input, boolean, choice, number, percent, rows, text, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::Values;
use crate::science::fat::SolidsScale;
use crate::science::fat::blend::{
    AvailableFat, FatBlend, FatKind, Interaction, Requirements, blend_solids, match_curve,
};
use crate::science::{Estimate, Nonsense};

/// Most fats of a blend.
const MOST_FATS: usize = 20;

const KINDS: &[Choice] = &[
    word("palm_oil", "palm oil"),
    word("palm_stearin", "the hard fraction of palm oil"),
    word("palm_kernel_oil", "palm kernel oil"),
    word("palm_kernel_stearin", "the hard fraction of palm kernel oil"),
    word("other_plant", "any other plant fat, fully hydrogenated ones included"),
    word("milk_fat", "milk fat: an animal fat, though vegetarian"),
    word("other_animal", "lard, tallow, poultry or fish fat"),
];
const PARTS: &[Input] = &[
    percent("share", "share of the blend, by mass"),
    percent("solids", "solids of the fat at the temperature that is asked for"),
];
const PAIRS: &[Input] = &[
    number("first", "1", (1.0, 20.0), "place of the first fat in the list, from 1"),
    number("second", "1", (1.0, 20.0), "place of the second fat in the list, from 1"),
    number("points", "%", (-1000.0, 1000.0), "constant fitted on measured blends; above zero softens"),
];
const FATS: &[Input] = &[
    text("name", "name of the fat"),
    choice("kind", KINDS, "what it is"),
    curve_input("solids", "its solids curve, best measured on the lot in hand"),
    boolean("partially_hydrogenated", "whether it is, or contains, partially hydrogenated oil; ask the supplier"),
    percent("trans", "trans fatty acids; leave out what nobody measured").optional(),
    percent("saturated", "saturated fatty acids; leave out what nobody measured").optional(),
];

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "fat_blend_solids",
        title: "Solids of a fat blend",
        description: "Solids of a blend at one temperature by ideal mixing, less pair terms that were fitted on measured blends.",
        inputs: &[
            rows("parts", PARTS, (1, MOST_FATS), "fats of the blend"),
            rows("interactions", PAIRS, (0, 50), "pairs that do not mix ideally").optional(),
        ],
        figures: &[figure("solids", "%", "solids of the blend")],
        example: r#"{"parts": [{"share": 60, "solids": 30}, {"share": 40, "solids": 5}]}"#,
        science: &["fat::blend::blend_solids"],
        renamed: &[],
        compute: |values| {
            let part = |row: &Values| (row.number("share"), row.number("solids"));
            let parts: Vec<(f64, f64)> = values.rows("parts").iter().map(part).collect();
            let pairs: Vec<Interaction> = values.rows("interactions").iter().map(interaction).collect();
            Ok(Outcome::of("solids", blend_solids(&parts, &pairs)?))
        },
    },
    Calculation {
        name: "fat_blend_for_curve",
        title: "Fat blend for a solids curve",
        description: "The blend of available fats that comes closest to a wanted solids curve, with what it must respect: no \
            partially hydrogenated fat, no animal fat, limits of trans and saturated fatty acids. A fat whose content under \
            a limit is unknown is left out. The law of the market decides which limits apply.",
        inputs: &[
            rows("fats", FATS, (1, MOST_FATS), "fats that may go in"),
            curve_input("target", "wanted solids curve"),
            boolean("no_partially_hydrogenated", "leave out fats with partially hydrogenated oil")
                .or(DefaultValue::Boolean(false), "no requirement unless given"),
            boolean("no_animal_fat", "leave out fats from animals, milk fat included")
                .or(DefaultValue::Boolean(false), "no requirement unless given"),
            percent("most_trans", "most trans fatty acids of the blend").optional(),
            percent("most_saturated", "most saturated fatty acids of the blend").optional(),
            SCALE,
        ],
        figures: &[
            figure("share", "%", "share of each usable fat, by mass"),
            figure("root_mean_square_error", "%", "root mean square of the residuals"),
            figure("solids", "%", "predicted solids at each temperature of the target"),
            figure("residual", "%", "predicted less wanted solids at each temperature of the target"),
            figure("trans", "%", "trans fatty acids of the blend, where they are known"),
            figure("saturated", "%", "saturated fatty acids of the blend, where they are known"),
        ],
        example: r#"{"fats": [{"name": "palm stearin", "kind": "palm_stearin", "partially_hydrogenated": false, "trans": 0.3, "saturated": 65, "solids": [{"temperature": 10, "solids": 70}, {"temperature": 20, "solids": 50}, {"temperature": 30, "solids": 32}]}, {"name": "rapeseed oil", "kind": "other_plant", "partially_hydrogenated": false, "trans": 0.1, "saturated": 7, "solids": [{"temperature": 10, "solids": 0}, {"temperature": 20, "solids": 0}, {"temperature": 30, "solids": 0}]}], "target": [{"temperature": 10, "solids": 40}, {"temperature": 20, "solids": 28}, {"temperature": 30, "solids": 18}], "most_trans": 2}"#,
        science: &["fat::blend::match_curve", "fat::blend::known_interactions"],
        renamed: &[("scale", "target")],
        compute: closest,
    },
];

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "the input is 1 to 20; anything odd names no fat"
)]
fn interaction(row: &Values) -> Interaction {
    let place = |name: &str| {
        let place = row.number(name);
        // A broken number names no fat, which the science tells.
        if place.fract() == 0.0 { (place as usize).wrapping_sub(1) } else { usize::MAX }
    };
    Interaction { first: place("first"), second: place("second"), points: row.number("points") }
}

fn closest(values: &Values) -> Result<Outcome, Nonsense> {
    let scale = scale(values)?;
    let fats = values.rows("fats").iter().enumerate().map(|(place, row)| available(row, place, scale));
    let fats = fats.collect::<Result<Vec<AvailableFat>, Nonsense>>()?;
    let requirements = Requirements {
        no_partially_hydrogenated: values.boolean("no_partially_hydrogenated"),
        no_animal_fat: values.boolean("no_animal_fat"),
        most_trans_percent: values.optional("most_trans"),
        most_saturated_percent: values.optional("most_saturated"),
    };
    Ok(described(match_curve(&fats, &curve(values, "target", scale)?, &requirements)?))
}

fn available(row: &Values, place: usize, scale: SolidsScale) -> Result<AvailableFat, Nonsense> {
    let kinds = [
        ("palm_oil", FatKind::PalmOil),
        ("palm_stearin", FatKind::PalmStearin),
        ("palm_kernel_oil", FatKind::PalmKernelOil),
        ("palm_kernel_stearin", FatKind::PalmKernelStearin),
        ("other_plant", FatKind::OtherPlant),
        ("milk_fat", FatKind::MilkFat),
        ("other_animal", FatKind::OtherAnimal),
    ];
    let inside = |mut wrong: Nonsense| {
        wrong.faults.iter_mut().for_each(|fault| fault.input = format!("fats[{place}].{}", fault.input));
        wrong
    };
    Ok(AvailableFat {
        name: row.text("name"),
        kind: row.choice("kind", &kinds).map_err(inside)?,
        partially_hydrogenated: row.boolean("partially_hydrogenated"),
        trans_percent: row.optional("trans"),
        saturated_percent: row.optional("saturated"),
        solids: curve(row, "solids", scale).map_err(inside)?,
    })
}

fn described(blend: FatBlend) -> Outcome {
    let method = blend.root_mean_square_error.method;
    let mut outcome = Outcome::default();
    for share in blend.shares {
        outcome = outcome.and_of("share", share.name, Estimate::new(share.percent, "%", method));
    }
    outcome = outcome.and("root_mean_square_error", blend.root_mean_square_error);
    for point in blend.fit {
        let at = format!("{} °C", point.celsius);
        let residual = Estimate { value: point.residual, ..point.predicted.clone() };
        outcome = outcome.and_of("solids", at.clone(), point.predicted).and_of("residual", at, residual);
    }
    let left_out = blend.left_out.into_iter().map(|fat| format!("{} is left out: it {}", fat.name, fat.reason));
    let pairs = blend
        .interactions
        .into_iter()
        .map(|pair| format!("{} and {}: {} ({})", pair.fats.0, pair.fats.1, pair.message, pair.source));
    let others = blend
        .others_may_fit
        .then(|| "there are more usable fats than temperatures: other blends may fit as well".to_owned());
    outcome
        .and_if_known("trans", blend.trans)
        .and_if_known("saturated", blend.saturated)
        .remarks(left_out)
        .remarks(pairs)
        .remarks(others)
}
