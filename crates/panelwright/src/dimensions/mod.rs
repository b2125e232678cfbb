//! Published sizes, each with its source.

pub mod source;
