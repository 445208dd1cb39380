//! Fatty acids, iodine values and saponification values.

use crate::published::{self, assert_close, faulty};
use proptest::prelude::*;
use whybake::science::fat::{
    AcidShare, Composition, FatForm, FattyAcid, IodinePart, blend_iodine_value, iodine_value, saponification_value,
};

fn acid(shorthand: &str) -> FattyAcid {
    shorthand.parse().unwrap()
}

fn composition(shares: &[(&str, f64)]) -> Composition {
    let shares = shares.iter().map(|(shorthand, percent)| AcidShare { acid: acid(shorthand), percent: *percent });
    Composition::new(shares.collect()).unwrap()
}

fn published_composition(name: &str) -> Composition {
    let rows = published::read("fat_compositions.csv").into_iter().filter(|row| row.text("composition") == name);
    let shares = rows.map(|row| AcidShare { acid: acid(row.text("acid")), percent: row.number("percent") }).collect();
    Composition::new(shares).unwrap()
}

#[test]
fn iodine_factors_are_the_printed_ones_and_follow_from_molar_masses() {
    for row in published::read("iodine_factors.csv") {
        let form = match row.text("form") {
            "triglyceride" => FatForm::Triglyceride,
            _ => FatForm::FreeFattyAcids,
        };
        let acid = acid(row.text("acid"));
        if let Some(printed) = row.number_if_any("printed") {
            assert_close(row.text("acid"), form.factor(acid), printed, 1e-12);
        }
        // The recomputation used other atomic weights in the fifth digit, hence two units of the last place.
        assert_close(row.text("acid"), form.derived_factor(acid), row.number("derived"), 2.0e-4);
    }
}

/// The worked saponification values were computed with atomic weights that differ in the fifth digit (carbon 12.0107
/// for 12.011), which moves them by up to 0.005. It shows only where a value lies on the edge of its rounding:
/// 232.748 for the printed 232.8 of trimyristin, 247.849 for the printed 247.9 of palm kernel oil.
const OTHER_ATOMIC_WEIGHTS: f64 = 0.005;

#[test]
fn saponification_values_of_pure_triglycerides() {
    for row in published::read("triglycerides.csv") {
        let pure = composition(&[(row.text("acid"), 100.0)]);
        let value = saponification_value(&pure).value;
        assert_close(
            row.text("acid"),
            value,
            row.number("saponification_value"),
            row.rounding("saponification_value") + OTHER_ATOMIC_WEIGHTS,
        );
    }
}

#[test]
fn worked_iodine_and_saponification_values() {
    for row in published::read("fat_values.csv") {
        let name = row.text("composition");
        let composition = published_composition(name);
        let value = match row.text("quantity") {
            "iodine value" => iodine_value(&composition, FatForm::Triglyceride, None).unwrap().value,
            _ => saponification_value(&composition).value,
        };
        let tolerance = match row.text("quantity") {
            "iodine value" => row.rounding("value"),
            _ => row.rounding("value") + OTHER_ATOMIC_WEIGHTS,
        };
        assert_close(name, value, row.number("value"), tolerance);
    }
}

#[test]
fn worked_values_lie_in_the_published_ranges_except_where_the_reason_is_known() {
    for row in published::read("fat_values.csv") {
        let value = row.number("value");
        let inside = row.number_if_any("low").is_none_or(|low| value >= low)
            && row.number_if_any("high").is_none_or(|high| value <= high);
        let reproduces = row.text("agreement") == "reproduces";
        assert_eq!(inside, reproduces, "{}", row.text("composition"));
        assert!(reproduces || !row.text("reason").is_empty(), "a disagreement needs its reason");
    }
}

#[test]
fn iodine_value_of_a_worked_blend() {
    // 60 % palm oil and 40 % palm stearin. Source: 0.6 x 51.3 + 0.4 x 34.1 = 44.4, worked value, linear by mass.
    let parts = [IodinePart { percent: 60.0, iodine_value: 51.3 }, IodinePart { percent: 40.0, iodine_value: 34.1 }];
    assert_close("blend", blend_iodine_value(&parts).unwrap().value, 44.4, 0.05);
}

