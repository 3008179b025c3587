//! Stops that were made by a known cause are traced back to it.

/// Known causes.
mod causes;
/// Contact.
mod chosen;
mod contact;
/// The way down.
mod down;
/// Place and crossing against closed forms.
mod parts;
