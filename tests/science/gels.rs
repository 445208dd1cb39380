//! Pectin and gelatin windows and the bake-stable recipe.

use crate::published::{self, Row, assert_close, faulty};
use whybake::science::filling::{
    BakeStableFilling, Check, GelatinGel, GelatinUse, LowMethoxyl, PectinGel, Position, SettingClass,
    bake_stable_filling, bloom_exchange, gelatin_gel, high_methoxyl_gel, low_methoxyl_gel, setting_class,
};

/// Every check of a gel whose window carries this name.
fn position(checks: &[Check], quantity: &str) -> Position {
    let mut found = checks.iter().filter(|check| check.window.quantity == quantity);
    let check = found.next().unwrap_or_else(|| panic!("no window {quantity}"));
    assert!(found.next().is_none());
    assert!(!check.window.source.is_empty());
    assert_eq!(check.consequence().is_none(), check.position == Position::Inside);
    assert!(check.consequence().is_none_or(|text| !text.is_empty()));
    check.position
}

/// Holds a window against its published limits: inside at them, outside a hair beyond them.
fn assert_window(row: &Row, quantity: &str, checks: impl Fn(f64) -> Vec<Check>) {
    const HAIR: f64 = 1e-6;
    if let Some(low) = row.number_if_any("low") {
        assert_eq!(position(&checks(low), quantity), Position::Inside, "{quantity} at {low}");
        assert_eq!(position(&checks(low - HAIR), quantity), Position::Below, "{quantity} below {low}");
    }
    if let Some(high) = row.number_if_any("high") {
        assert_eq!(position(&checks(high), quantity), Position::Inside, "{quantity} at {high}");
        assert_eq!(position(&checks(high + HAIR), quantity), Position::Above, "{quantity} above {high}");
    }
}

fn gel_fact(item: &str, quantity: &str) -> Row {
    published::find("gels.csv", &[("item", item), ("quantity", quantity)])
}

const GOOD_JAM: PectinGel = PectinGel { ph: 3.1, soluble_solids_percent: 65.0, pectin_percent: 0.5 };

#[test]
fn high_methoxyl_windows() {
    let ph = |ph| high_methoxyl_gel(&PectinGel { ph, ..GOOD_JAM }).unwrap();
    let solids = |percent| high_methoxyl_gel(&PectinGel { soluble_solids_percent: percent, ..GOOD_JAM }).unwrap();
    let dose = |percent| high_methoxyl_gel(&PectinGel { pectin_percent: percent, ..GOOD_JAM }).unwrap();
    assert_window(&gel_fact("HM pectin", "pH for gelation"), "pH, outer limit", ph);
    assert_window(&gel_fact("HM pectin", "pH of batch"), "pH, batch rule", ph);
    assert_window(&gel_fact("HM pectin", "total solids for gelation"), "soluble solids, outer limit", solids);
    assert_window(&gel_fact("HM pectin", "soluble solids of batch"), "soluble solids, batch rule", solids);
    assert_window(&gel_fact("HM pectin", "use level"), "pectin dose", dose);
    assert!(high_methoxyl_gel(&GOOD_JAM).unwrap().iter().all(|check| check.position == Position::Inside));
}

const GOOD_FILLING: LowMethoxyl = LowMethoxyl {
    gel: PectinGel { ph: 3.6, soluble_solids_percent: 45.0, pectin_percent: 1.0 },
    calcium_mg_per_g: 20.0,
    amidated: false,
};

#[test]
fn low_methoxyl_windows() {
    let with = |gel: PectinGel| low_methoxyl_gel(&LowMethoxyl { gel, ..GOOD_FILLING }).unwrap();
    let gel = GOOD_FILLING.gel;
    assert_window(&gel_fact("LM pectin", "pH window"), "pH", |ph| with(PectinGel { ph, ..gel }));
    assert_window(&gel_fact("LM pectin", "soluble solids window"), "soluble solids", |percent| {
        with(PectinGel { soluble_solids_percent: percent, ..gel })
    });
    assert_window(&gel_fact("LM pectin", "use level"), "pectin dose", |percent| {
        with(PectinGel { pectin_percent: percent, ..gel })
    });
    for (item, amidated) in [("LM conventional pectin", false), ("Amidated pectin", true)] {
        assert_window(&gel_fact(item, "calcium"), "calcium per pectin", |calcium_mg_per_g| {
            low_methoxyl_gel(&LowMethoxyl { calcium_mg_per_g, amidated, ..GOOD_FILLING }).unwrap()
        });
    }
    assert!(low_methoxyl_gel(&GOOD_FILLING).unwrap().iter().all(|check| check.position == Position::Inside));
}

#[test]
fn setting_classes() {
    let classes = [
        ("HM pectin, ultra rapid set", SettingClass::UltraRapid),
        ("HM pectin, medium rapid set", SettingClass::MediumRapid),
        ("HM pectin, slow set", SettingClass::Slow),
        ("HM pectin, rapid set", SettingClass::Rapid),
    ];
    for (item, class) in classes {
        let row = gel_fact(item, "degree of esterification");
        assert_eq!(setting_class(row.number("low")).unwrap(), Some(class), "{item}");
        // 74 % is printed for two classes; it goes to the faster one.
        let high = row.number("high") - if class == SettingClass::Rapid { 0.1 } else { 0.0 };
        assert_eq!(setting_class(high).unwrap(), Some(class), "{item}");
    }
    assert_eq!(setting_class(70.0).unwrap(), None, "between the classes");
    assert_eq!(setting_class(40.0).unwrap(), None, "low methoxyl");
    for (item, class) in [("HM pectin rapid set", SettingClass::Rapid), ("HM pectin slow set", SettingClass::Slow)] {
        let row = gel_fact(item, "setting temperature at 65 % solids, pH 3.0");
        assert_eq!(class.setting_celsius(), Some((row.number("low"), row.number("high"))));
    }
}

