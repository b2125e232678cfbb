//! The program as a person at a shell meets it: exit codes, what is printed and where.

mod check;
mod compare;
mod convert;
mod examples;
mod kits;
mod lists;
mod make;
mod opened;
mod run;
