//! The check number of a link: CRC-32 with the polynomial of IEEE 802.3, reflected, as in ISO 3309 and zip files.

/// CRC-32 of bytes.
pub(crate) fn crc32(bytes: &[u8]) -> u32 {
    let mut crc = u32::MAX;
    for byte in bytes {
        crc ^= u32::from(*byte);
        for _ in 0..8 {
            let mask = (crc & 1).wrapping_neg();
            crc = crc >> 1 ^ 0xedb8_8320 & mask;
        }
    }
    !crc
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The customary check value: CRC-32 of the nine characters 123456789 is cbf43926.
    #[test]
    fn the_customary_check_value_holds() {
        assert_eq!(crc32(b"123456789"), 0xcbf4_3926);
        assert_eq!(crc32(b""), 0);
    }
}
