//! How fields and free mappings stand in a schema: a key that must be there, a key that may be left out.
//!
//! A derived schema asks each field only for what its value may be, so an optional one leaves a mark behind;
//! `settle` takes the marks away and says with `required` and `additionalProperties` what the decoder demands.

use std::borrow::Cow;

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Map, Value, json};

use crate::source::field::{Entries, Optional, Required};

/// The mark of a key that may be left out.
const MARK: &str = "$optional";

impl<T: JsonSchema> JsonSchema for Required<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        generator.subschema_for::<T>()
    }
}

impl<T: JsonSchema> JsonSchema for Optional<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        T::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut schema = generator.subschema_for::<T>();
        schema.insert(MARK.to_owned(), json!(true));
        schema
    }
}

impl<T: JsonSchema> JsonSchema for Entries<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("EntriesOf{}", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "object", "additionalProperties": generator.subschema_for::<T>() })
    }
}

/// Turns marks into what is required, and closes every mapping whose keys are fixed; here and in all below.
pub(super) fn settle(schema: &mut Map<String, Value>) {
    let mut optional: Vec<String> = Vec::new();
    if let Some(Value::Object(properties)) = schema.get_mut("properties") {
        for (key, property) in properties.iter_mut() {
            if property.as_object_mut().and_then(|property| property.remove(MARK)).is_some() {
                optional.push(key.clone());
            }
        }
        schema.entry("additionalProperties").or_insert(json!(false));
    }
    if let Some(Value::Array(required)) = schema.get_mut("required") {
        required.retain(|key| !optional.iter().any(|optional| key == optional));
    }
    if schema.get("required").is_some_and(|required| required.as_array().is_some_and(Vec::is_empty)) {
        schema.remove("required");
    }
    for keyword in ["$defs", "properties"] {
        if let Some(Value::Object(below)) = schema.get_mut(keyword) {
            below.values_mut().filter_map(Value::as_object_mut).for_each(settle);
        }
    }
    for keyword in ["items", "additionalProperties"] {
        if let Some(Value::Object(below)) = schema.get_mut(keyword) {
            settle(below);
        }
    }
}

#[cfg(test)]
mod tests {
    use schemars::generate::SchemaSettings;

    use super::*;

    /// A mapping for the test.
    #[derive(JsonSchema)]
    #[schemars(rename_all = "kebab-case")]
    #[expect(dead_code, reason = "only its schema is asked for")]
    struct Tub {
        /// What lies in it.
        holds: Required<Entries<Required<String>>>,
        /// What stands on it.
        printed_label: Optional<String>,
    }

    #[test]
    fn required_keys_are_required_and_others_are_not() {
        let schema = SchemaSettings::draft2020_12().into_generator().into_root_schema_for::<Tub>().to_value();
        let Value::Object(mut schema) = schema else { panic!("{schema}") };
        settle(&mut schema);
        assert_eq!(
            Value::Object(schema),
            json!({
                "$schema": "https://json-schema.org/draft/2020-12/schema",
                "title": "Tub",
                "description": "A mapping for the test.",
                "type": "object",
                "properties": {
                    "holds": { "type": "object", "additionalProperties": { "type": "string" }, "description": "What lies in it." },
                    "printed-label": { "type": "string", "description": "What stands on it." },
                },
                "required": ["holds"],
                "additionalProperties": false,
            })
        );
    }
}
