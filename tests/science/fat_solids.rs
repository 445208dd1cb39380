//! Solids curves, plastic range, melt and comparison.

use crate::published::{self, assert_close, faulty};
use proptest::prelude::*;
use whybake::science::fat::{
    Consistency, SolidsCurve, SolidsReading, SolidsScale, compare, consistency, melt_in_the_mouth, plastic_range,
};

fn published_curve(fat: &str, scale: SolidsScale) -> SolidsCurve {
    let printed = if scale == SolidsScale::SolidFatContent { "SFC" } else { "SFI" };
    let rows = published::read("fat_solids.csv").into_iter();
    let rows = rows.filter(|row| row.text("fat") == fat && row.text("scale") == printed);
    let readings = rows.map(|row| SolidsReading { celsius: row.number("celsius"), percent: row.number("percent") });
    SolidsCurve::new(scale, readings.collect()).unwrap()
}

pub(crate) fn curve(readings: &[(f64, f64)]) -> SolidsCurve {
    let readings = readings.iter().map(|&(celsius, percent)| SolidsReading { celsius, percent });
    SolidsCurve::new(SolidsScale::SolidFatContent, readings.collect()).unwrap()
}

#[test]
fn solids_curve_returns_its_readings_and_never_extrapolates_unflagged() {
    for row in published::read("fat_solids.csv") {
        let scale = match row.text("scale") {
            "SFC" => SolidsScale::SolidFatContent,
            _ => SolidsScale::SolidFatIndex,
        };
        let solids = published_curve(row.text("fat"), scale).at(row.number("celsius")).unwrap();
        assert_close(row.text("fat"), solids.value, row.number("percent"), 1e-9);
        assert!(solids.outside_domain.is_empty());
    }
    let palm = published_curve("palm oil", SolidsScale::SolidFatContent);
    assert_close("palm oil at 22 °C", palm.at(22.0).unwrap().value, 26.1 - 0.4 * (26.1 - 16.3), 1e-9);
    let hot = palm.at(45.0).unwrap();
    assert_close("repeats the nearest", hot.value, 4.6, 1e-9);
    assert!(hot.outside_domain[0].contains("at most"), "{:?}", hot.outside_domain);
    assert!(palm.at(5.0).unwrap().outside_domain[0].contains("at least"));
}

#[test]
fn nonsense_curves_list_every_fault() {
    let new = |readings: &[(f64, f64)]| {
        let readings = readings.iter().map(|&(celsius, percent)| SolidsReading { celsius, percent });
        SolidsCurve::new(SolidsScale::SolidFatContent, readings.collect())
    };
    assert_eq!(faulty(new(&[])), ["solids"]);
    let faults = faulty(new(&[(10.0, 120.0), (f64::NAN, 3.0), (20.0, -1.0), (20.0, 5.0)]));
    assert_eq!(faults, ["solids at 10 °C", "solids temperature", "solids at 20 °C", "solids at 20 °C"]);
    assert_eq!(faulty(curve(&[(10.0, 5.0)]).at(f64::NAN)), ["temperature"]);
}

#[test]
fn consistency_follows_the_published_limits() {
    let plastic = published::find("fat_limits.csv", &[("quantity", "SFC window with good plasticity")]);
    let workable = published::find("fat_limits.csv", &[("quantity", "SFC limits of workability")]);
    assert_eq!(consistency(plastic.number("low")), Consistency::Plastic);
    assert_eq!(consistency(plastic.number("high")), Consistency::Plastic);
    assert_eq!(consistency(plastic.number("low") - 0.1), Consistency::Soft);
    assert_eq!(consistency(plastic.number("high") + 0.1), Consistency::Firm);
    assert_eq!(consistency(workable.number("high")), Consistency::Firm);
    assert_eq!(consistency(workable.number("high") + 0.1), Consistency::Brittle);
    assert_eq!(consistency(workable.number("low") - 0.1), Consistency::Oily);
}

#[test]
fn plastic_range_of_a_shortening_is_about_three_times_that_of_butter() {
    // Source: McGee 2004, fat consistency: cake shortening is plastic from 12 to 30 °C, about three times the span
    // of butter. The published all-purpose curve is on the index scale, so its range comes flagged.
    let shortening = published_curve("all-purpose shortening (historic)", SolidsScale::SolidFatIndex);
    let good = plastic_range(&shortening).good.unwrap();
    assert_close("cold end", good.from.value, 12.0, 3.0);
    assert_close("warm end", good.to.value, 30.0, 1.0);
    assert!(!good.from.outside_domain.is_empty() && !good.to.outside_domain.is_empty());
    let butter = plastic_range(&published_curve("milk fat", SolidsScale::SolidFatContent)).good.unwrap();
    assert!(butter.from.outside_domain.is_empty() && butter.to.outside_domain.is_empty());
    let ratio = (good.to.value - good.from.value) / (butter.to.value - butter.from.value);
    // It comes out at 3.5: both curves are typical values from memory, so no more than "about three" can be asked.
    assert!((2.5..4.0).contains(&ratio), "{ratio} is not about three");
}

