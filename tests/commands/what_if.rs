//! `whybake what-if`

use actix_web::test::{TestRequest, call_and_read_body, init_service};
use serde_json::{Value, json};
use whybake::http::create_app;

use crate::program::run_with_input;
use crate::service::embedded;

const BUN: &str = r#"{"product": "hamburger_bun", "symptoms": [{"symptom": "hollow_under_crust"}],
  "readings": {"dough_temperature": {"value": 31.5, "unit": "Cel"}},
  "formula": {"ingredients": [{"ingredient": "bread_flour", "amount": 50, "unit": "kg"}, {"ingredient": "water", "amount": 29, "unit": "kg"},
    {"ingredient": "fresh_yeast", "amount": 2, "unit": "kg"}, {"ingredient": "salt", "amount": 1, "unit": "kg"}]}}"#;

#[actix_web::test]
async fn json_is_what_the_service_answers_byte_for_byte() {
    let options = [
        "--set=dough_temperature=26Cel",
        "--fact=dough_waits_before_divider=no",
        "--symptom=pale_crust=no",
        "--dose=salt=1.9%",
        "--add=water=0.5kg",
        "--take-out=fresh_yeast=0.1kg",
        "--action=seam_down",
    ];
    let arguments: Vec<&str> = ["what-if", "-", "--json"].into_iter().chain(options).collect();
    let answer = run_with_input(&arguments, BUN).success();
    let body = json!({
        "case": serde_json::from_str::<Value>(BUN).unwrap(),
        "changes": {
            "readings": { "dough_temperature": { "value": 26, "unit": "Cel" } },
            "facts": { "dough_waits_before_divider": false },
            "symptoms": [{ "symptom": "pale_crust", "present": false }],
            "ingredients": [
                { "ingredient": "salt", "amount": 1.9, "unit": "%", "how": "doses" },
                { "ingredient": "water", "amount": 0.5, "unit": "kg", "how": "adds" },
                { "ingredient": "fresh_yeast", "amount": 0.1, "unit": "kg", "how": "takes_out" }
            ],
            "actions": ["seam_down"]
        }
    });
    let service = init_service(create_app(&embedded(64 * 1024))).await;
    let request = TestRequest::post().uri("/v1/what_if").insert_header(("content-type", "application/json"));
    let request = request.set_payload(body.to_string()).to_request();
    assert_eq!(answer.as_bytes(), call_and_read_body(&service, request).await);
}

#[test]
fn the_answer_is_text_for_people() {
    let answer = run_with_input(&["what-if", "-", "--set", "dough_temperature=26Cel"], BUN).success();
    let words = answer.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(words.contains("now it is Dough too warm at make-up"), "{answer}");
    assert!(answer.contains("  - dough temperature: 31.5 °C → 26 °C\n"), "{answer}");
    assert!(answer.contains("Causes, before and after\n  - Dough too warm at make-up: "), "{answer}");
    assert!(words.contains("is aimed at, not what is promised"), "{answer}");
}

#[test]
fn options_that_cannot_be_read_are_a_fault_of_use() {
    for (option, expected) in [
        ("--set=dough_temperature", "`dough_temperature` is not as in `dough_temperature=26Cel`\n"),
        ("--set=dough_temperature=warm", "`warm` is not a number with a unit, as in `26Cel` or `2%`\n"),
        ("--dose=water=5", "`5` is not a number with a unit, as in `26Cel` or `2%`\n"),
        ("--fact=dough_waits_before_divider=maybe", "`maybe` is neither `yes` nor `no`\n"),
    ] {
        let run = run_with_input(&["what-if", "-", option], BUN);
        assert_eq!((run.code, run.complaints.as_str()), (Some(2), expected), "{option}");
    }
    let all = ["what-if", "-", "--set=dough_temperature=warm", "--fact=new_flour=maybe", "--symptom=rope=perhaps"];
    let run = run_with_input(&all, BUN);
    assert_eq!((run.code, run.complaints.lines().count()), (Some(2), 3), "{}", run.complaints);
    let run = run_with_input(&["what-if", "-", "--action", "colder_water"], BUN);
    assert_eq!((run.code, run.output.as_str()), (Some(1), ""));
    assert!(run.complaints.starts_with("/changes/actions/0: unknown action `colder_water`"), "{}", run.complaints);
}

#[test]
fn changes_that_contradict_each_other_are_faults() {
    let twice = |option: &str, other: &str| run_with_input(&["what-if", "-", option, other], BUN);
    let readings = twice("--set=dough_temperature=26Cel", "--set=dough_temperature=28Cel");
    assert_eq!((readings.code, readings.complaints.as_str()), (Some(2), "`dough_temperature` is given twice\n"));
    let doses = twice("--dose=water=60%", "--take-out=water");
    assert_eq!(doses.complaints, "/changes/ingredients/1: the amount of `water` is set twice\n");
}

#[test]
fn the_only_flour_is_not_taken_out_unless_another_comes_in() {
    let told = |options: &[&str]| {
        let arguments: Vec<&str> = ["what-if", "-"].iter().chain(options).copied().collect();
        run_with_input(&arguments, BUN).success()
    };
    let alone = told(&["--take-out=bread_flour"]);
    assert!(alone.contains("bread flour: no flour would be left") && !alone.contains("50 kg → 0 kg"), "{alone}");
    let replaced = told(&["--add=rice_flour=50kg", "--take-out=bread_flour"]);
    assert!(replaced.contains("bread flour: 50 kg → 0 kg"), "{replaced}");
}
