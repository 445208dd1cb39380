//! How many pieces show a difference, which runs tell changes apart, in which order to bake them.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, Input, choice, number, percent, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::{Values, nonsense};
use crate::science::trial_design::{
    Fraction, ONE_BATCH, Risks, TwoLevelDesign, detectable_difference, detectable_proportion, randomised_order,
    sample_size_for_difference, sample_size_for_proportions, two_level_design,
};
use crate::science::{Estimate, Method, Nonsense};

const CONVENTION: &str = "convention; Cohen, Statistical Power Analysis for the Behavioral Sciences, 1988, section 2.4";
const ALPHA: Input = number("alpha", "1", (0.001, 0.5), "risk of seeing a difference that is not there")
    .or_number(Risks::USUAL.alpha, CONVENTION);
const POWER: Input = number("power", "1", (0.5, 0.999), "chance of seeing the difference when it is there")
    .or_number(Risks::USUAL.power, CONVENTION);
const PIECES: Input = number("pieces", "1", (1.0, 1e6), "pieces of each of the two settings");
const DEVIATION: Input = number(
    "standard_deviation",
    "1",
    (0.0, 1e6),
    "standard deviation from piece to piece at one setting, from the plant's own readings",
);
const NOW: Input = percent("now", "share of faulty pieces now");

const FRACTIONS: &[Choice] = &[
    word("full", "every combination, of 2 or 3 factors"),
    word("half", "half of the combinations, of 3 or 4 factors; some effects cannot be told apart"),
];

const DESIGN: Method = Method {
    name: "two-level factorial design in Yates' notation",
    source: "Box, Hunter and Hunter, Statistics for Experimenters, 2005, chapters 5 and 6; NIST/SEMATECH e-Handbook of \
        Statistical Methods, 5.3.3",
    domain: "factors that can be set independently; responses that are measured alike in every run",
};

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "sample_size_for_difference",
        title: "Pieces that show a difference of means",
        description: "How many pieces of each of two settings must be measured to see a difference of the wanted size. \
            Difference and standard deviation are in one unit, whichever it is.",
        inputs: &[
            number("difference", "1", (0.0, 1e6), "least difference that would be worth the change"),
            DEVIATION,
            ALPHA,
            POWER,
        ],
        figures: &[
            figure("pieces", "1", "whole pieces of each setting"),
            figure("exact", "1", "the same before rounding up; 2 at least"),
            figure("by_normal_approximation", "1", "what is reckoned by hand, before rounding up"),
            figure("effect_size", "1", "the difference in standard deviations"),
            figure("significant_difference", "1", "least difference of the two means that is significant then"),
        ],
        example: r#"{"difference": 0.2, "standard_deviation": 0.25}"#,
        science: &["trial_design::sample_size_for_difference"],
        renamed: &[],
        compute: |values| {
            let (difference, deviation) = (values.number("difference"), values.number("standard_deviation"));
            let size = sample_size_for_difference(difference, deviation, risks(values))?;
            let outcome = Outcome::of("pieces", size.pieces).and("exact", size.exact);
            let outcome = outcome.and("by_normal_approximation", size.approximate).and("effect_size", size.effect);
            Ok(outcome.and("significant_difference", size.significant).remark(ONE_BATCH))
        },
    },
    Calculation {
        name: "detectable_difference",
        title: "Difference of means that so many pieces show",
        description: "Least difference that is seen with so many pieces of each of two settings, in the unit of the \
            standard deviation.",
        inputs: &[PIECES, DEVIATION, ALPHA, POWER],
        figures: &[figure("difference", "1", "least difference, in the unit of the standard deviation")],
        example: r#"{"pieces": 12, "standard_deviation": 0.25}"#,
        science: &["trial_design::detectable_difference"],
        renamed: &[],
        compute: |values| {
            let (pieces, deviation) = (values.number("pieces"), values.number("standard_deviation"));
            let difference = detectable_difference(pieces, deviation, risks(values))?;
            Ok(Outcome::of("difference", difference).remark(ONE_BATCH))
        },
    },
    Calculation {
        name: "sample_size_for_proportions",
        title: "Pieces that show a difference of faulty shares",
        description: "How many pieces of each of two settings must be judged good or faulty to see that the share of \
            faulty ones has changed from what it is now to what is wanted.",
        inputs: &[NOW, percent("wanted", "share of faulty pieces that is wanted"), ALPHA, POWER],
        figures: &[
            figure("pieces", "1", "whole pieces of each setting"),
            figure("exact", "1", "the same before rounding up"),
            figure("effect_size", "1", "difference of the arcsine-transformed shares"),
            figure("significant_share", "%", "share from which on the change is significant then"),
        ],
        example: r#"{"now": 20, "wanted": 5}"#,
        science: &["trial_design::sample_size_for_proportions"],
        renamed: &[("now_percent", "now"), ("wanted_percent", "wanted")],
        compute: |values| {
            let (now, wanted) = (values.number("now"), values.number("wanted"));
            let size = sample_size_for_proportions(now, wanted, risks(values))?;
            let outcome = Outcome::of("pieces", size.pieces).and("exact", size.exact);
            let outcome = outcome.and("effect_size", size.effect).and("significant_share", size.significant);
            Ok(outcome.remark(ONE_BATCH))
        },
    },
    Calculation {
        name: "detectable_proportion",
        title: "Faulty share that so many pieces tell from now",
        description: "Highest share of faulty pieces, below that of now, that is seen to be lower with so many pieces of \
            each of two settings.",
        inputs: &[NOW, PIECES, ALPHA, POWER],
        figures: &[figure("wanted", "%", "highest share that is told from that of now")],
        example: r#"{"now": 20, "pieces": 100}"#,
        science: &["trial_design::detectable_proportion"],
        renamed: &[("now_percent", "now")],
        compute: |values| {
            let share = detectable_proportion(values.number("now"), values.number("pieces"), risks(values))?;
            Ok(Outcome::of("wanted", share).remark(ONE_BATCH))
        },
    },
    Calculation {
        name: "factorial_design",
        title: "Two-level factorial design",
        description: "Runs that tell two to four changes and what they do together apart, in Yates' notation, with the \
            order in which to bake them, by lot. Of two halves it is the one with today's setting, `(1)`.",
        inputs: &[
            number("factors", "1", (2.0, 4.0), "how many changes"),
            choice("fraction", FRACTIONS, "whether every combination is run"),
            number("seed", "1", (0.0, 4_294_967_295.0), "whole number that the lot is drawn from")
                .or_number(1.0, "any number serves; write down which"),
        ],
        figures: &[
            figure("runs", "1", "number of runs"),
            figure("position", "1", "place of the run in the order of the day"),
        ],
        example: r#"{"factors": 3, "fraction": "half", "seed": 7}"#,
        science: &["trial_design::two_level_design", "trial_design::randomised_order"],
        renamed: &[],
        compute: |values| {
            let fractions = [("full", Fraction::Full), ("half", Fraction::Half)];
            let design = two_level_design(values.number("factors"), values.choice("fraction", &fractions)?)?;
            design_with_order(&design, seed(values)?)
        },
    },
];

