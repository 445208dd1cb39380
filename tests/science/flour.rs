//! Moisture basis, blends, Falling Number, absorption, solvent retention.

use proptest::prelude::*;
use whybake::science::flour::{
    BlendLot, FallingNumberLot, FarinographReading, absorption_at_moisture, blend_falling_number, blend_for_protein,
    blend_value, falling_number, farinograph_absorption, farinograph_sample, gluten_performance_index,
    liquefaction_number, share_of_high, share_of_sprouted_lot, solvent_retention, to_moisture_basis,
    to_standard_moisture,
};

use crate::published::{Inputs, assert_same, faulty, hold, value};

#[test]
fn published_values() {
    hold("flour.csv", 25, compute);
}

fn compute(calculation: &str, inputs: &Inputs) -> f64 {
    let of = |name: &str| inputs.get(name);
    value(match calculation {
        "moisture basis" => to_moisture_basis(of("share"), of("moisture"), of("wanted")),
        "farinograph sample" => farinograph_sample(of("moisture")),
        "farinograph absorption" => farinograph_absorption(&FarinographReading {
            moisture_percent: of("moisture"),
            water_ml: of("water"),
            consistency_fu: of("consistency"),
        }),
        "absorption at moisture" => absorption_at_moisture(of("absorption"), of("moisture"), of("wanted")),
        "share of high" => share_of_high(of("low"), of("high"), of("target")),
        "liquefaction number" => liquefaction_number(of("fn")),
        "blend falling number" => blend_falling_number(&[lot(of("p1"), of("f1")), lot(of("p2"), of("f2"))]),
        "mean by mass" => blend_value(&[(of("p1"), of("f1")), (of("p2"), of("f2"))], "s"),
        "share of sprouted lot" => share_of_sprouted_lot(of("sprouted"), of("sound"), of("target")),
        "gluten performance index" => gluten_performance_index(of("lactic"), of("sucrose"), of("carbonate")),
        "solvent retention" => solvent_retention(of("gel"), of("flour"), of("moisture")),
        other => panic!("{other}"),
    })
}

fn lot(parts: f64, falling_number_s: f64) -> FallingNumberLot {
    FallingNumberLot { parts, falling_number_s }
}

fn blend_lot(name: &str, protein_percent: f64, moisture_percent: f64, parts: f64) -> BlendLot {
    BlendLot { name: name.to_owned(), protein_percent, moisture_percent, parts }
}

#[test]
fn three_lots_keep_the_parts_of_their_group() {
    let lots =
        [blend_lot("weak", 9.0, 14.0, 2.0), blend_lot("medium", 10.5, 14.0, 1.0), blend_lot("strong", 14.5, 14.0, 1.0)];
    let blend = blend_for_protein(&lots, 12.0).unwrap();
    assert_same(blend.protein.value, 12.0);
    let shares: Vec<f64> = blend.shares.iter().map(|share| share.share.value).collect();
    assert_same(shares[0], 2.0 * shares[1]);
    // The weak group has 9.5 %: (12 − 9.5) / (14.5 − 9.5) = 50 % strong.
    assert_same(shares[2], 50.0);
}

#[test]
fn moist_flour_counts_for_less() {
    let lots = [blend_lot("weak", 10.0, 14.0, 1.0), blend_lot("strong, dry", 14.0, 10.0, 1.0)];
    let blend = blend_for_protein(&lots, 12.0).unwrap();
    assert_same(blend.protein.value, 12.0);
    // 14 % at 10 % moisture is 13.38 % at 14 %; weighed dry it is less flour than on the 14 % basis.
    let high = 14.0 * 86.0 / 90.0;
    let share = (12.0 - 10.0) / (high - 10.0);
    let weighed = share * 86.0 / 90.0;
    assert_same(blend.shares[1].share.value, 100.0 * weighed / (weighed + 1.0 - share));
}

#[test]
fn unreachable_protein_is_nonsense() {
    let lots = [blend_lot("weak", 9.0, 14.0, 1.0), blend_lot("medium", 10.5, 14.0, 1.0)];
    let nonsense = blend_for_protein(&lots, 13.0).unwrap_err();
    assert_eq!(nonsense.to_string(), "target_protein_percent: no lot has more than 13 % at 14 % moisture");
    let nonsense = blend_for_protein(&lots, 8.0).unwrap_err();
    assert_eq!(nonsense.to_string(), "target_protein_percent: every lot has more than 8 % at 14 % moisture");
    assert_eq!(faulty(blend_for_protein(&lots[..1], 9.5)), ["lots"]);
}

