//! Published sizes, each with its source.
