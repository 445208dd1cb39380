//! Fillings, jams and gels.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, Input, boolean, choice, number, percent, rows, text, word};
use crate::calculations::outcome::{FigureKind, Outcome, figure};
use crate::calculations::values::Values;
use crate::science::filling::{
    BakeStableFilling, Check, FillingPart, FreezeThaw, GelatinGel, GelatinUse, Heating, HoldRule, LowMethoxyl,
    PectinGel, Position, Protease, SettingClass, Stability, StarchPaste, Thickener, bake_stable_filling,
    bloom_exchange, cook_down, freeze_thaw, fruit_protease, gelatin_gel, high_methoxyl_gel, low_methoxyl_gel,
    minutes_to_reduce, setting_class, soluble_solids,
};
use crate::science::{Estimate, Method, Nonsense};

const TEMPERATURE: (f64, f64) = (-60.0, 350.0);
const HOURS: (f64, f64) = (0.0, 10_000.0);
const PH: Input = number("ph", "[pH]", (0.0, 14.0), "pH of the batch when it is deposited");
const SOLIDS: Input = percent("soluble_solids", "soluble solids when it is deposited");
const PECTIN: Input = percent("pectin", "pectin in the batch");

const PARTS: &[Input] = &[
    text("name", "name of the ingredient").optional(),
    number("mass", "kg", (0.0, 100_000.0), "mass of the ingredient"),
    percent("soluble_solids", "its soluble solids"),
];
const USES: &[Choice] =
    &[word("any", "any gel"), word("dessert_or_mousse", "dessert jelly or mousse"), word("foam", "foamed confection")];
const FRUITS: &[Choice] = &[
    word("pineapple", "bromelain"),
    word("papaya", "papain"),
    word("kiwi", "actinidin; some cultivars hold little of it"),
    word("fig", "ficin"),
];
const THICKENERS: &[Choice] = &[
    word("native_maize", "native maize starch"),
    word("native_tapioca", "native tapioca starch"),
    word("modified_waxy_maize", "waxy maize starch, cross-linked and hydroxypropylated"),
    word("agar", "agar"),
    word("kappa_carrageenan", "kappa carrageenan"),
    word("iota_carrageenan", "iota carrageenan"),
];