#[test]
fn nonsense_lists_every_fault() {
    assert_eq!(
        faulty(to_moisture_basis(-1.0, 100.0, f64::NAN)),
        ["share_percent", "moisture_percent", "wanted_moisture_percent"]
    );
    assert_eq!(faulty(share_of_high(12.0, 10.0, 11.0)), ["high", "target"]);
    assert_eq!(faulty(liquefaction_number(45.0)), ["falling_number_s"]);
    assert_eq!(faulty(falling_number(700.0)), ["liquefaction_number"]);
    assert_eq!(faulty(blend_falling_number(&[])), ["lots"]);
    assert_eq!(faulty(blend_value(&[(0.0, 12.0)], "%")), ["lots"]);
    assert_eq!(faulty(share_of_sprouted_lot(300.0, 200.0, 50.0)), ["sound_s", "target_s"]);
    assert_eq!(faulty(solvent_retention(4.0, 5.0, 100.0)), ["gel_g", "moisture_percent"]);
}

#[test]
fn high_falling_number_is_marked() {
    assert!(liquefaction_number(350.0).unwrap().outside_domain.is_empty());
    assert_eq!(liquefaction_number(450.0).unwrap().outside_domain.len(), 1);
}

#[test]
fn farinograph_off_the_line_is_marked() {
    let reading = FarinographReading { moisture_percent: 14.0, water_ml: 180.0, consistency_fu: 560.0 };
    assert_eq!(farinograph_absorption(&reading).unwrap().outside_domain.len(), 1);
}

proptest! {
    #[test]
    fn moisture_basis_goes_there_and_back(share in 0.1..20.0_f64, moisture in 5.0..20.0_f64) {
        let standard = value(to_standard_moisture(share, moisture));
        assert_same(value(to_moisture_basis(standard, 14.0, moisture)), share);
    }

    #[test]
    fn two_lots_blend_to_the_target(low in 7.0..10.0_f64, high in 12.0..16.0_f64, part in 0.01..0.99_f64) {
        let target = low + part * (high - low);
        let share = value(share_of_high(low, high, target)) / 100.0;
        assert_same(value(blend_value(&[(1.0 - share, low), (share, high)], "%")), target);
    }

    #[test]
    fn any_lots_blend_to_the_target(
        low in prop::collection::vec((7.0..9.5_f64, 8.0..16.0_f64, 0.1..50.0_f64), 1..4),
        high in prop::collection::vec((14.0..70.0_f64, 6.0..16.0_f64, 0.1..50.0_f64), 1..4),
        target in 10.6..12.8_f64,
    ) {
        let lots: Vec<BlendLot> = low.into_iter().chain(high)
            .map(|(protein, moisture, parts)| blend_lot("lot", protein, moisture, parts)).collect();
        let blend = blend_for_protein(&lots, target).unwrap();
        assert_same(blend.shares.iter().map(|share| share.share.value).sum(), 100.0);
        prop_assert!(blend.shares.iter().all(|share| share.share.value >= 0.0));
        prop_assert!((blend.protein.value - target).abs() < 1e-9);
    }

    #[test]
    fn falling_number_goes_there_and_back(seconds in 60.0..600.0_f64) {
        let number = value(liquefaction_number(seconds));
        assert_same(value(falling_number(number)), seconds);
    }

    #[test]
    fn blend_falls_between_its_lots_and_below_their_mean(low in 60.0..250.0_f64, above in 1.0..250.0_f64, part in 0.05..0.95_f64) {
        let high = low + above;
        let blend = value(blend_falling_number(&[lot(part, low), lot(1.0 - part, high)]));
        prop_assert!(low < blend && blend < high);
        prop_assert!(blend < part * low + (1.0 - part) * high);
        let share = value(share_of_sprouted_lot(low, high, blend));
        prop_assert!((share - 100.0 * part).abs() < 1e-6);
    }

    #[test]
    fn absorption_goes_there_and_back(absorption in 45.0..75.0_f64, moisture in 8.0..18.0_f64) {
        let there = value(absorption_at_moisture(absorption, 14.0, moisture));
        assert_same(value(absorption_at_moisture(there, moisture, 14.0)), absorption);
    }

    #[test]
    fn farinograph_equation_is_the_same_mass_balance(moisture in 10.0..17.0_f64, water in 150.0..210.0_f64) {
        // Water per 100 g of the flour as weighed, brought to 14 %, is the absorption of the method at 500 FU.
        let reading = FarinographReading { moisture_percent: moisture, water_ml: water, consistency_fu: 500.0 };
        let by_method = value(farinograph_absorption(&reading));
        let as_weighed = 100.0 * water / value(farinograph_sample(moisture));
        assert_same(value(absorption_at_moisture(as_weighed, moisture, 14.0)), by_method);
    }

    #[test]
    fn drier_flour_takes_more_water(moisture in 9.0..17.0_f64, drier in 0.1..4.0_f64) {
        let at = |moisture: f64| value(absorption_at_moisture(60.0, 14.0, moisture));
        prop_assert!(at(moisture - drier) > at(moisture));
    }
}
