//! Path of the value at a place of a JSON text, to tell where a fault is.
//!
//! The text has been read as JSON before. A library that notes the path while it reads would do the
//! same, but makes the code that reads a gear twice as large; the tests hold this one to it.

/// One open bracket, with the key or index of what is being read in it.
enum Open<'a> {
    Object(&'a str),
    Array(usize),
}

/// Path of the last key or value that ends at or before a byte of the text, as
/// "gear.legs[0].actuator.rod_m"; of the one that begins there, if that is a list or an object.
pub(super) fn path_at(text: &str, place: usize) -> String {
    let bytes = text.as_bytes();
    let mut open: Vec<Open> = Vec::new();
    let mut found = String::new();
    let mut at = 0;
    // Each round goes on by one byte at the least.
    while let Some(&byte) = bytes.get(at) {
        match byte {
            b'{' | b'[' => {
                if at >= place {
                    return if at == place { path(&open) } else { found };
                }
                open.push(if byte == b'{' {
                    Open::Object("")
                } else {
                    Open::Array(0)
                });
                at += 1;
            }
            b'}' | b']' => {
                at += 1;
                open.pop();
                if at > place {
                    return found;
                }
                found = path(&open);
            }
            b',' => {
                match open.last_mut() {
                    Some(Open::Array(index)) => *index += 1,
                    Some(Open::Object(key)) => *key = "",
                    None => {}
                }
                at += 1;
            }
            b':' | b' ' | b'\t' | b'\n' | b'\r' => at += 1,
            _ => {
                let end = token_end(bytes, at);
                if end > place {
                    return found;
                }
                if let (b'"', Some(Open::Object(key))) = (byte, open.last_mut())
                    && key.is_empty()
                {
                    *key = text.get(at + 1..end - 1).unwrap_or("");
                }
                found = path(&open);
                at = end;
            }
        }
    }
    found
}

/// Path of the first null of a JSON text.
pub(crate) fn path_of_null(text: &str) -> Option<String> {
    let bytes = text.as_bytes();
    let mut at = 0;
    // Each round goes on by one byte at the least.
    while let Some(&byte) = bytes.get(at) {
        if b"{}[]:, \t\n\r".contains(&byte) {
            at += 1;
            continue;
        }
        let end = token_end(bytes, at);
        if bytes.get(at..end) == Some(b"null") {
            return Some(path_at(text, end));
        }
        at = end;
    }
    None
}

/// End of the string, number or word that begins at a byte; always behind it.
fn token_end(bytes: &[u8], start: usize) -> usize {
    let rest = bytes.get(start + 1..).unwrap_or(&[]);
    if bytes.get(start) != Some(&b'"') {
        let length = rest
            .iter()
            .position(|byte| b",:]} \t\n\r".contains(byte))
            .unwrap_or(rest.len());
        return start + 1 + length;
    }
    let mut escaped = false;
    for (length, byte) in rest.iter().enumerate() {
        match byte {
            _ if escaped => escaped = false,
            b'\\' => escaped = true,
            b'"' => return start + length + 2,
            _ => {}
        }
    }
    bytes.len()
}

fn path(open: &[Open]) -> String {
    let mut path = String::new();
    for one in open {
        match one {
            Open::Object(key) => {
                if !path.is_empty() && !key.is_empty() {
                    path.push('.');
                }
                path.push_str(key);
            }
            Open::Array(index) => path.push_str(&format!("[{index}]")),
        }
    }
    path
}

/// Byte at a line and column as the reader counts them: from 1, the column in bytes behind the
/// start of the line.
pub(super) fn byte_at(text: &str, line: usize, column: usize) -> usize {
    let start: usize = text
        .split_inclusive('\n')
        .take(line.saturating_sub(1))
        .map(str::len)
        .sum();
    start + column
}

#[cfg(test)]
mod tests {
    use gearswing_gear::model::Gear;
    use proptest::prelude::*;
    use serde_json::Value;
    use serde_json::error::Category;

    use super::{byte_at, path_at};
    use crate::arbitrary::gear;

    fn ours(text: &str) -> Option<String> {
        let error = serde_json::from_str::<Gear>(text).err()?;
        // Only a fault of the data is told by its path.
        (error.classify() == Category::Data).then_some(())?;
        Some(path_at(text, byte_at(text, error.line(), error.column())))
    }

