//! Files held against the schemas by readers that are not ours: serde_yaml for YAML, boon for JSON Schema.

use std::collections::BTreeMap;

use boon::{Compiler, SchemaIndex, Schemas};
use seamwise::source::schema::{Kind, schema};
use serde_json::{Map, Value};

/// The schemas of all kinds, ready to hold files against.
pub(crate) struct Validator {
    schemas: Schemas,
    of_kind: BTreeMap<Kind, SchemaIndex>,
}

/// What a file came to.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum Verdict {
    /// The schema takes it.
    Sound,
    /// The schema refuses it, and this is where and why.
    Refused(String),
    /// It is no YAML, or not one document.
    NoYaml,
}

impl Validator {
    pub(crate) fn new() -> Self {
        let mut schemas = Schemas::new();
        let mut compiler = Compiler::new();
        compiler.enable_format_assertions();
        for kind in Kind::ALL {
            // Compiling holds the schema against the schema of schemas too.
            compiler.add_resource(&kind.file_name(), schema(*kind)).unwrap();
        }
        let compiled = Kind::ALL.iter().map(|kind| (*kind, compiler.compile(&kind.file_name(), &mut schemas).unwrap())).collect();
        Self { schemas, of_kind: compiled }
    }

    /// Holds a value against the schema of a kind.
    pub(crate) fn value(&self, kind: Kind, value: &Value) -> Verdict {
        match self.schemas.validate(value, self.of_kind[&kind]) {
            Ok(()) => Verdict::Sound,
            Err(error) => Verdict::Refused(format!("{error:#}")),
        }
    }

    /// Holds the text of a file against the schema of its kind.
    pub(crate) fn text(&self, kind: Kind, text: &str) -> Verdict {
        let Ok(yaml) = serde_yaml::from_str::<serde_yaml::Value>(text) else { return Verdict::NoYaml };
        self.value(kind, &as_json(yaml))
    }
}

/// YAML as JSON, the way programs that hold YAML against a schema see it: a key is a text, a tag is passed over.
fn as_json(yaml: serde_yaml::Value) -> Value {
    use serde_yaml::Value as Yaml;
    match yaml {
        Yaml::Null => Value::Null,
        Yaml::Bool(truth) => Value::Bool(truth),
        Yaml::Number(number) => serde_json::to_value(number).unwrap_or(Value::Null),
        Yaml::String(text) => Value::String(text),
        Yaml::Sequence(items) => Value::Array(items.into_iter().map(as_json).collect()),
        Yaml::Mapping(pairs) => Value::Object(pairs.into_iter().map(|(key, value)| (key_text(key), as_json(value))).collect::<Map<_, _>>()),
        Yaml::Tagged(tagged) => as_json(tagged.value),
    }
}

fn key_text(key: serde_yaml::Value) -> String {
    match as_json(key) {
        Value::String(text) => text,
        other => other.to_string(),
    }
}
