//! Every cell of Tables A and B, its limits included.

use crate::published::{self, Row, faulty};
use whybake::science::food_code::{CAUTION, Designation, Reading, Table, Treatment, designation};

/// Values that lie in a band as the table words it: its limits, and a hair inside or outside them.
fn values(band: &str, lowest: f64, highest: f64) -> Vec<f64> {
    const HAIR: f64 = 1e-6;
    let number = |text: &str| text.trim().parse::<f64>().unwrap();
    if let Some(limit) = band.strip_suffix(" or less") {
        vec![lowest, number(limit) - HAIR, number(limit)]
    } else if let Some(limit) = band.strip_prefix("below ") {
        vec![lowest, number(limit) - HAIR]
    } else if let Some((above, to)) = band.strip_prefix("above ").and_then(|rest| rest.split_once(" to ")) {
        vec![number(above) + HAIR, (number(above) + number(to)) / 2.0, number(to)]
    } else if let Some(limit) = band.strip_prefix("above ") {
        vec![number(limit) + HAIR, highest]
    } else {
        let (from, to) = band.split_once(" to ").unwrap();
        vec![number(from), (number(from) + number(to)) / 2.0, number(to)]
    }
}

fn check_cell(row: &Row, treatment: Treatment, table: Table) -> usize {
    let mut checked = 0;
    for water_activity in values(row.text("water_activity"), 0.0, 1.0) {
        for ph in values(row.text("ph"), 0.0, 14.0) {
            let outcome = designation(&Reading { ph, water_activity, treatment }).unwrap();
            let expected = match row.text("designation") {
                "non-TCS" => Designation::NonTcs,
                "PA" => Designation::ProductAssessmentRequired,
                other => panic!("unknown designation {other}"),
            };
            assert_eq!(outcome.designation, expected, "{table:?}: aw {water_activity}, pH {ph}");
            assert_eq!(outcome.table, table);
            assert_eq!(outcome.water_activity_band, row.text("water_activity"));
            assert_eq!(outcome.ph_band, row.text("ph"));
            assert_eq!(outcome.caution, CAUTION);
            checked += 1;
        }
    }
    checked
}

#[test]
fn every_cell_of_both_tables() {
    let mut checked = 0;
    for row in published::read("food_code.csv") {
        if row.text("table") == "A" {
            checked += check_cell(&row, Treatment::HeatTreatedThenPackaged, Table::A);
        } else {
            checked += check_cell(&row, Treatment::NotHeatTreated, Table::B);
            checked += check_cell(&row, Treatment::HeatTreatedNotPackaged, Table::B);
        }
    }
    // Table A: 8 activities x 8 pH values; Table B twice: 10 x 10.
    assert_eq!(checked, 64 + 200);
}

#[test]
fn the_outcome_is_the_table_s_wording_and_never_says_safe() {
    assert_eq!(Designation::NonTcs.wording(), "non-TCS food");
    assert_eq!(Designation::ProductAssessmentRequired.wording(), "product assessment required");
    assert!(CAUTION.contains("not a finding that a product is safe"));
    assert!(CAUTION.contains("local food authority"));
}

#[test]
fn nonsense_lists_every_fault() {
    let reading = Reading { ph: f64::NAN, water_activity: 1.2, treatment: Treatment::NotHeatTreated };
    assert_eq!(faulty(designation(&reading)), ["ph", "water_activity"]);
    let reading = Reading { ph: 15.0, water_activity: -0.1, treatment: Treatment::HeatTreatedThenPackaged };
    assert_eq!(faulty(designation(&reading)), ["ph", "water_activity"]);
}
