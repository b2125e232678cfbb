//! A picture in millimetres, and the ways to write it.
