//! Base64 with the alphabet that addresses may hold (RFC 4648, section 5), without padding.

/// The digits in order.
pub(super) const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_";

fn value(digit: u8) -> Option<u32> {
    Some(match digit {
        b'A'..=b'Z' => u32::from(digit - b'A'),
        b'a'..=b'z' => u32::from(digit - b'a') + 26,
        b'0'..=b'9' => u32::from(digit - b'0') + 52,
        b'-' => 62,
        b'_' => 63,
        _ => return None,
    })
}

/// Whether a character is a digit of base64url.
pub(super) fn is_digit(character: char) -> bool {
    u8::try_from(character).is_ok_and(|digit| value(digit).is_some())
}

/// How many digits `bytes` bytes take.
pub(super) const fn digits_for(bytes: usize) -> usize {
    (bytes * 8).div_ceil(6)
}

/// Writes bytes as digits.
pub(super) fn encode(bytes: &[u8]) -> String {
    let mut text = String::with_capacity(digits_for(bytes.len()));
    for three in bytes.chunks(3) {
        let at = |index: usize| u32::from(three.get(index).copied().unwrap_or(0));
        let bits = at(0) << 16 | at(1) << 8 | at(2);
        for place in 0..digits_for(three.len()) {
            text.push(DIGITS[(bits >> (18 - 6 * place)) as usize & 63] as char);
        }
    }
    text
}

/// Reads digits as bytes. Other characters and bits that fill no whole byte are dropped: compare with [`encode`] to
/// find them.
pub(super) fn decode(text: &str) -> Vec<u8> {
    let mut bytes = Vec::with_capacity(text.len() * 3 / 4);
    let (mut bits, mut held) = (0_u32, 0_u32);
    for digit in text.bytes().filter_map(value) {
        bits = (bits << 6 | digit) & 0xffff;
        held += 6;
        if held >= 8 {
            held -= 8;
            bytes.push((bits >> held) as u8);
        }
    }
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked examples: RFC 4648, section 10, without its padding.
    #[test]
    fn the_worked_examples_of_the_standard_hold() {
        for (bytes, text) in [
            ("", ""),
            ("f", "Zg"),
            ("fo", "Zm8"),
            ("foo", "Zm9v"),
            ("foob", "Zm9vYg"),
            ("fooba", "Zm9vYmE"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(encode(bytes.as_bytes()), text);
            assert_eq!(decode(text), bytes.as_bytes());
            assert_eq!(digits_for(bytes.len()), text.len());
        }
        assert_eq!(encode(&[0xfb, 0xff]), "-_8");
    }
}
