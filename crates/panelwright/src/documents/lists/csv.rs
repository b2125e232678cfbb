//! A list as CSV after RFC 4180, written so that spreadsheets open it right by a double click.
//!
//! * Comma between fields, CR LF after every line, quotes around what holds a comma, a quote or a line break.
//! * UTF-8 with a byte order mark: without one, a common spreadsheet reads the file in the old code page of the
//!   machine and shows `×` and currency signs as rubbish; programs that need none pass over it.
//! * The last column holds the design's fingerprint in every row, so that a list cut apart still tells where it belongs
//!   and every row has the same number of fields.
//! * A text that starts like a formula gets an apostrophe before it: names of designs come with links of others.

use super::table::{Cell, Table};

/// Byte order mark of UTF-8.
const MARK: &str = "\u{feff}";

/// How a formula starts in a spreadsheet.
const FORMULA: [char; 6] = ['=', '+', '-', '@', '\t', '\r'];

/// The name of a list's file.
#[must_use]
pub fn file_name(table: &Table) -> String {
    format!("lists/{}.csv", table.name)
}

/// A list as CSV. What warns of its design stands in every row too, for a spreadsheet is sorted and cut apart.
#[must_use]
pub fn csv(table: &Table, fingerprint: &str, warnings: &[String]) -> String {
    let warning = warnings.join(" ");
    let mut out = MARK.to_owned();
    for column in &table.columns {
        field(&mut out, &column.title);
        out.push(',');
    }
    if !warning.is_empty() {
        out.push_str("warning,");
    }
    out.push_str("design\r\n");
    for row in &table.rows {
        for cell in row {
            match cell {
                Cell::Text(text) => field(&mut out, text),
                other => out.push_str(&other.shown()),
            }
            out.push(',');
        }
        if !warning.is_empty() {
            field(&mut out, &warning);
            out.push(',');
        }
        out.push_str(fingerprint);
        out.push_str("\r\n");
    }
    out
}

/// A text as one field.
pub(in crate::documents) fn field(out: &mut String, text: &str) {
    let guard = if text.starts_with(FORMULA) { "'" } else { "" };
    if text.contains(['"', ',', '\r', '\n']) {
        out.push('"');
        out.push_str(guard);
        out.push_str(&text.replace('"', "\"\""));
        out.push('"');
    } else {
        out.push_str(guard);
        out.push_str(text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn quotes_commas_line_breaks_and_formulas_are_written_as_the_standard_says() {
        let mut table = Table::new("t", "T", &["what, where", "#mm"]);
        table.rows.push(vec![Cell::text("a \"b\""), Cell::number(2.50004, 2)]);
        table.rows.push(vec![Cell::text("=1+1"), Cell::Empty]);
        table.rows.push(vec![Cell::text("two\nlines"), Cell::Money(3.5)]);
        let expected = "\u{feff}\"what, where\",mm,design\r\n\"a \"\"b\"\"\",2.5,ABCD2345\r\n'=1+1,,ABCD2345\r\n\
                        \"two\nlines\",3.50,ABCD2345\r\n";
        assert_eq!(csv(&table, "ABCD2345", &[]), expected);
    }

    #[test]
    fn every_row_of_a_design_that_must_not_be_cut_says_so() {
        let mut table = Table::new("t", "T", &["what"]);
        table.rows.push(vec![Cell::text("Floor")]);
        let warnings = ["Do not cut yet.".to_owned(), "Not enough sheet: 1, or 2.".to_owned()];
        let expected =
            "\u{feff}what,warning,design\r\nFloor,\"Do not cut yet. Not enough sheet: 1, or 2.\",ABCD2345\r\n";
        assert_eq!(csv(&table, "ABCD2345", &warnings), expected);
    }
}