const FRUIT: Input = choice("fruit", FRUITS, "fruit whose enzyme digests gelatin and milk protein");
const MISSED: &[FigureKind] = &[figure("windows_missed", "1", "published windows that the batch lies outside")];
const WINDOWS: Method = Method {
    name: "count of published windows that the batch lies outside",
    source: "the windows of the remarks, each with its own source",
    domain: "0 does not promise a gel: a trial decides",
};
const CLASS_SETTING: Method = Method {
    name: "setting temperature of the class",
    source: "from memory: Phillips and Williams, Handbook of Hydrocolloids",
    domain: "65 % solids, pH 3.0; do not pump or stir below it",
};

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "soluble_solids",
        title: "Soluble solids of a batch",
        description: "Soluble solids before cooking, by mass balance of the ingredients.",
        inputs: &[rows("parts", PARTS, (1, 50), "ingredients, water included")],
        figures: &[figure("soluble_solids", "%", "soluble solids of the batch")],
        example: r#"{"parts": [{"name": "fruit", "mass": 50, "soluble_solids": 10}, {"name": "sugar", "mass": 45, "soluble_solids": 100}]}"#,
        science: &["filling::soluble_solids"],
        renamed: &[],
        compute: |values| Ok(Outcome::of("soluble_solids", soluble_solids(&parts(values))?)),
    },
    Calculation {
        name: "cook_down",
        title: "Water to boil off",
        description: "Water to boil off for wanted soluble solids, and the mass of the batch at the end point.",
        inputs: &[
            rows("parts", PARTS, (1, 50), "ingredients, water included"),
            percent("target", "wanted soluble solids"),
        ],
        figures: &[
            figure("water_to_evaporate", "kg", "water to boil off; negative when water must be added"),
            figure("final_mass", "kg", "mass of the batch at the end point"),
        ],
        example: r#"{"parts": [{"name": "fruit", "mass": 50, "soluble_solids": 10}, {"name": "sugar", "mass": 45, "soluble_solids": 100}], "target": 65}"#,
        science: &["filling::cook_down"],
        renamed: &[],
        compute: |values| {
            let down = cook_down(&parts(values), values.number("target"))?;
            Ok(Outcome::of("water_to_evaporate", down.water_to_evaporate).and("final_mass", down.final_mass))
        },
    },
    Calculation {
        name: "high_methoxyl_pectin_gel",
        title: "Windows of a high-methoxyl pectin gel",
        description: "Holds pH, soluble solids and dose against the published windows within which such a gel sets.",
        inputs: &[PH, SOLIDS, PECTIN],
        figures: MISSED,
        example: r#"{"ph": 3.1, "soluble_solids": 65, "pectin": 0.5}"#,
        science: &["filling::high_methoxyl_gel"],
        renamed: &[],
        compute: |values| Ok(windows(&high_methoxyl_gel(&pectin_gel(values))?)),
    },
    Calculation {
        name: "low_methoxyl_pectin_gel",
        title: "Windows of a low-methoxyl pectin gel",
        description: "Holds pH, soluble solids, dose and calcium against the published windows within which such a gel sets.",
        inputs: &[
            PH,
            SOLIDS,
            PECTIN,
            number("calcium", "mg/g", (0.0, 1000.0), "calcium on pectin, that of fruit, milk and water included"),
            boolean("amidated", "whether the pectin is amidated: it asks for less calcium"),
        ],
        figures: MISSED,
        example: r#"{"ph": 3.6, "soluble_solids": 45, "pectin": 0.9, "calcium": 25, "amidated": false}"#,
        science: &["filling::low_methoxyl_gel"],
        renamed: &[],
        compute: |values| {
            let batch = LowMethoxyl {
                gel: pectin_gel(values),
                calcium_mg_per_g: values.number("calcium"),
                amidated: values.boolean("amidated"),
            };
            Ok(windows(&low_methoxyl_gel(&batch)?))
        },
    },
    Calculation {
        name: "pectin_setting_class",
        title: "Setting class of a high-methoxyl pectin",
        description: "How fast a pectin sets, by its degree of esterification.",
        inputs: &[percent("esterification", "degree of esterification")],
        figures: &[
            figure("setting_temperature_low", "Cel", "lower end of the setting temperature, where it is known"),
            figure("setting_temperature_high", "Cel", "upper end of the setting temperature, where it is known"),
        ],
        example: r#"{"esterification": 72}"#,
        science: &["filling::setting_class"],
        renamed: &[],
        compute: |values| Ok(class(setting_class(values.number("esterification"))?)),
    },
    Calculation {
        name: "gelatin_gel",
        title: "Windows of a gelatin gel",
        description: "Holds dose, pH, solids and temperatures against the published windows of gelatin. Gelatin is not \
            vegetarian, and halal or kosher only from certified sources.",
        inputs: &[
            choice("purpose", USES, "what the gel is for"),
            percent("gelatin", "gelatin in the batch"),
            PH,
            SOLIDS,
            number("setting_temperature", "Cel", TEMPERATURE, "temperature at which it is left to set"),
            number("hottest_temperature", "Cel", TEMPERATURE, "hottest temperature that the dissolved gelatin saw"),
        ],
        figures: MISSED,
        example: r#"{"purpose": "dessert_or_mousse", "gelatin": 1.5, "ph": 5.5, "soluble_solids": 30, "setting_temperature": 5, "hottest_temperature": 60}"#,
        science: &["filling::gelatin_gel"],
        renamed: &[],
        compute: gelatin,
    },
    Calculation {
        name: "gelatin_bloom_exchange",
        title: "Dose of a gelatin of another Bloom strength",
        description: "Dose that gives equal gel strength with a gelatin of another Bloom strength.",
        inputs: &[
            percent("dose", "dose of the gelatin in use"),
            number("from_bloom", "1", (0.0, 1000.0), "its Bloom strength"),
            number("to_bloom", "1", (0.0, 1000.0), "Bloom strength of the other gelatin"),
        ],
        figures: &[figure("dose", "%", "dose of the other gelatin")],
        example: r#"{"dose": 1.5, "from_bloom": 200, "to_bloom": 250}"#,
        science: &["filling::bloom_exchange"],
        renamed: &[],
        compute: |values| {
            let [dose, from, to] = ["dose", "from_bloom", "to_bloom"].map(|name| values.number(name));
            Ok(Outcome::of("dose", bloom_exchange(dose, from, to)?))
        },
    },
    Calculation {
        name: "starch_freeze_thaw",
        title: "Freeze-thaw stability of a thickened filling",
        description: "Whether a thickened filling weeps after freezing, as a class with what is known to help; never an amount.",
        inputs: &[
            choice("thickener", THICKENERS, "what thickens or sets the filling"),
            percent("xanthan", "xanthan in the filling").or_number(0.0, "none unless given"),
            percent("sucrose", "sucrose in the filling").or_number(0.0, "none unless given"),
            number("freezing_front", "mm/h", (0.0, 1000.0), "speed of the freezing front, when it is known").optional(),
            number("ph", "[pH]", (0.0, 14.0), "pH, when it is known").optional(),
        ],
        figures: &[],
        example: r#"{"thickener": "native_maize", "xanthan": 0.3, "ph": 3.2}"#,
        science: &["filling::freeze_thaw"],
        renamed: &[],
        compute: stability,
    },
    Calculation {
        name: "fruit_protease_inactivation",
        title: "Inactivation of a fruit protease",
        description: "How far a hold has stopped the enzyme of pineapple, papaya, kiwi or fig, which else digests gelatin.",
        inputs: &[
            FRUIT,
            number("temperature", "Cel", TEMPERATURE, "temperature in the centre of the fruit"),
            number("time", "min", HOURS, "time at that temperature"),
        ],
        figures: &[
            figure("remaining", "%", "activity left, where kinetics are known"),
            figure("decimal_reductions", "1", "decimal reductions, where kinetics are known"),
        ],
        example: r#"{"fruit": "pineapple", "temperature": 65, "time": 10}"#,
        science: &["filling::fruit_protease"],
        renamed: &[],
        compute: |values| {
            let (celsius, minutes) = (values.number("temperature"), values.number("time"));
            let done = fruit_protease(&Heating { protease: protease(values)?, celsius, minutes })?;
            let kept = if done.keeps_rule { "keeps" } else { "does not keep (shorter and hotter may do)" };
            Ok(Outcome::default()
                .and_if_known("remaining", done.remaining)
                .and_if_known("decimal_reductions", done.decimal_reductions)
                .remark(format!("this hold {kept} the rule: {}", hold(&done.rule))))
        },
    },
    Calculation {
        name: "fruit_protease_hold",
        title: "Hold that stops a fruit protease",
        description: "Time at a temperature for so many decimal reductions of the activity of a fruit protease.",
        inputs: &[
            FRUIT,
            number("temperature", "Cel", TEMPERATURE, "temperature in the centre of the fruit"),
            number("decimal_reductions", "1", (0.0, 12.0), "wanted decimal reductions")
                .or_number(3.0, "our choice: what the hold rule for pineapple gives"),
        ],
        figures: &[figure("time", "min", "time at the temperature, where kinetics are known")],
        example: r#"{"fruit": "pineapple", "temperature": 65}"#,
        science: &["filling::minutes_to_reduce"],
        renamed: &[],
        compute: |values| {
            let (fruit, reductions) = (protease(values)?, values.number("decimal_reductions"));
            let time = minutes_to_reduce(fruit, values.number("temperature"), reductions)?;
            Ok(Outcome::default()
                .and_if_known("time", time)
                .remark(format!("the rule that is known to stop it: {}", hold(&fruit.rule()))))
        },
    },
    Calculation {
        name: "bake_stable_filling",
        title: "Windows of a bake-stable fruit filling",
        description: "Holds a filling set with low-methoxyl pectin against a published bake-stable recipe. One recipe is no \
            law: a bake test decides.",
        inputs: &[
            percent("soluble_solids", "soluble solids"),
            percent("pectin", "low-methoxyl pectin in the filling"),
            percent("calcium_citrate", "calcium citrate in the filling"),
            number("rest", "h", HOURS, "rest between filling hot and use"),
        ],
        figures: MISSED,
        example: r#"{"soluble_solids": 66, "pectin": 1.2, "calcium_citrate": 0.06, "rest": 24}"#,
        science: &["filling::bake_stable_filling"],
        renamed: &[],
        compute: |values| {
            let filling = BakeStableFilling {
                soluble_solids_percent: values.number("soluble_solids"),
                pectin_percent: values.number("pectin"),
                calcium_citrate_percent: values.number("calcium_citrate"),
                rest_hours: values.number("rest"),
            };
            Ok(windows(&bake_stable_filling(&filling)?))
        },
    },
];

