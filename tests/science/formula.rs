//! Baker's percentages, totals, batches and classic ratios.

use proptest::prelude::*;
use whybake::science::formula::{
    Against, Basis, CLASSIC_RATIOS, Component, Composition, Formula, FormulaFigures, Line, Part, PieceOrder, Role,
    Stage, Standing, classic_ratio, compare_with_ratio, extra_water_for_cocoa, figures, scale_to_mass, scale_to_pieces,
};

use crate::published::{Inputs, assert_same, faulty, hold, read};

/// Composition of an ingredient in `tests/reference/ingredients.csv`.
fn composition(name: &str) -> Composition {
    let rows = read("ingredients.csv");
    let row = rows.iter().find(|row| row.text("name") == name).unwrap_or_else(|| panic!("no ingredient {name}"));
    let share = |column: &str| row.text(column).parse::<f64>().ok();
    Composition {
        water_percent: share("water_pct"),
        fat_percent: share("fat_pct"),
        protein_percent: share("protein_pct"),
        sucrose_percent: share("sucrose_pct"),
        glucose_percent: share("glucose_pct"),
        fructose_percent: share("fructose_pct"),
        lactose_percent: share("lactose_pct"),
        maltose_percent: share("maltose_pct"),
        starch_percent: share("starch_pct"),
        salt_percent: share("salt_pct"),
        alcohol_percent: share("alcohol_pct"),
        ash_percent: share("ash_pct"),
        ..Composition::default()
    }
}

fn line(name: &str, mass_kg: f64) -> Line {
    let (stage, name) = match name.split_once('/') {
        Some(("preferment", rest)) => (Stage::Preferment, rest),
        Some(("filling", rest)) => (Stage::Filling, rest),
        Some(("icing", rest)) => (Stage::Icing, rest),
        _ => (Stage::Dough, name),
    };
    Line {
        name: name.to_owned(),
        stage,
        mass_kg,
        composition: composition(name),
        is_flour: name.ends_with("flour"),
        roles: Vec::new(),
    }
}

fn role(name: &str, mass_kg: f64, role: Role) -> Line {
    Line { roles: vec![role], ..line(name, mass_kg) }
}

fn formula(lines: &[(&str, f64)]) -> Formula {
    Formula::new(lines.iter().map(|(name, mass)| line(name, *mass)).collect()).unwrap()
}

fn dough(lines: &[(&str, f64)]) -> FormulaFigures {
    figures(&formula(lines), Part::Dough).unwrap()
}

#[test]
fn published_values() {
    hold("formula.csv", 80, compute);
}

fn compute(calculation: &str, inputs: &Inputs) -> f64 {
    if let Some(item) = calculation.strip_prefix("ratio:") {
        return classic(item);
    }
    let order = ["dough_kg", "pieces", "baked_g", "loss_percent"];
    let lines: Vec<(&str, f64)> = inputs.iter().filter(|(name, _)| !order.contains(name)).collect();
    let formula = formula(&lines);
    let figures = figures(&formula, Part::Dough).unwrap();
    match calculation {
        "hydration" => figures.hydration.exact().unwrap().value,
        "prefermented flour" => figures.prefermented_flour.unwrap().value,
        "sum of percentages" => figures.total_percent.value,
        "syrup strength" => figures.syrup_strength.unwrap().exact().unwrap().value,
        "batch flour for dough kg" => {
            let batch = scale_to_mass(&formula, Part::Dough, inputs.get("dough_kg")).unwrap();
            batch.flour.value
        }
        "batch dough for pieces" => batch_of(&formula, inputs),
        other => {
            let name = other.strip_prefix("percent:").expect("a known quantity");
            figures.percent_of(name).unwrap()
        }
    }
}

#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a count from a table")]
fn batch_of(formula: &Formula, inputs: &Inputs) -> f64 {
    let order = PieceOrder {
        pieces: inputs.get("pieces") as u32,
        baked_piece_kg: inputs.get("baked_g") / 1000.0,
        bake_loss_percent: inputs.get("loss_percent"),
    };
    scale_to_pieces(formula, &order).unwrap().mass.value
}

/// Figure of the classic table: `product:title:low|target|high`.
fn classic(item: &str) -> f64 {
    let [product, title, end] = item.split(':').collect::<Vec<_>>()[..] else {
        panic!("{item}");
    };
    let ratio = classic_ratio(product).unwrap();
    let item = ratio.items.iter().find(|item| item.title == title).unwrap();
    match end {
        "low" => item.low,
        "target" => item.target,
        "high" => item.high,
        other => panic!("{other}"),
    }
    .unwrap()
}

