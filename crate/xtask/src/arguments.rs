//! Command line arguments: a command, then options in any order.

use anyhow::{Context, Result, bail};
use std::str::FromStr;

/// The arguments not yet asked for.
pub(crate) struct Arguments {
    left: Vec<String>,
}

impl Arguments {
    /// Those of this process, program name left out.
    pub(crate) fn from_process() -> Self {
        Self {
            left: std::env::args().skip(1).collect(),
        }
    }

    /// Takes the first argument as the command.
    pub(crate) fn command(&mut self) -> Option<String> {
        (!self.left.is_empty()).then(|| self.left.remove(0))
    }

    /// Takes an option without value; true when it was there.
    pub(crate) fn flag(&mut self, name: &str) -> bool {
        let before = self.left.len();
        self.left.retain(|argument| argument != name);
        self.left.len() != before
    }

    /// Takes an option with its value.
    pub(crate) fn value(&mut self, name: &str) -> Result<Option<String>> {
        let Some(at) = self.left.iter().position(|argument| argument == name) else {
            return Ok(None);
        };
        self.left.remove(at);
        if at >= self.left.len() {
            bail!("{name} needs a value after it");
        }
        Ok(Some(self.left.remove(at)))
    }

    /// Takes an option whose value is a number.
    pub(crate) fn number<T: FromStr>(&mut self, name: &str) -> Result<Option<T>> {
        self.value(name)?
            .map(|text| {
                text.parse()
                    .ok()
                    .with_context(|| format!("{name} needs a number, not '{text}'"))
            })
            .transpose()
    }

    /// Fails when something is left that nobody asked for.
    pub(crate) fn finish(self) -> Result<()> {
        match self.left.first() {
            Some(unknown) => bail!("'{unknown}' is not understood here"),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Arguments;

    fn of(text: &str) -> Arguments {
        Arguments {
            left: text.split_whitespace().map(String::from).collect(),
        }
    }

    #[test]
    fn options_in_any_order() {
        let mut arguments = of("serve --end-with-input --port 8");
        assert_eq!(arguments.command().as_deref(), Some("serve"));
        assert_eq!(arguments.number::<u16>("--port").unwrap(), Some(8));
        assert!(arguments.flag("--end-with-input"));
        assert!(!arguments.flag("--end-with-input"));
        arguments.finish().unwrap();
    }

    #[test]
    fn wrong_ones_are_named() {
        let error = of("--port").value("--port").unwrap_err().to_string();
        assert!(error.contains("--port"));
        let error = of("--port 70000").number::<u16>("--port").unwrap_err();
        assert!(error.to_string().contains("70000"));
        let error = of("--prot 1").finish().unwrap_err().to_string();
        assert!(error.contains("--prot"));
    }
}