const GOOD_MOUSSE: GelatinGel = GelatinGel {
    purpose: GelatinUse::DessertOrMousse,
    gelatin_percent: 1.0,
    ph: 6.0,
    soluble_solids_percent: 30.0,
    setting_celsius: 5.0,
    hottest_celsius: 60.0,
};

#[test]
fn gelatin_windows() {
    let ph = |ph| gelatin_gel(&GelatinGel { ph, ..GOOD_MOUSSE }).unwrap();
    assert_window(&gel_fact("Gelatin", "pH range"), "pH, outer limit", ph);
    assert_eq!(position(&ph(4.5), "pH, full strength"), Position::Below, "weaker below 5");
    assert_eq!(position(&ph(9.5), "pH, full strength"), Position::Above, "weaker above 9");
    let dissolves = gel_fact("Gelatin", "hydration temperature").number("value");
    let heated = |hottest_celsius| gelatin_gel(&GelatinGel { hottest_celsius, ..GOOD_MOUSSE }).unwrap();
    let quantity = "hottest temperature of the solution";
    assert_eq!(position(&heated(dissolves), quantity), Position::Inside);
    assert_eq!(position(&heated(dissolves - 1.0), quantity), Position::Below);
    assert_window(&gel_fact("Gelatin", "setting temperature"), "setting temperature", |setting_celsius| {
        gelatin_gel(&GelatinGel { setting_celsius, ..GOOD_MOUSSE }).unwrap()
    });
    let doses = [
        (GelatinUse::Any, "Gelatin", "use level"),
        (GelatinUse::DessertOrMousse, "Gelatin, dessert jelly or mousse", "use level"),
        (GelatinUse::Foam, "Gelatin, foamed confections", "use level"),
    ];
    for (purpose, item, quantity) in doses {
        assert_window(&gel_fact(item, quantity), "gelatin dose", |gelatin_percent| {
            gelatin_gel(&GelatinGel { purpose, gelatin_percent, ..GOOD_MOUSSE }).unwrap()
        });
    }
    assert!(gelatin_gel(&GOOD_MOUSSE).unwrap().iter().all(|check| check.position == Position::Inside));
}

#[test]
fn bloom_exchange_by_the_square_root() {
    assert_close("weaker gelatin", bloom_exchange(1.0, 250.0, 160.0).unwrap().value, 1.25, 1e-12);
    assert!(!bloom_exchange(1.0, 250.0, 10.0).unwrap().outside_domain.is_empty());
}

#[test]
fn bake_stable_recipe() {
    let good = BakeStableFilling {
        soluble_solids_percent: 65.0,
        pectin_percent: 1.2,
        calcium_citrate_percent: 0.06,
        rest_hours: 24.0,
    };
    let item = "Bake-stable fruit filling";
    assert_window(&gel_fact(item, "final solids"), "soluble solids", |soluble_solids_percent| {
        bake_stable_filling(&BakeStableFilling { soluble_solids_percent, ..good }).unwrap()
    });
    let checks = bake_stable_filling(&good).unwrap();
    for (quantity, published) in [
        ("low-methoxyl pectin", gel_fact(item, "LM pectin").number("value")),
        ("calcium citrate", gel_fact(item, "calcium citrate").number("value")),
        ("rest before use", gel_fact(item, "rest before use").number("low")),
    ] {
        let check = checks.iter().find(|check| check.window.quantity == quantity).unwrap();
        assert_eq!(check.window.low, Some(published), "{quantity}");
    }
    let poor = BakeStableFilling { pectin_percent: 0.8, rest_hours: 2.0, ..good };
    let checks = bake_stable_filling(&poor).unwrap();
    assert_eq!(position(&checks, "low-methoxyl pectin"), Position::Below);
    assert_eq!(position(&checks, "rest before use"), Position::Below);
}

#[test]
fn nonsense_lists_every_fault() {
    let gel = PectinGel { ph: 15.0, soluble_solids_percent: -1.0, pectin_percent: f64::NAN };
    assert_eq!(faulty(high_methoxyl_gel(&gel)), ["ph", "soluble_solids", "pectin"]);
    let batch = LowMethoxyl { gel, calcium_mg_per_g: -1.0, amidated: true };
    assert_eq!(faulty(low_methoxyl_gel(&batch)), ["ph", "soluble_solids", "pectin", "calcium"]);
    assert_eq!(faulty(setting_class(f64::NAN)), ["esterification"]);
    let gel = GelatinGel {
        gelatin_percent: -1.0,
        ph: -1.0,
        soluble_solids_percent: 101.0,
        setting_celsius: 999.0,
        hottest_celsius: f64::NAN,
        ..GOOD_MOUSSE
    };
    assert_eq!(
        faulty(gelatin_gel(&gel)),
        ["gelatin", "ph", "soluble_solids", "setting_temperature", "hottest_temperature"]
    );
    assert_eq!(faulty(bloom_exchange(101.0, 0.0, f64::NAN)), ["dose", "from_bloom", "to_bloom"]);
    let filling = BakeStableFilling {
        soluble_solids_percent: -1.0,
        pectin_percent: 101.0,
        calcium_citrate_percent: f64::NAN,
        rest_hours: -1.0,
    };
    assert_eq!(faulty(bake_stable_filling(&filling)), ["soluble_solids", "pectin", "calcium_citrate", "rest"]);
}