#[test]
fn every_ingredient_of_the_reference_table_is_accepted() {
    for row in read("ingredients.csv") {
        // Salt and soda as such are no dough.
        if ["salt", "soda", "baking powder"].contains(&row.text("name")) {
            continue;
        }
        let checked = Formula::new(vec![line(row.text("name"), 1.0)]);
        assert!(checked.is_ok(), "{}: {checked:?}", row.text("name"));
    }
}

#[test]
fn unknown_share_makes_a_lower_bound_and_names_the_ingredient() {
    let figures = dough(&[("flour", 100.0), ("molasses", 20.0), ("sugar", 10.0)]);
    let sucrose = figures.component(Component::Sucrose).unwrap();
    assert_eq!(sucrose.unknown_in, ["molasses"]);
    assert!(sucrose.exact().is_none());
    // 0.3 % of the flour and 99.8 % of the sugar are known.
    assert_same(sucrose.at_least.value, 0.3 + 9.98);
    // Molasses has 21.87 % water, 0.1 % fat, no protein and 0.094 % salt: the rest could be sucrose.
    let room = (100.0 - 21.87 - 0.1 - 0.094) / 100.0;
    assert_same(sucrose.at_most.value, 0.3 + 9.98 + 20.0 * room);
    assert_eq!(sucrose.at_least.outside_domain, ["a bound: the share is not known of molasses"]);
    // Its water is known, so hydration is a figure.
    assert!(figures.hydration.exact().is_some());
}

#[test]
fn unknown_is_never_zero_for_an_ingredient_without_any_analysis() {
    let mut mystery = line("water", 50.0);
    mystery.name = "improver".to_owned();
    mystery.composition = Composition::default();
    let formula = Formula::new(vec![line("flour", 100.0), mystery]).unwrap();
    let figures = figures(&formula, Part::Dough).unwrap();
    assert_same(figures.hydration.at_least.value, 0.0);
    assert_same(figures.hydration.at_most.value, 50.0);
    assert_eq!(figures.hydration.unknown_in, ["improver"]);
    let strength = figures.syrup_strength.unwrap();
    assert_same(strength.at_least.value, 0.0);
    assert_same(strength.at_most.value, 100.0);
}

#[test]
fn syrup_of_unknown_water_is_weakest_with_the_most_water() {
    let mut syrup = line("water", 10.0);
    syrup.name = "syrup".to_owned();
    syrup.composition.water_percent = None;
    syrup.composition.sucrose_percent = Some(60.0);
    let formula = Formula::new(vec![syrup]).unwrap();
    let strength = figures(&formula, Part::Dough).unwrap().syrup_strength.unwrap();
    assert_eq!(strength.unknown_in, ["syrup"]);
    assert_same(strength.at_least.value, 60.0);
    assert_same(strength.at_most.value, 100.0);
}

#[test]
fn flour_water_counts_in_moisture_and_not_in_hydration() {
    let figures = dough(&[("flour", 100.0), ("water", 60.0)]);
    assert_same(figures.hydration.exact().unwrap().value, 60.0);
    assert_same(figures.total_water.exact().unwrap().value, 60.0);
    assert_same(figures.moisture.exact().unwrap().value, 100.0 * 72.5 / 160.0);
}

#[test]
fn filling_and_icing_are_reckoned_on_their_mass() {
    let formula = formula(&[
        ("flour", 100.0),
        ("water", 55.0),
        ("filling/strawberry jam", 30.0),
        ("filling/water", 10.0),
        ("icing/sugar", 8.0),
        ("icing/water", 2.0),
    ]);
    let filling = figures(&formula, Part::Filling).unwrap();
    assert_eq!(filling.basis, Basis::TotalMass);
    assert_same(filling.percent_of("strawberry jam").unwrap(), 75.0);
    assert!(filling.prefermented_flour.is_none());
    let dough = figures(&formula, Part::Dough).unwrap();
    assert_same(dough.hydration.exact().unwrap().value, 55.0);
    let icing = figures(&formula, Part::Icing).unwrap();
    let strength = icing.syrup_strength.unwrap();
    let figure = strength.exact().unwrap();
    assert!(figure.value > 79.0, "{}", figure.value);
    assert!(figure.outside_domain[0].contains("more than dissolves"));
}

