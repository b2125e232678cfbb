//! An enum for each pick of the list whose options code has to tell apart.

/// Makes an enum of a pick's options, with their names in files.
macro_rules! picks {
    ($(#[$meta:meta])* $name:ident { $($variant:ident = $option:literal),+ $(,)? }) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
        #[allow(missing_docs, reason = "each name is an option of the choice of the same name")]
        pub enum $name { $($variant),+ }
        impl $name {
            /// All of them, in the order in which they are written.
            pub const ALL: [Self; [$($option),+].len()] = [$(Self::$variant),+];
            /// The option's name in files.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { $(Self::$variant => $option),+ }
            }
            /// The variant of an option's name.
            #[must_use]
            pub fn of(name: &str) -> Option<Self> {
                match name { $($option => Some(Self::$variant),)+ _ => None }
            }
        }
    };
}

pub(super) use picks;
