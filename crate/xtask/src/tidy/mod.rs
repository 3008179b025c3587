//! The project's own rules, checked in its text. An ordinary test and a command.

/// Who may depend on whom.
mod dependencies;
/// Units beside numbers, sources beside published values.
mod documented;
/// What a rule found, and the files that it looks at.
mod finding;
/// Which room of the solver stands on which.
mod floors;
/// String literals of a source.
mod literal;
/// Addresses and ways to turn text into markup, in what the browser loads.
mod page;
/// All rules together.
mod run;
/// Length, first line, forbidden words, module lists.
mod text;
/// Words for people, in one crate.
mod words;

pub(crate) use run::tidy;