fn risks(values: &Values) -> Risks {
    Risks { alpha: values.number("alpha"), power: values.number("power") }
}

fn seed(values: &Values) -> Result<u32, Nonsense> {
    let seed = values.number("seed");
    if seed.fract() != 0.0 || !(0.0..=f64::from(u32::MAX)).contains(&seed) {
        return Err(nonsense("seed", format!("`{seed}` is not a whole number")));
    }
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // whole, and within the range of `u32`
    Ok(seed as u32)
}

fn design_with_order(design: &TwoLevelDesign, seed: u32) -> Result<Outcome, Nonsense> {
    let count = u32::try_from(design.runs.len()).unwrap_or(u32::MAX);
    let order = randomised_order(seed, 1, count)?;
    let mut outcome = Outcome::of("runs", Estimate::new(f64::from(count), "1", DESIGN));
    for (levels, run) in design.runs.iter().zip(1..) {
        let place = order.iter().zip(1_u32..).find(|(own, _)| **own == run).map_or(0, |(_, place)| place);
        let place = Estimate::new(f64::from(place), "1", DESIGN);
        outcome = outcome.and_of("position", TwoLevelDesign::label(levels), place);
    }
    let resolution = design.resolution.map(|roman| format!(", resolution {roman}")).unwrap_or_default();
    let relation = design.defining_relation.as_ref().map(|own| format!(", {own}")).unwrap_or_default();
    let generator = design.generator.as_ref().map(|own| format!(", {own}")).unwrap_or_default();
    let aliases = design.aliases.iter().map(|alias| format!("{} cannot be told from {}", alias.effect, alias.with));
    Ok(outcome.remark(format!("{}{resolution}{generator}{relation}", design.name)).remarks(aliases))
}
