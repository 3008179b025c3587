//! The string literals of a Rust source: not what stands in comments, nor the reasons of attributes.

/// Each literal with its line, counted from zero; escapes stand as written.
pub(crate) fn literals(source: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut rest = source;
    std::iter::from_fn(move || {
        while let Some(c) = rest.chars().next() {
            let before = &source[..source.len() - rest.len()];
            if let Some((literal, behind)) = literal_at(before, rest) {
                rest = behind;
                if !before.trim_end().ends_with("reason =") {
                    return Some((before.matches('\n').count(), literal));
                }
            } else {
                rest = skipped(c, rest);
            }
        }
        None
    })
}

/// The literal that begins here, and what follows it.
fn literal_at<'a>(before: &str, rest: &'a str) -> Option<(&'a str, &'a str)> {
    if let Some(inside) = rest.strip_prefix('"') {
        let end = end_of(inside)?;
        return Some((&inside[..end], &inside[end + 1..]));
    }
    let is_name = |c: char| c.is_alphanumeric() || c == '_';
    if before.ends_with(is_name) {
        return None;
    }
    let raw = rest.strip_prefix('r')?;
    let signs = raw.len() - raw.trim_start_matches('#').len();
    let inside = raw[signs..].strip_prefix('"')?;
    let close = format!("\"{}", "#".repeat(signs));
    let (literal, behind) = inside.split_once(close.as_str())?;
    Some((literal, behind))
}

/// Where a literal's closing sign stands.
fn end_of(inside: &str) -> Option<usize> {
    let mut escaped = false;
    inside.char_indices().find_map(|(at, c)| {
        let ends = c == '"' && !escaped;
        escaped = c == '\\' && !escaped;
        ends.then_some(at)
    })
}

/// What follows a comment, a character or a single sign.
fn skipped(c: char, rest: &str) -> &str {
    if rest.starts_with("//") {
        return rest.find('\n').map_or("", |end| &rest[end..]);
    }
    if rest.starts_with("/*") {
        return rest.find("*/").map_or("", |end| &rest[end + 2..]);
    }
    if let Some(inside) = rest.strip_prefix('\'') {
        // a character, not a lifetime
        let end = match inside.strip_prefix('\\') {
            Some(escape) => escape
                .get(1..)
                .and_then(|behind| Some(behind.find('\'')? + 2)),
            None => inside.char_indices().nth(1).map(|(at, _)| at),
        };
        if let Some(end) = end
            && inside[end..].starts_with('\'')
        {
            return &inside[end + 1..];
        }
    }
    &rest[c.len_utf8()..]
}

#[cfg(test)]
mod tests {
    use super::literals;

    fn texts(source: &str) -> Vec<(usize, &str)> {
        literals(source).collect()
    }

    #[test]
    fn finds_every_kind_of_literal() {
        let source = "a(\"one\", r\"two\\\");\nb(r#\"a \"third\" one\"#, \"with \\\" and \\\\\");";
        let found = [
            (0, "one"),
            (0, "two\\"),
            (1, "a \"third\" one"),
            (1, "with \\\" and \\\\"),
        ];
        assert_eq!(texts(source), found);
    }

    #[test]
    fn passes_over_comments_characters_and_reasons() {
        let source = "// \"no\"\n/* \"no\" */ let a: &'static str = f('\"', '\\'', '\\u{22}', \"yes\");\n#[expect(a, reason = \"no\")]\n/// \"no\"\nb(\"again\")";
        assert_eq!(texts(source), [(1, "yes"), (4, "again")]);
        assert_eq!(texts("for r in var\"x\""), [(0, "x")]);
        assert!(texts("\"never closed").is_empty());
    }
}
