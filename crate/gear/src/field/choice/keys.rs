//! Keys of options, both ways, from one table.

macro_rules! keys {
    ($($name:ident, $type:ty: $($variant:path => $key:literal),+;)+) => {$(
        pub(in crate::field) mod $name {
            use super::*;

            /// Every key, in the order of the list.
            pub(in crate::field) const KEYS: &[&str] = &[$($key),+];

            pub(in crate::field::choice) fn key(value: $type) -> &'static str {
                match value { $($variant => $key),+ }
            }

            pub(in crate::field::choice) fn value(key: &str) -> Option<$type> {
                match key { $($key => Some($variant),)+ _ => None }
            }
        }
    )+};
}
