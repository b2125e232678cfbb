//! FNV-1a of 64 bits (Fowler, Noll, Vo): a plain, well known hash. It tells contents apart that nobody made alike on
//! purpose, no more.

/// Where the hash starts, as published.
pub(crate) const START: u64 = 0xcbf2_9ce4_8422_2325;

/// The hash of some bytes.
pub(crate) fn fnv1a(bytes: &[u8]) -> u64 {
    fnv1a_from(START, bytes)
}

/// The same from another start: a second hash of the same bytes.
pub(crate) fn fnv1a_from(start: u64, bytes: &[u8]) -> u64 {
    bytes.iter().fold(start, |hash, byte| (hash ^ u64::from(*byte)).wrapping_mul(0x100_0000_01b3))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Test values published with the hash: the empty text, `a`, `foobar`.
    #[test]
    fn the_hash_gives_its_published_values() {
        assert_eq!(fnv1a(b""), START);
        assert_eq!(fnv1a(b"a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv1a(b"foobar"), 0x8594_4171_f739_67e8);
    }
}
