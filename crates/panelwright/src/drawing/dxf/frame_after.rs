//! The fixed parts of a file behind its layers: styles, blocks, and what follows the entities. Written and numbered as in
//! [`super::frame`].

/// From the end of the layers to the start of the entities.
pub(super) const AFTER_LAYERS: &str = "\
0 ENDTAB
0 TABLE
2 STYLE
5 3
330 0
100 AcDbSymbolTable
70 1
0 STYLE
5 11
330 3
100 AcDbSymbolTableRecord
100 AcDbTextStyleTableRecord
2 Standard
70 0
40 0.0
41 1.0
50 0.0
71 0
42 2.5
3 txt
4 \n\
0 ENDTAB
0 TABLE
2 VIEW
5 6
330 0
100 AcDbSymbolTable
70 0
0 ENDTAB
0 TABLE
2 UCS
5 7
330 0
100 AcDbSymbolTable
70 0
0 ENDTAB
0 TABLE
2 APPID
5 9
330 0
100 AcDbSymbolTable
70 1
0 APPID
5 12
330 9
100 AcDbSymbolTableRecord
100 AcDbRegAppTableRecord
2 ACAD
70 0
0 ENDTAB
0 TABLE
2 DIMSTYLE
5 A
330 0
100 AcDbSymbolTable
70 1
100 AcDbDimStyleTable
71 1
340 27
0 DIMSTYLE
105 27
330 A
100 AcDbSymbolTableRecord
100 AcDbDimStyleTableRecord
2 Standard
70 0
340 11
0 ENDTAB
0 TABLE
2 BLOCK_RECORD
5 1
330 0
100 AcDbSymbolTable
70 2
0 BLOCK_RECORD
5 1F
330 1
100 AcDbSymbolTableRecord
100 AcDbBlockTableRecord
2 *Model_Space
340 22
0 BLOCK_RECORD
5 1B
330 1
100 AcDbSymbolTableRecord
100 AcDbBlockTableRecord
2 *Paper_Space
340 1E
0 ENDTAB
0 ENDSEC
0 SECTION
2 BLOCKS
0 BLOCK
5 20
330 1F
100 AcDbEntity
8 0
100 AcDbBlockBegin
2 *Model_Space
70 0
10 0.0
20 0.0
30 0.0
3 *Model_Space
1 \n\
0 ENDBLK
5 21
330 1F
100 AcDbEntity
8 0
100 AcDbBlockEnd
0 BLOCK
5 1C
330 1B
100 AcDbEntity
67 1
8 0
100 AcDbBlockBegin
2 *Paper_Space
70 0
10 0.0
20 0.0
30 0.0
3 *Paper_Space
1 \n\
0 ENDBLK
5 1D
330 1B
100 AcDbEntity
67 1
8 0
100 AcDbBlockEnd
0 ENDSEC
0 SECTION
2 ENTITIES
";

/// From the end of the entities to the layouts.
pub(super) const OBJECTS: &str = "\
0 ENDSEC
0 SECTION
2 OBJECTS
0 DICTIONARY
5 C
330 0
100 AcDbDictionary
281 1
3 ACAD_GROUP
350 D
3 ACAD_LAYOUT
350 1A
3 ACAD_PLOTSTYLENAME
350 E
0 DICTIONARY
5 D
330 C
100 AcDbDictionary
281 1
0 DICTIONARY
5 1A
330 C
100 AcDbDictionary
281 1
3 Layout1
350 1E
3 Model
350 22
0 ACDBDICTIONARYWDFLT
5 E
330 C
100 AcDbDictionary
281 1
3 Normal
350 F
100 AcDbDictionaryWithDefault
340 F
0 ACDBPLACEHOLDER
5 F
330 E
";

/// What the two layouts, of the model and of the paper, do not share.
pub(super) struct Layout {
    pub handle: &'static str,
    /// The plot's flags: of the model 1024 (its kind) more.
    pub flags: &'static str,
    pub name: &'static str,
    /// Place among the tabs.
    pub tab: &'static str,
    /// Handle of its block.
    pub block: &'static str,
}

/// The layouts every file has.
pub(super) const LAYOUTS: [Layout; 2] = [
    Layout { handle: "22", flags: "1712", name: "Model", tab: "0", block: "1F" },
    Layout { handle: "1E", flags: "688", name: "Layout1", tab: "1", block: "1B" },
];

/// A layout from its handle to its flags.
pub(super) const LAYOUT_PAPER: &str = "\
330 1A
100 AcDbPlotSettings
1 \n\
2 none_device
4 \n\
6 \n\
40 0.0
41 0.0
42 0.0
43 0.0
44 0.0
45 0.0
46 0.0
47 0.0
48 0.0
49 0.0
140 0.0
141 0.0
142 1.0
143 1.0
";

/// From there to its name.
pub(super) const LAYOUT_PLOT: &str = "\
72 1
73 0
74 5
7 \n\
75 16
147 1.0
148 0.0
149 0.0
100 AcDbLayout
";

/// From its name to its tab.
pub(super) const LAYOUT_FLAGS: &str = "70 1";

/// From there to its block.
pub(super) const LAYOUT_SPACE: &str = "\
10 0.0
20 0.0
11 420.0
21 297.0
12 0.0
22 0.0
32 0.0
14 0.0
24 0.0
34 0.0
15 0.0
25 0.0
35 0.0
146 0.0
13 0.0
23 0.0
33 0.0
16 1.0
26 0.0
36 0.0
17 0.0
27 1.0
37 0.0
76 0
";

/// The end of the file.
pub(super) const END: &str = "0 ENDSEC\n0 EOF";