fn parts(values: &Values) -> Vec<FillingPart> {
    let part = |row: &Values| FillingPart {
        kilograms: row.number("mass"),
        soluble_solids_percent: row.number("soluble_solids"),
    };
    values.rows("parts").iter().map(part).collect()
}

fn pectin_gel(values: &Values) -> PectinGel {
    PectinGel {
        ph: values.number("ph"),
        soluble_solids_percent: values.number("soluble_solids"),
        pectin_percent: values.number("pectin"),
    }
}

/// How many windows are missed, and where the batch stands in each.
fn windows(checks: &[Check]) -> Outcome {
    #[expect(clippy::cast_precision_loss, reason = "a handful of windows is exact in f64")]
    let missed = checks.iter().filter(|check| check.position != Position::Inside).count() as f64;
    Outcome::of("windows_missed", Estimate::new(missed, "1", WINDOWS)).remarks(checks.iter().map(window))
}

fn window(check: &Check) -> String {
    let Check { window, value, .. } = check;
    let range = match (window.low, window.high) {
        (Some(low), Some(high)) => format!("{low} to {high}"),
        (Some(low), None) => format!("at least {low}"),
        (None, Some(high)) => format!("at most {high}"),
        (None, None) => "any".to_owned(),
    };
    let unit = if matches!(window.unit, "1" | "[pH]") { String::new() } else { format!(" {}", window.unit) };
    let stands =
        check.consequence().map_or_else(|| "inside".to_owned(), |consequence| format!("outside: {consequence}"));
    format!("{}: {value}{unit}, window {range}{unit}: {stands} ({})", window.quantity, window.source)
}

