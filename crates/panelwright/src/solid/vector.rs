//! Directions in the case frame.

/// A value for each axis of the case frame, x first.
///
/// Written out, since an array's own `map` stays a call with a call inside in the page's module, which is built to be
/// small; and most of what a change asks is asked for each axis.
#[inline(always)]
pub fn by_axis<T>(of: impl Fn(usize) -> T) -> [T; 3] {
    [of(0), of(1), of(2)]
}

/// Product of two vectors, summed from x to z: the order decides the last bit.
pub fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

/// The opposite direction. Zero stays zero: a minus before it would show in files.
pub fn minus(direction: [f64; 3]) -> [f64; 3] {
    by_axis(|axis| if direction[axis] == 0.0 { 0.0 } else { -direction[axis] })
}