#[test]
fn plastic_range_at_the_ends_of_a_curve() {
    assert!(plastic_range(&curve(&[(10.0, 0.0), (30.0, 0.0)])).workable.is_none(), "an oil is never plastic");
    assert!(plastic_range(&curve(&[(10.0, 95.0), (30.0, 94.0)])).workable.is_none(), "a hardstock is never plastic");
    let short = plastic_range(&curve(&[(15.0, 20.0), (25.0, 18.0)])).good.unwrap();
    assert_eq!((short.from.value, short.to.value), (15.0, 25.0));
    assert!(!short.from.outside_domain.is_empty() && !short.to.outside_domain.is_empty());
}

#[test]
fn a_waxy_film_is_felt_above_the_published_limits() {
    let at_33 = published::find("fat_limits.csv", &[("quantity", "SFC at 33.3 degC for no waxy feel")]).number("high");
    let waxy = |solids: f64| melt_in_the_mouth(&curve(&[(33.3, solids), (37.0, 0.0)])).waxy;
    assert_eq!(waxy(at_33), Some(false));
    assert_eq!(waxy(at_33 + 0.1), Some(true));
    let palm = published_curve("palm oil", SolidsScale::SolidFatContent);
    assert_eq!(melt_in_the_mouth(&palm).waxy, Some(true));
    assert_eq!(melt_in_the_mouth(&published_curve("milk fat", SolidsScale::SolidFatContent)).waxy, Some(false));
    let unknown = melt_in_the_mouth(&curve(&[(10.0, 40.0), (20.0, 20.0)]));
    assert_eq!(unknown.waxy, None, "a curve that ends at 20 °C says nothing of the mouth");
}

#[test]
fn palm_oil_in_place_of_butter() {
    let butter = published_curve("milk fat", SolidsScale::SolidFatContent);
    let palm = published_curve("palm oil", SolidsScale::SolidFatContent);
    let comparison = compare(&butter, &palm, 20.0).unwrap();
    assert_close("difference", comparison.at_work.points.value, 26.1 - 17.0, 1e-9);
    assert_eq!(comparison.consistency, (Consistency::Plastic, Consistency::Firm));
    assert_close("widest", comparison.widest.celsius, 10.0, 1e-9);
    let text = comparison.meaning.join("; ");
    assert!(text.contains("9.1 percentage points more solids"), "{text}");
    assert!(text.contains("waxy film"), "{text}");
    let stretched = comparison.differences.iter().find(|difference| difference.celsius == 40.0).unwrap();
    assert!(!stretched.points.outside_domain.is_empty(), "milk fat was read up to 35 °C only");
}

#[test]
fn scales_are_never_mixed() {
    let content = published_curve("palm oil", SolidsScale::SolidFatContent);
    let index = published_curve("palm oil", SolidsScale::SolidFatIndex);
    assert_eq!(faulty(compare(&content, &index, f64::INFINITY)), ["working_temperature", "scale"]);
}

fn falling_readings() -> impl Strategy<Value = Vec<(f64, f64)>> {
    proptest::collection::vec((0.1..10.0_f64, 0.0..1.0_f64), 1..8).prop_map(|steps| {
        let (mut celsius, mut percent) = (0.0, 100.0);
        let step = |(warmer, left): (f64, f64)| {
            celsius += warmer;
            percent *= left;
            (celsius, percent)
        };
        steps.into_iter().map(step).collect()
    })
}

proptest! {
    #[test]
    fn a_falling_curve_is_read_falling(readings in falling_readings(), a in -10.0..90.0_f64, b in -10.0..90.0_f64) {
        let curve = curve(&readings);
        let (colder, warmer) = (a.min(b), a.max(b));
        let (at_colder, at_warmer) = (curve.at(colder).unwrap().value, curve.at(warmer).unwrap().value);
        prop_assert!(at_colder >= at_warmer - 1e-9);
        prop_assert!((0.0..=100.0).contains(&at_colder));
    }

    #[test]
    fn the_warmest_temperature_with_some_solids_has_them(readings in falling_readings(), percent in 0.1..100.0_f64) {
        let curve = curve(&readings);
        if let Some(celsius) = curve.warmest_with(percent) {
            let solids = curve.at(celsius.value).unwrap().value;
            prop_assert!(solids >= percent - 1e-6);
            prop_assert!((solids - percent).abs() < 1e-6 || !celsius.outside_domain.is_empty());
        }
    }
}
