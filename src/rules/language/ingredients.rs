//! Words that describe ingredients: composition, roles, soda and acids, and the main stage of a family's formulas.

use super::super::code::Code;
use super::super::term::{Kind, Term};
use super::arguments;
use super::{Call, Word, describes, settles};
use crate::knowledge::{Composition, Family, Ingredient, Leavening};
use crate::science::formula::Stage;
use crate::science::leavening::{HIGHEST_NEUTRALISING_VALUE, LEAVENING_ACIDS, leavening_acid};
use crate::suggest::did_you_mean;

const INGREDIENT: &[Kind] = &[Kind::Ingredient];

pub(super) const WORDS: &[Word] = &[
    settles("flour", INGREDIENT, ".flour()", |call| {
        if call.takes(1, 1) {
            call.set::<Ingredient>(|ingredient| ingredient.is_flour = true);
        }
    }),
    settles("composition", INGREDIENT, ".composition(#{ water: 14, protein: 12 })", composition),
    describes("brings", INGREDIENT, ".brings(wheat, milk)", |call| {
        let allergens = call.many(1, "an allergen", arguments::allergen);
        call.set::<Ingredient>(|ingredient| ingredient.allergens.extend(allergens));
    }),
    describes("role", INGREDIENT, ".role(\"fat\")` or `.role(\"milk\", \"liquid\")", role),
    settles("soda", INGREDIENT, ".soda(27)", |call| leavening(call, 100.0, |own, share| own.soda = share)),
    settles("potassium_bicarbonate", INGREDIENT, ".potassium_bicarbonate(100)", |call| {
        leavening(call, 100.0, |own, share| own.potassium_bicarbonate = share);
    }),
    settles("ammonium_bicarbonate", INGREDIENT, ".ammonium_bicarbonate(100)", |call| {
        leavening(call, 100.0, |own, share| own.ammonium_bicarbonate = share);
    }),
    describes("neutralising_value", INGREDIENT, ".neutralising_value(72)", |call| {
        leavening(call, HIGHEST_NEUTRALISING_VALUE, |own, value| own.neutralising_value += value);
    }),
    describes("acid", INGREDIENT, ".acid(\"sapp\")` or `.acid(\"sapp\", 38)", acid),
    settles("main_stage", &[Kind::Family], ".main_stage(\"filling\")", main_stage),
];

fn role(call: &mut Call<'_>) {
    let names = call.many(1, "a role", arguments::text);
    for name in names {
        if let Some(role) = call.role_named(&name) {
            call.set::<Ingredient>(|ingredient| ingredient.roles.push(role));
        }
    }
}

fn leavening(call: &mut Call<'_>, most: f64, change: fn(&mut Leavening, f64)) {
    if call.takes(2, 2)
        && let Some(number) = call.number_within(1, 0.0, most)
    {
        call.set::<Ingredient>(|ingredient| change(ingredient.leavening.get_or_insert_default(), number));
    }
}

/// An acid of the table of neutralising values, and its share of the ingredient where that is not all of it.
fn acid(call: &mut Call<'_>) {
    if !call.takes(2, 3) {
        return;
    }
    let name = call.text(1);
    let share = if call.arguments.len() == 3 { call.number_within(2, 0.0, 100.0) } else { Some(100.0) };
    let (Some(name), Some(share)) = (name, share) else { return };
    let Some(acid) = leavening_acid(&name) else {
        let names = LEAVENING_ACIDS.iter().map(|acid| acid.name);
        let all = || {
            let listed: Vec<String> =
                LEAVENING_ACIDS.iter().map(|acid| format!("{} ({})", acid.name, acid.title)).collect();
            format!("the acids are {}; of another one say `.neutralising_value(…)`", listed.join(", "))
        };
        let help = did_you_mean(&name, names).unwrap_or_else(all);
        return call.fault(Code::UnknownName, format!("unknown leavening acid `{name}`"), Some(help));
    };
    let value = acid.neutralising_value * share / 100.0;
    call.set::<Ingredient>(|ingredient| ingredient.leavening.get_or_insert_default().neutralising_value += value);
}

fn main_stage(call: &mut Call<'_>) {
    if !call.takes(2, 2) {
        return;
    }
    let Some(name) = call.text(1) else { return };
    match Stage::named(&name) {
        Some(stage) => call.set::<Family>(|family| family.main_stage = stage),
        None => {
            let names = Stage::ALL.map(Stage::name);
            let help = did_you_mean(&name, names).unwrap_or_else(|| format!("the stages are {}", names.join(", ")));
            call.fault(Code::UnknownName, format!("unknown stage `{name}`"), Some(help));
        }
    }
}

fn composition(call: &mut Call<'_>) {
    if !call.takes(2, 2) {
        return;
    }
    let Some(Term::Map(members)) = call.argument(1, "a map of components") else {
        return call.wrong("`composition` wants a map of components".to_owned());
    };
    let mut composition = Composition::default();
    for (name, share) in &members {
        let component = Composition::COMPONENTS.iter().find(|(own, ..)| own == name);
        match (component, share) {
            (Some((.., set)), Term::Number(share)) if (0.0..=100.0).contains(share) => set(&mut composition, *share),
            (Some(_), _) => call.out_of_range(format!("`{name}` is not a number between 0 and 100 g/100 g")),
            (None, _) => {
                let help = did_you_mean(name, Composition::COMPONENTS.iter().map(|(own, ..)| *own));
                let all = || format!("the components are {}", Composition::COMPONENTS.map(|(own, ..)| own).join(", "));
                let help = Some(help.unwrap_or_else(all));
                call.fault(Code::UnknownName, format!("unknown component `{name}`"), help);
            }
        }
    }
    if composition.known_total() > Composition::MOST {
        call.out_of_range(format!("the components add up to {} g in 100 g", composition.known_total()));
    }
    call.set::<Ingredient>(|ingredient| ingredient.composition = composition);
}