#[test]
fn part_without_lines_has_no_figures() {
    assert!(figures(&formula(&[("flour", 1.0)]), Part::Icing).is_none());
    let batch = scale_to_mass(&formula(&[("flour", 1.0)]), Part::Icing, 1.0);
    assert_eq!(faulty(batch), ["formula"]);
}

#[test]
fn nonsense_lists_every_fault() {
    assert_eq!(faulty(Formula::new(Vec::new())), ["formula"]);
    let mut unnamed = line("water", -1.0);
    unnamed.name = " ".to_owned();
    unnamed.composition.water_percent = Some(f64::NAN);
    let mut heavy = line("sugar", f64::INFINITY);
    heavy.composition.fat_percent = Some(30.0);
    let faults = faulty(Formula::new(vec![unnamed, heavy]));
    assert_eq!(
        faults,
        [
            "formula[0].name",
            "formula[0].mass_kg",
            "formula[0].composition.water",
            "formula[1].mass_kg",
            "formula[1].composition",
        ]
    );
}

#[test]
fn three_hundred_percent_salt_is_nonsense() {
    let lines = vec![line("flour", 1.0), line("water", 0.6), line("salt", 3.0)];
    let nonsense = Formula::new(lines).unwrap_err();
    assert_eq!(nonsense.to_string(), "formula: is 64 % salt, more than 15 % cannot be meant; check the unit");
    let weightless = Formula::new(vec![line("flour", 0.0)]);
    assert_eq!(weightless.unwrap_err().to_string(), "formula: has no mass in its dough");
}

#[test]
fn piece_order_nonsense() {
    let order = PieceOrder { pieces: 0, baked_piece_kg: -0.1, bake_loss_percent: 100.0 };
    let batch = scale_to_pieces(&formula(&[("flour", 1.0)]), &order);
    assert_eq!(faulty(batch), ["pieces", "baked_piece_kg", "bake_loss_percent"]);
}

#[test]
fn short_pastry_against_its_ratio() {
    let formula =
        Formula::new(vec![line("flour", 100.0), role("butter", 50.0, Role::Fat), role("water", 33.0, Role::Water)])
            .unwrap();
    let findings = compare_with_ratio(&formula, classic_ratio("short_pastry").unwrap());
    let standings: Vec<Standing> = findings.iter().map(|finding| finding.standing).collect();
    // No line has the role salt: unknown, not unsalted.
    assert_eq!(standings, [Standing::Below, Standing::Within, Standing::Missing]);
    assert_same(findings[0].from_target_points.unwrap(), -16.0);
    assert!(findings[2].percent.is_none());
}

#[test]
fn cake_balance_compares_roles_with_each_other() {
    let formula = Formula::new(vec![
        line("cake flour", 100.0),
        role("sugar", 120.0, Role::Sugar),
        role("shortening", 60.0, Role::Fat),
        role("egg", 50.0, Role::Egg),
        role("milk", 80.0, Role::Liquid),
    ])
    .unwrap();
    let findings = compare_with_ratio(&formula, classic_ratio("high_ratio_cake").unwrap());
    assert_same(findings[1].percent.as_ref().unwrap().value, 100.0 * 50.0 / 60.0);
    assert_eq!(findings[1].standing, Standing::Below);
    assert_same(findings[2].percent.as_ref().unwrap().value, 100.0 * 130.0 / 120.0);
    assert_eq!(findings[2].standing, Standing::Within);
}

#[test]
fn exact_classic_ratio_stands_within_every_range() {
    for ratio in CLASSIC_RATIOS {
        for item in ratio.items {
            let (low, high) = (item.low.unwrap_or(0.0), item.high.unwrap_or(f64::MAX));
            assert!(low <= high, "{} {}", ratio.product, item.title);
            if let Some(target) = item.target {
                assert!((low..=high).contains(&target), "{} {}", ratio.product, item.title);
            }
            assert!(!item.of.is_empty() && item.against != Against::Roles(&[]));
        }
    }
}

#[test]
fn cocoa_wants_its_own_water() {
    let (least, most) = extra_water_for_cocoa(4.0).unwrap();
    assert_same(least.value, 3.0);
    assert_same(most.value, 4.0);
    assert_eq!(faulty(extra_water_for_cocoa(f64::NAN)), ["cocoa_kg"]);
}