fn class(class: Option<SettingClass>) -> Outcome {
    let word = match class {
        Some(SettingClass::UltraRapid) => "ultra rapid set",
        Some(SettingClass::Rapid) => "rapid set",
        Some(SettingClass::MediumRapid) => "medium rapid set",
        Some(SettingClass::Slow) => "slow set",
        None => "no class: the degree lies between the published classes or outside them",
    };
    let outcome = Outcome::default().remark(format!(
        "{word} (Introduction to pectin - properties, technical article of a hydrocolloid laboratory)"
    ));
    match class.and_then(SettingClass::setting_celsius) {
        Some((low, high)) => outcome
            .and("setting_temperature_low", Estimate::new(low, "Cel", CLASS_SETTING))
            .and("setting_temperature_high", Estimate::new(high, "Cel", CLASS_SETTING)),
        None => outcome,
    }
}

fn gelatin(values: &Values) -> Result<Outcome, Nonsense> {
    let uses =
        [("any", GelatinUse::Any), ("dessert_or_mousse", GelatinUse::DessertOrMousse), ("foam", GelatinUse::Foam)];
    let checks = gelatin_gel(&GelatinGel {
        purpose: values.choice("purpose", &uses)?,
        gelatin_percent: values.number("gelatin"),
        ph: values.number("ph"),
        soluble_solids_percent: values.number("soluble_solids"),
        setting_celsius: values.number("setting_temperature"),
        hottest_celsius: values.number("hottest_temperature"),
    })?;
    Ok(windows(&checks).remark(
        "raw pineapple, papaya, kiwi and fig stop gelatin from setting whatever the windows say: see `fruit_protease_hold`",
    ))
}

fn stability(values: &Values) -> Result<Outcome, Nonsense> {
    let thickeners = [
        ("native_maize", Thickener::NativeMaize),
        ("native_tapioca", Thickener::NativeTapioca),
        ("modified_waxy_maize", Thickener::ModifiedWaxyMaize),
        ("agar", Thickener::Agar),
        ("kappa_carrageenan", Thickener::KappaCarrageenan),
        ("iota_carrageenan", Thickener::IotaCarrageenan),
    ];
    let FreezeThaw { stability, source, remarks } = freeze_thaw(&StarchPaste {
        thickener: values.choice("thickener", &thickeners)?,
        xanthan_percent: values.number("xanthan"),
        sucrose_percent: values.number("sucrose"),
        freezing_front_mm_per_hour: values.optional("freezing_front"),
        ph: values.optional("ph"),
    })?;
    let class = match stability {
        Stability::Poor => "poor: weeps after the first cycle",
        Stability::FallsWithCycles => "falls with cycles: releases ever more water with every one",
        Stability::Good => "good: stands several cycles",
    };
    let remarks = remarks.into_iter().map(|(text, source)| format!("{text} ({source})"));
    Ok(Outcome::default()
        .remark(format!("freeze-thaw stability of the thickener alone: {class} ({source})"))
        .remarks(remarks))
}

fn protease(values: &Values) -> Result<Protease, Nonsense> {
    values.choice(
        "fruit",
        &[
            ("pineapple", Protease::Bromelain),
            ("papaya", Protease::Papain),
            ("kiwi", Protease::Actinidin),
            ("fig", Protease::Ficin),
        ],
    )
}

fn hold(rule: &HoldRule) -> String {
    format!("{} °C in the centre for {} min ({})", rule.celsius, rule.minutes, rule.source)
}
