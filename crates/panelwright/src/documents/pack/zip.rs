//! A zip file: deflated entries, one after the other, with a list at the end. Same files, same bytes: every entry has
//! the earliest time the format can say, and no owner.
//!
//! Source of the format: APPNOTE 6.3.10, sections 4.3.7 (local header), 4.3.12 (central directory), 4.3.16 (its end). A
//! writer of our own: all it takes beside the deflating that the PDF needs anyway is these three headers.

use crate::design::crc32;

/// How hard to deflate, 0 to 10: as for the pages of a PDF, the middle that compressors take by themselves (common
/// practice).
const DEFLATE_LEVEL: u8 = 6;
/// Version needed to read it: 2.0, deflate and folders (4.4.3).
const NEEDED: u16 = 20;
/// Names are UTF-8 (4.4.4, bit 11).
const UTF8: u16 = 1 << 11;
/// Deflate (4.4.5).
const DEFLATED: u16 = 8;
/// 1 January 1980, midnight: the first date that can be written (4.4.6).
const TIME_AND_DATE: u32 = 0x0021_0000;

/// The files as one zip, in their order. Names are paths with `/`; files and sums stay far below the format's 4 GB.
#[must_use]
pub fn zip(files: &[(String, Vec<u8>)]) -> Vec<u8> {
    let mut out = Vec::new();
    let mut list = Vec::new();
    for (name, bytes) in files {
        let packed = miniz_oxide::deflate::compress_to_vec(bytes, DEFLATE_LEVEL);
        let place = out.len() as u32;
        let mut header = Vec::new();
        for word in [NEEDED, UTF8, DEFLATED] {
            header.extend(word.to_le_bytes());
        }
        for long in [TIME_AND_DATE, crc32(bytes), packed.len() as u32, bytes.len() as u32] {
            header.extend(long.to_le_bytes());
        }
        header.extend((name.len() as u16).to_le_bytes());
        header.extend([0; 2]);
        out.extend(b"PK\x03\x04");
        out.extend(&header);
        out.extend(name.as_bytes());
        out.extend(&packed);
        list.extend(b"PK\x01\x02");
        list.extend(NEEDED.to_le_bytes());
        list.extend(&header);
        // No remark, first disk, no attributes.
        list.extend([0; 10]);
        list.extend(place.to_le_bytes());
        list.extend(name.as_bytes());
    }
    let (place, count) = (out.len() as u32, files.len() as u16);
    let size = list.len() as u32;
    out.extend(list);
    out.extend(b"PK\x05\x06\0\0\0\0");
    out.extend(count.to_le_bytes());
    out.extend(count.to_le_bytes());
    out.extend(size.to_le_bytes());
    out.extend(place.to_le_bytes());
    out.extend([0; 2]);
    out
}
