//! Answers against the schemas that `/openapi.json` declares for them.

use serde_json::{Value, json};

/// The document that the service serves.
pub(crate) fn document() -> Value {
    serde_json::from_str(&whybake::http::openapi::text().unwrap()).unwrap()
}

/// Faults of `value` by the schema of a component. No member may be there that the schema does not declare.
pub(crate) fn faults(component: &str, value: &Value) -> Vec<String> {
    faults_by(&document(), json!({"$ref": format!("#/components/schemas/{component}")}), value)
}

/// Faults of `value` by a schema that may refer to the components of `document`.
pub(crate) fn faults_by(document: &Value, schema: Value, value: &Value) -> Vec<String> {
    let mut root = json!({"allOf": [schema], "components": document["components"]});
    close(&mut root);
    let validator = jsonschema::validator_for(&root).unwrap();
    validator.iter_errors(value).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// Refuses undeclared members wherever members are declared.
fn close(schema: &mut Value) {
    match schema {
        Value::Object(members) => {
            if members.get("type") == Some(&json!("object")) && members.contains_key("properties") {
                members.entry("additionalProperties").or_insert(json!(false));
            }
            members.values_mut().for_each(close);
        }
        Value::Array(items) => items.iter_mut().for_each(close),
        _ => {}
    }
}

#[test]
fn undeclared_missing_and_null_members_are_seen() {
    let entry = json!({"code": "missing", "detail": "x", "extra": 1, "help": null});
    let faults = faults("ProblemEntry", &entry);
    assert!(faults.iter().any(|fault| fault.contains("'extra' was unexpected")), "{faults:?}");
    assert!(faults.iter().any(|fault| fault.starts_with("/help")), "{faults:?}");
    assert!(!self::faults("ProblemEntry", &json!({"code": "missing"})).is_empty());
}