#[test]
fn stretched_iodine_values_say_why() {
    let coconut = published_composition("coconut oil, average");
    let low = iodine_value(&coconut, FatForm::Triglyceride, Some(0.8)).unwrap();
    assert_eq!(low.outside_domain.len(), 2, "unsaponifiable matter and low value: {:?}", low.outside_domain);
    let milk = iodine_value(&composition(&[("14:1", 2.0), ("18:1", 25.0)]), FatForm::Triglyceride, None).unwrap();
    assert!(milk.outside_domain[0].contains("14:1"), "{:?}", milk.outside_domain);
    let palm = published_composition("palm oil, national average");
    assert!(iodine_value(&palm, FatForm::Triglyceride, None).unwrap().outside_domain.is_empty());
}

#[test]
fn saponification_value_of_a_half_known_fat_is_flagged() {
    let value = saponification_value(&composition(&[("18:1", 45.5), ("18:2", 8.0)]));
    assert!(value.outside_domain[0].contains("53.5 %"), "{:?}", value.outside_domain);
}

#[test]
fn nonsense_compositions_list_every_fault() {
    let share = |shorthand, percent| AcidShare { acid: acid(shorthand), percent };
    assert_eq!(faulty(Composition::new(vec![])), ["fatty_acids"]);
    let wrong = vec![share("16:0", -1.0), share("18:1", f64::NAN), share("18:2", 20.0), share("18:2", 20.0)];
    assert_eq!(faulty(Composition::new(wrong)), ["16:0", "18:1", "18:2"]);
    let above = Composition::new(vec![share("16:0", 60.0), share("18:1", 41.0)]).unwrap_err();
    assert_eq!(above.to_string(), "fatty_acids: the shares add up to 101.0 %, more than 100 %");
    assert_eq!(faulty(Composition::new(vec![share("16:0", 0.0)])), ["fatty_acids"]);
    let parts = [IodinePart { percent: 120.0, iodine_value: -3.0 }];
    let faults = faulty(blend_iodine_value(&parts));
    assert_eq!(faults, ["parts[0].percent", "parts[0].iodine_value", "parts"]);
}

#[test]
fn fatty_acids_that_cannot_exist_are_refused() {
    for shorthand in ["18", "a:b", "1:0", "18:9", "16:0t", "", "300:1"] {
        assert!(shorthand.parse::<FattyAcid>().is_err(), "{shorthand}");
    }
    let elaidic = acid("18:1t");
    assert!(elaidic.is_trans());
    assert_eq!(elaidic.to_string(), "18:1t");
    let fat = composition(&[("16:0", 30.0), ("18:1", 40.0), ("18:1t", 10.0)]);
    assert_close("trans", fat.trans_percent(), 10.0, 1e-12);
    assert_close("saturated", fat.saturated_percent(), 30.0, 1e-12);
}

proptest! {
    #[test]
    fn iodine_value_is_additive_by_mass(oleic in 0.0..50.0_f64, linoleic in 0.0..50.0_f64, share in 0.0..100.0_f64) {
        let first = composition(&[("16:0", 100.0 - oleic), ("18:1", oleic)]);
        let second = composition(&[("16:0", 100.0 - linoleic), ("18:2", linoleic)]);
        let value = |fat: &Composition| iodine_value(fat, FatForm::Triglyceride, None).unwrap().value;
        let rest = 100.0 - share;
        let mixed = composition(&[
            ("16:0", (share * (100.0 - oleic) + rest * (100.0 - linoleic)) / 100.0),
            ("18:1", share * oleic / 100.0),
            ("18:2", rest * linoleic / 100.0),
        ]);
        let parts = [
            IodinePart { percent: share, iodine_value: value(&first) },
            IodinePart { percent: rest, iodine_value: value(&second) },
        ];
        let blended = blend_iodine_value(&parts).unwrap().value;
        prop_assert!((blended - value(&mixed)).abs() < 1e-9);
    }

    #[test]
    fn longer_chains_take_less_alkali(carbon in 4_u8..24) {
        let value = |carbon: u8| {
            let acid = FattyAcid::new(carbon, 0, false).unwrap();
            saponification_value(&Composition::new(vec![AcidShare { acid, percent: 100.0 }]).unwrap()).value
        };
        prop_assert!(value(carbon) > value(carbon + 1));
    }
}
