//! How a module states its sizes: one line makes both the constant and its entry in the list.
//!
//! Invariant: a number is written once. The list of sources is made from the constants and rows
//! that the rest of the code uses, so it can neither lag behind nor disagree.

/// Numbers that can be shown in the list of sources.
pub(super) trait Numbers {
    /// The numbers in the order in which a pattern shows them.
    fn numbers(&self) -> Vec<f64>;
}

impl Numbers for f64 {
    fn numbers(&self) -> Vec<f64> {
        vec![*self]
    }
}

impl Numbers for u32 {
    fn numbers(&self) -> Vec<f64> {
        vec![f64::from(*self)]
    }
}

impl<const N: usize> Numbers for [f64; N] {
    fn numbers(&self) -> Vec<f64> {
        self.to_vec()
    }
}

impl Numbers for &[f64] {
    fn numbers(&self) -> Vec<f64> {
        self.to_vec()
    }
}

/// Defines `Sourced` constants and `fn size_entries`, which lists them.
///
/// Each line: `NAME: type = value, "what it is", "pattern", source;`. The pattern holds one `{}`
/// for each number, or `{*}` for a list of any length.
macro_rules! sizes {
    (group $group:literal; $($(#[$meta:meta])* $name:ident : $ty:ty = $value:expr, $label:literal, $pattern:literal, $source:expr;)+) => {
        $(
            #[doc = concat!($label, ".")]
            $(#[$meta])*
            pub const $name: $crate::dimensions::source::Sourced<$ty> =
                $crate::dimensions::source::Sourced::new($value, $source);
        )+

        /// Lists the single sizes of this file.
        fn size_entries(out: &mut Vec<$crate::dimensions::catalogue::Entry>) {
            use $crate::dimensions::table::Numbers as _;
            $(out.push($crate::dimensions::catalogue::Entry::new(
                $group, $label, $pattern, &$name.get().numbers(), $name.source(),
            ));)+
        }
    };
}

pub(super) use sizes;
