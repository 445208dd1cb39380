//! Which thickeners stand freezing, and what helps them.

use crate::published::{self, Row, faulty};
use whybake::science::filling::{Stability, StarchPaste, Thickener, freeze_thaw};

fn gel_fact(item: &str, quantity: &str) -> Row {
    published::find("gels.csv", &[("item", item), ("quantity", quantity)])
}

const PASTE: StarchPaste = StarchPaste {
    thickener: Thickener::NativeMaize,
    xanthan_percent: 0.0,
    sucrose_percent: 0.0,
    freezing_front_mm_per_hour: None,
    ph: None,
};

#[test]
fn classes_follow_the_published_words() {
    let rows = [
        (Thickener::NativeMaize, "Native maize starch paste", "freeze-thaw"),
        (Thickener::ModifiedWaxyMaize, "Waxy maize, cross-linked and hydroxypropylated", "freeze-thaw"),
        (Thickener::Agar, "Agar gel", "freeze-thaw"),
        (Thickener::KappaCarrageenan, "Kappa carrageenan gel", "syneresis"),
        (Thickener::IotaCarrageenan, "Iota carrageenan gel", "syneresis"),
    ];
    for (thickener, item, quantity) in rows {
        let published = match gel_fact(item, quantity).text("value") {
            "poor" | "not stable" | "marked" => Stability::Poor,
            "good" | "none to slight" => Stability::Good,
            other => panic!("unknown class {other}"),
        };
        let found = freeze_thaw(&StarchPaste { thickener, ..PASTE }).unwrap();
        assert_eq!(found.stability, published, "{item}");
        assert!(found.source.starts_with("from memory"), "{item}");
    }
    let tapioca = freeze_thaw(&StarchPaste { thickener: Thickener::NativeTapioca, ..PASTE }).unwrap();
    assert_eq!(tapioca.stability, Stability::FallsWithCycles);
}

#[test]
fn remarks_follow_the_published_limits() {
    let count = |paste: StarchPaste| freeze_thaw(&paste).unwrap().remarks.len();
    let xanthan = gel_fact("Maize starch paste 10 %", "xanthan level that kept texture on freezing").number("value");
    let front = gel_fact("Maize starch paste 10 %", "freezing rate below which sponge formed").number("value");
    let sucrose = gel_fact("Tapioca gel with sucrose", "sucrose").number("low");
    let tapioca = StarchPaste { thickener: Thickener::NativeTapioca, ..PASTE };
    assert_eq!(count(PASTE), 0);
    assert_eq!(count(StarchPaste { xanthan_percent: xanthan, ..PASTE }), 1);
    assert_eq!(count(StarchPaste { xanthan_percent: xanthan - 0.01, ..PASTE }), 0);
    assert_eq!(count(StarchPaste { freezing_front_mm_per_hour: Some(front - 0.1), ..PASTE }), 1);
    assert_eq!(count(StarchPaste { freezing_front_mm_per_hour: Some(front), ..PASTE }), 0);
    assert_eq!(count(StarchPaste { sucrose_percent: sucrose, ..tapioca }), 1);
    assert_eq!(count(StarchPaste { sucrose_percent: sucrose - 1.0, ..tapioca }), 0);
    assert_eq!(count(StarchPaste { ph: Some(3.4), ..PASTE }), 1);
    assert_eq!(count(StarchPaste { ph: Some(3.5), ..PASTE }), 0);
}

#[test]
fn nonsense_lists_every_fault() {
    let paste = StarchPaste {
        xanthan_percent: -1.0,
        sucrose_percent: 101.0,
        freezing_front_mm_per_hour: Some(-1.0),
        ph: Some(15.0),
        ..PASTE
    };
    assert_eq!(faulty(freeze_thaw(&paste)), ["xanthan", "sucrose", "freezing_front", "ph"]);
}
