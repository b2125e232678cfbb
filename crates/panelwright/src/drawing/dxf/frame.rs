//! The fixed parts of a file: what the format wants beside layers and entities. One group a line: its code, a space,
//! its value.
//!
//! Handles (hexadecimal): tables 1 to A, the root dictionary C, groups D, print styles E and F, records up to 29,
//! layers of our own from 40. Names and order of the groups: DXF reference of the year 2000 (from memory; held by an
//! outside reader's audit).

/// From the start to the units. `$INSUNITS` 4: millimetres; `$MEASUREMENT` 1: metric.
pub(super) const HEADER: &str = "\
0 SECTION
2 HEADER
9 $ACADVER
1 AC1015
9 $DWGCODEPAGE
3 ANSI_1252
9 $INSBASE
10 0.0
20 0.0
30 0.0
9 $LTSCALE
40 1.0
9 $INSUNITS
70 4
9 $MEASUREMENT
70 1
9 $LUNITS
70 2
9 $LUPREC
70 4
9 $CLAYER
8 0
9 $CELTYPE
6 ByLayer
9 $TEXTSTYLE
7 Standard
9 $DIMSTYLE
2 Standard
";

/// From the classes to layer 0.
pub(super) const BEFORE_LAYERS: &str = "\
0 SECTION
2 CLASSES
0 ENDSEC
0 SECTION
2 TABLES
0 TABLE
2 VPORT
5 8
330 0
100 AcDbSymbolTable
70 1
0 VPORT
5 29
330 8
100 AcDbSymbolTableRecord
100 AcDbViewportTableRecord
2 *Active
70 0
10 0.0
20 0.0
11 1.0
21 1.0
12 200.0
22 150.0
13 0.0
23 0.0
14 10.0
24 10.0
15 10.0
25 10.0
16 0.0
26 0.0
36 1.0
17 0.0
27 0.0
37 0.0
40 400.0
41 1.34
42 50.0
43 0.0
44 0.0
50 0.0
51 0.0
71 0
72 1000
73 1
74 3
75 0
76 0
77 0
78 0
0 ENDTAB
0 TABLE
2 LTYPE
5 5
330 0
100 AcDbSymbolTable
70 3
0 LTYPE
5 14
330 5
100 AcDbSymbolTableRecord
100 AcDbLinetypeTableRecord
2 ByBlock
70 0
3 \n\
72 65
73 0
40 0.0
0 LTYPE
5 15
330 5
100 AcDbSymbolTableRecord
100 AcDbLinetypeTableRecord
2 ByLayer
70 0
3 \n\
72 65
73 0
40 0.0
0 LTYPE
5 16
330 5
100 AcDbSymbolTableRecord
100 AcDbLinetypeTableRecord
2 Continuous
70 0
3 Solid line
72 65
73 0
40 0.0
0 ENDTAB
0 TABLE
2 LAYER
5 2
330 0
100 AcDbSymbolTable
70 1
0 LAYER
5 10
330 2
100 AcDbSymbolTableRecord
100 AcDbLayerTableRecord
2 0
70 0
62 7
6 Continuous
370 -3
390 F
";