/// Formulas of flour and up to six other ingredients in two stages.
fn any_formula() -> impl Strategy<Value = Formula> {
    let names = prop::sample::select(vec![
        "water",
        "sugar",
        "butter",
        "milk",
        "egg",
        "molasses",
        "honey",
        "preferment/flour",
        "preferment/water",
        "shortening",
    ]);
    (1.0..100.0_f64, prop::collection::vec((names, 0.01..80.0_f64), 1..6)).prop_map(|(flour, others)| {
        let mut lines = vec![line("flour", flour)];
        lines.extend(others.into_iter().map(|(name, mass)| line(name, mass)));
        Formula::new(lines).unwrap()
    })
}

/// What the known components leave over, g/100 g.
fn room_percent(composition: &Composition) -> f64 {
    let known = Component::ALL
        .iter()
        .filter(|component| **component != Component::Ash)
        .filter_map(|component| composition.percent(*component));
    (100.0 - known.sum::<f64>()).max(0.0)
}

fn scaled(formula: &Formula, factor: f64) -> Formula {
    let lines = formula.lines().iter().map(|line| Line { mass_kg: line.mass_kg * factor, ..line.clone() });
    Formula::new(lines.collect()).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn percentages_do_not_depend_on_the_batch(formula in any_formula(), factor in 0.01..1000.0_f64) {
        let one = figures(&formula, Part::Dough).unwrap();
        let other = figures(&scaled(&formula, factor), Part::Dough).unwrap();
        for (left, right) in one.ingredients.iter().zip(&other.ingredients) {
            assert_same(left.percent.value, right.percent.value);
        }
        assert_same(one.hydration.at_least.value, other.hydration.at_least.value);
        assert_same(one.moisture.at_most.value, other.moisture.at_most.value);
        assert_same(one.mass.value * factor, other.mass.value);
    }

    #[test]
    fn batch_conserves_mass(formula in any_formula(), wanted in 0.1..500.0_f64) {
        let batch = scale_to_mass(&formula, Part::Dough, wanted).unwrap();
        assert_same(batch.lines.iter().map(|line| line.mass.value).sum(), wanted);
        // Flour by the rule of the trade: 100 × dough mass / sum of percents.
        let sum = figures(&formula, Part::Dough).unwrap().total_percent.value;
        assert_same(batch.flour.value, 100.0 * wanted / sum);
    }

    #[test]
    fn true_percentages_add_up_to_one_hundred(formula in any_formula()) {
        let figures = figures(&formula, Part::Dough).unwrap();
        assert_same(figures.ingredients.iter().map(|line| line.true_percent.value).sum(), 100.0);
    }

    #[test]
    fn bounds_enclose_whatever_the_unknown_share_is(formula in any_formula(), share in 0.0..1.0_f64) {
        let bounded = figures(&formula, Part::Dough).unwrap();
        let lines = formula.lines().iter().map(|line| {
            let mut line = line.clone();
            if line.composition.sucrose_percent.is_none() {
                line.composition.sucrose_percent = Some(share * room_percent(&line.composition));
            }
            line
        });
        let known = figures(&Formula::new(lines.collect()).unwrap(), Part::Dough).unwrap();
        let bound = bounded.component(Component::Sucrose).unwrap();
        let truth = known.component(Component::Sucrose).unwrap().exact().unwrap().value;
        prop_assert!(bound.at_least.value <= truth + 1e-9);
        prop_assert!(truth <= bound.at_most.value + 1e-9);
        if let (Some(wide), Some(narrow)) = (&bounded.syrup_strength, &known.syrup_strength) {
            prop_assert!(wide.at_least.value <= narrow.at_least.value + 1e-9);
            prop_assert!(narrow.at_most.value <= wide.at_most.value + 1e-9);
        }
    }

    #[test]
    fn more_water_means_more_hydration(formula in any_formula(), water in 0.01..50.0_f64) {
        let mut lines = formula.lines().to_vec();
        lines.push(line("water", water));
        let wetter = figures(&Formula::new(lines).unwrap(), Part::Dough).unwrap();
        let before = figures(&formula, Part::Dough).unwrap();
        prop_assert!(wetter.hydration.at_least.value > before.hydration.at_least.value);
    }

    #[test]
    fn pieces_bake_out_to_their_mass(pieces in 1_u32..5000, grams in 10.0..2000.0_f64, loss in 0.0..40.0_f64) {
        let order = PieceOrder { pieces, baked_piece_kg: grams / 1000.0, bake_loss_percent: loss };
        let batch = scale_to_pieces(&formula(&[("flour", 1.0), ("water", 0.6)]), &order).unwrap();
        let baked = batch.mass.value * (1.0 - loss / 100.0);
        assert_same(baked, f64::from(pieces) * grams / 1000.0);
    }
}
