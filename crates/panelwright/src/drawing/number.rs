//! The one way numbers are written into files: shortest decimal form with a fixed most number of decimals.
//!
//! Invariant: the same number gives the same characters natively and in wasm. Only multiplication and rounding are
//! used, both exactly defined for `f64`; no locale, no exponent, no `-0`.

/// Decimals for coordinates in millimetres: a half unit in the last place is 0.00005 mm, far below the 0.01 mm a
/// printed line may be off.
pub const COORDINATE_DECIMALS: u8 = 4;

/// Most decimals that can be asked for; more would not fit the whole-number route for lengths in millimetres.
pub const MOST_DECIMALS: u8 = 9;

/// Largest scaled value that an `f64` still holds as an exact whole number (2^53).
const LARGEST_WHOLE: f64 = 9_007_199_254_740_992.0;

/// The smallest whole number that 64 bits do not hold (2^64).
const BEYOND_U64: f64 = 18_446_744_073_709_551_616.0;

/// `value` with at most `decimals` decimals, trailing zeros dropped: `12.5`, `-0.25`, `3`.
///
/// Halves round away from zero. `decimals` above [`MOST_DECIMALS`] counts as that. A value that is not finite is
/// written as `0`, so that a file stays readable; the core hands no such value to a writer.
///
/// ```
/// use panelwright::drawing::number::format_number;
/// assert_eq!(format_number(12.50004, 4), "12.5");
/// assert_eq!(format_number(-0.00001, 4), "0");
/// ```
#[must_use]
pub fn format_number(value: f64, decimals: u8) -> String {
    let mut text = String::new();
    push_number(&mut text, value, decimals);
    text
}

/// A length in words, one decimal where it matters, none where not: `6`, `3.4`.
#[must_use]
pub fn mm(value: f64) -> String {
    format_number(value, 1)
}

/// Appends what [`format_number`] would return.
pub fn push_number(text: &mut String, value: f64, decimals: u8) {
    with_number(value, decimals, |number| text.push_str(number));
}

/// Hands on what [`format_number`] would return, without asking for memory: pictures and views are mostly numbers.
pub(crate) fn with_number<T>(value: f64, decimals: u8, then: impl FnOnce(&str) -> T) -> T {
    if !value.is_finite() {
        return then("0");
    }
    let mut decimals = decimals.min(MOST_DECIMALS);
    let mut scaled = libm::round(value.abs() * 10_u64.pow(u32::from(decimals)) as f64);
    if scaled > LARGEST_WHOLE {
        // Beyond the whole-number route there are no decimals worth keeping.
        decimals = 0;
        scaled = libm::round(value.abs());
        if scaled >= BEYOND_U64 {
            let digits = digits_of(scaled);
            return then(&if value < 0.0 { format!("-{digits}") } else { digits });
        }
    }
    let mut rest = scaled as u64;
    if rest == 0 {
        return then("0");
    }
    let mut places = decimals;
    while places > 0 {
        let mut shorter = rest;
        if last_digit(&mut shorter) != b'0' {
            break;
        }
        rest = shorter;
        places -= 1;
    }
    // From the last digit to the first. 2^53 has sixteen digits; a point and a sign.
    let mut bytes = [0_u8; 24];
    let mut start = bytes.len();
    let mut put = |byte: u8| {
        start -= 1;
        bytes[start] = byte;
    };
    for _ in 0..places {
        put(last_digit(&mut rest));
    }
    if places > 0 {
        put(b'.');
    }
    loop {
        put(last_digit(&mut rest));
        if rest == 0 {
            break;
        }
    }
    if value < 0.0 {
        put(b'-');
    }
    then(core::str::from_utf8(&bytes[start..]).unwrap_or_default())
}

/// All digits of a whole number of 2^64 or more, by doubling: no length is so large, but a wrong value may be, and the
/// message that refuses it says what was given. The library's own writer would bring 13 kB into the page's module.
fn digits_of(whole: f64) -> String {
    let bits = whole.to_bits();
    // 1.f times 2^(exponent - 1023) is 1f, as a whole number, times 2^(exponent - 1075).
    let mantissa = (bits & ((1 << 52) - 1)) | (1 << 52);
    let doublings = (bits >> 52 & 0x7ff).saturating_sub(1075);
    let mut digits: Vec<u8> = mantissa.to_string().bytes().rev().map(|byte| byte - b'0').collect();
    for _ in 0..doublings {
        let mut carry = 0;
        for digit in &mut digits {
            let twice = 2 * *digit + carry;
            (*digit, carry) = (twice % 10, twice / 10);
        }
        if carry > 0 {
            digits.push(carry);
        }
    }
    digits.iter().rev().map(|digit| char::from(b'0' + digit)).collect()
}

/// Takes the last decimal digit off a number. In 32 bits where they hold it: there a division by ten is a multiplication
/// in wasm too.
fn last_digit(rest: &mut u64) -> u8 {
    let digit = match u32::try_from(*rest) {
        Ok(small) => {
            *rest = u64::from(small / 10);
            (small % 10) as u8
        }
        Err(_) => {
            let digit = (*rest % 10) as u8;
            *rest /= 10;
            digit
        }
    };
    b'0' + digit
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_as_short_as_they_can_be() {
        for (value, decimals, expected) in [
            (0.0, 4, "0"),
            (-0.0, 4, "0"),
            (1.0, 4, "1"),
            (12.5, 4, "12.5"),
            (0.05, 4, "0.05"),
            (-0.05, 2, "-0.05"),
            (0.04996, 4, "0.05"),
            (100.0, 4, "100"),
            (9.99996, 4, "10"),
            (-123.456789, 3, "-123.457"),
            (0.5, 0, "1"),
            (-0.49, 0, "0"),
            (1e15, 4, "1000000000000000"),
            (2.834645669291, 9, "2.834645669"),
            (123_456_789.25, 9, "123456789"),
            (f64::NAN, 4, "0"),
            (f64::INFINITY, 4, "0"),
        ] {
            assert_eq!(format_number(value, decimals), expected, "{value} with {decimals}");
        }
    }

    #[test]
    fn huge_numbers_are_written_in_full() {
        for exponent in 50..=1023 {
            let value = libm::exp2(f64::from(exponent)) * 1.234_567_890_123_4;
            if value.is_finite() {
                assert_eq!(format_number(value, 9), format!("{value:.0}"));
                assert_eq!(format_number(-value, 0), format!("{:.0}", -value));
            }
        }
        assert_eq!(format_number(f64::MAX, 4), format!("{:.0}", f64::MAX));
    }

    #[test]
    fn numbers_agree_with_the_standard_library_away_from_halves() {
        // A fixed sweep (no randomness): 7 and 13 are coprime to 10 000, so all last digits turn up.
        for step in 0..20_000_i32 {
            let value = f64::from(step * 7 - 60_000) / 13.0;
            let plain = format!("{value:.4}");
            let plain = plain.trim_end_matches('0').trim_end_matches('.');
            let plain = if plain == "-0" { "0" } else { plain };
            assert_eq!(format_number(value, 4), plain);
        }
    }
}