    /// `serde_path_to_error`, which notes the path while it reads.
    fn library(text: &str) -> Option<String> {
        let mut reader = serde_json::Deserializer::from_str(text);
        let found: Result<Gear, _> = serde_path_to_error::deserialize(&mut reader);
        let error = found.err()?;
        (error.inner().classify() == Category::Data).then_some(())?;
        let path = error.path().to_string();
        Some(if path == "." { String::new() } else { path })
    }

    fn error_of(text: &str) -> String {
        let error = serde_json::from_str::<Gear>(text).err();
        error.map_or_else(String::new, |error| error.to_string())
    }

    /// Every place in a value.
    fn pointers(value: &Value, at: &str, into: &mut Vec<String>) {
        into.push(at.to_owned());
        match value {
            Value::Object(map) => {
                for (key, value) in map {
                    pointers(value, &format!("{at}/{key}"), into);
                }
            }
            Value::Array(list) => {
                for (index, value) in list.iter().enumerate() {
                    pointers(value, &format!("{at}/{index}"), into);
                }
            }
            _ => {}
        }
    }

    /// A wrong value, a key too many or a key gone, at one place.
    fn spoil(value: &mut Value, at: &str, how: u8) {
        let Some(place) = value.pointer_mut(at) else {
            return;
        };
        match (how, &mut *place) {
            (0, _) => *place = Value::Null,
            (1, _) => *place = Value::from("a \"{[,: \\ wrong"),
            (2, _) => *place = serde_json::json!({"a": [1, {"b": 2}]}),
            (3, _) => *place = serde_json::json!([[1, 2], 3, "x"]),
            (4, _) => *place = Value::Bool(true),
            (5, Value::Object(map)) => {
                map.insert("strange".into(), serde_json::json!({"x": [1]}));
            }
            (6, Value::Object(map)) => {
                let first = map.keys().next().cloned();
                map.retain(|key, _| Some(key) != first.as_ref());
            }
            (7, Value::Array(list)) => {
                list.pop();
            }
            (_, Value::Array(list)) => list.push(serde_json::json!({"n": 1})),
            _ => *place = Value::from(-1),
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(1000))]

        #[test]
        fn a_fault_is_where_the_library_finds_it(
            gear in gear(), at in any::<prop::sample::Index>(), how in 0..9_u8, pretty in any::<bool>(),
        ) {
            let mut value = serde_json::to_value(&gear).unwrap();
            let mut all = Vec::new();
            pointers(&value, "", &mut all);
            let at = at.get(&all).clone();
            spoil(&mut value, &at, how);
            let text = if pretty {
                serde_json::to_string_pretty(&value).unwrap()
            } else {
                value.to_string()
            };
            let (ours, library) = (ours(&text), library(&text));
            // Of an unknown kind the key is at fault: the library stops before it.
            let key = |ours: &str, library: &str| {
                let rest = ours.strip_prefix(library).and_then(|rest| rest.strip_prefix('.'));
                rest.is_some_and(|rest| !rest.contains(['.', '[']))
            };
            let error = error_of(&text);
            let at_the_key = error.starts_with("unknown variant")
                && ours.as_deref().zip(library.as_deref()).is_some_and(|(a, b)| key(a, b));
            prop_assert!(ours == library || at_the_key, "{error}: {ours:?} {library:?} {at} {how} {text}");
        }
    }

    #[test]
    fn names_with_brackets_and_quotes_do_not_lead_astray() {
        let text = r#"{"a\"}": [1, {"b": "]"}, 2], "c": 3}"#;
        let of = |part: &str| path_at(text, text.find(part).unwrap() + part.len());
        assert_eq!(of(r#""b""#), r#"a\"}[1].b"#);
        assert_eq!(of(r#""]"}"#), r#"a\"}[1]"#);
        assert_eq!(of(", 2"), r#"a\"}[2]"#);
        assert_eq!(of("2]"), r#"a\"}"#);
        assert_eq!(of("3"), "c");
        assert_eq!(path_at("", 0), "");
        assert_eq!(byte_at("ab\ncd", 2, 1), 4);
    }
}
