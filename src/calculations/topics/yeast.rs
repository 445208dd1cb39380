//! Yeast forms, and the gas that yeast makes of sugar.

use crate::calculations::calculation::Calculation;
use crate::calculations::input::{Choice, choice, number, word};
use crate::calculations::outcome::{Outcome, figure};
use crate::calculations::values::Values;
use crate::science::Nonsense;
use crate::science::yeast::{FermentableSugar, YeastForm, fermentation_carbon_dioxide, substitute_yeast};

const FORMS: &[Choice] = &[
    word("fresh", "compressed yeast, about 70 % water"),
    word("active_dry", "granules that have to be soaked first"),
    word("instant", "fine granules that go into the flour"),
    word("cream", "pumpable yeast, about 18 % dry matter"),
];
const SUGARS: &[Choice] =
    &[word("hexose", "glucose or fructose"), word("disaccharide", "sucrose or maltose; lactose is not fermented")];

pub(super) const CALCULATIONS: &[Calculation] = &[
    Calculation {
        name: "yeast_exchange",
        title: "Another form of yeast in place of one",
        description: "Mass of another form of baker's yeast that does the same work, and the water that makes up the \
            difference. Makers' strengths differ: the maker's own factor comes first.",
        inputs: &[
            number("yeast", "kg", (0.0, 100_000.0), "mass of the yeast in use"),
            choice("from", FORMS, "its form"),
            choice("to", FORMS, "the form that takes its place"),
        ],
        figures: &[
            figure("yeast", "kg", "mass of the other form"),
            figure("extra_water", "kg", "water to add; negative is water to leave out"),
        ],
        example: r#"{"yeast": 2, "from": "fresh", "to": "instant"}"#,
        science: &["yeast::substitute_yeast"],
        renamed: &[("mass_kg", "yeast")],
        compute: |values| {
            let other = substitute_yeast(values.number("yeast"), form(values, "from")?, form(values, "to")?)?;
            Ok(Outcome::of("yeast", other.yeast).and("extra_water", other.extra_water))
        },
    },
    Calculation {
        name: "fermentation_gas",
        title: "Carbon dioxide of fermented sugar",
        description: "Carbon dioxide of a mass of sugar that yeast ferments whole; growth takes a part of it.",
        inputs: &[
            number("sugar", "g", (0.0, 1_000_000.0), "mass of the sugar"),
            choice("kind", SUGARS, "what sugar it is"),
        ],
        figures: &[figure("carbon_dioxide", "g", "carbon dioxide")],
        example: r#"{"sugar": 20, "kind": "disaccharide"}"#,
        science: &["yeast::fermentation_carbon_dioxide"],
        renamed: &[("sugar_g", "sugar")],
        compute: |values| {
            let kinds = [("hexose", FermentableSugar::Hexose), ("disaccharide", FermentableSugar::Disaccharide)];
            let gas = fermentation_carbon_dioxide(values.number("sugar"), values.choice("kind", &kinds)?)?;
            Ok(Outcome::of("carbon_dioxide", gas))
        },
    },
];

fn form(values: &Values, name: &str) -> Result<YeastForm, Nonsense> {
    values.choice(
        name,
        &[
            ("fresh", YeastForm::Fresh),
            ("active_dry", YeastForm::ActiveDry),
            ("instant", YeastForm::Instant),
            ("cream", YeastForm::Cream),
        ],
    )
}
