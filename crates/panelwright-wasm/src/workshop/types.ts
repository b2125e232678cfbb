/** What the templates will be, before they are taken. */
export interface TemplatesPlan {
  pages: number;
  /** `goes`: its cutting files of a kind, one for each go. */
  sheets: { panel: string; pages: number; how: string; goes: number }[];
}

/** One published size. */
export interface Source {
  group: string;
  name: string;
  value: string;
  source: string;
  confidence: string;
}

/** What to buy, bag, cut and drill, for as many cases as the design says. */
export interface Lists {
  fingerprint: string;
  cases: number;
  /** Written before every sum; may be empty. */
  currency: string;
  /** Sum of what has a price; null when nothing has. */
  total: number | null;
  /** Lines of the shopping list without a price. */
  open_prices: number;
  /** Whether the total lacks sheets whose price is stated, because their number is not worked out. */
  sheets_uncounted: boolean;
  /** Panels of one case; null for a sheet nothing is known of. */
  mass_kg: number | null;
  /** For all cases, by the maker's rates; null when none is stated. */
  minutes: number | null;
  /** shopping, bags, panels, drilling, and film where there is any. */
  tables: ListTable[];
}

/** A list as rows and columns. */
export interface ListTable {
  name: string;
  title: string;
  columns: { title: string; numbers: boolean }[];
  rows: (string | number | null)[][];
  notes: string[];
}

/** What a design means for a case built from an older one. */
export interface Comparison {
  /** Fingerprints of the two designs. */
  old: string;
  new: string;
  panels: {
    panel: string;
    label: string;
    verdict: "unchanged" | "drill-more" | "trim" | "recut";
    why: string[];
    /** Old and new over each other; empty when the panel is unchanged. */
    picture: string;
  }[];
  /** Film and paint that change, in words. */
  cover: string[];
  fasteners: { what: string; length_mm: number | null; old: number; new: number }[];
}

/** The panels on the stock: the best layout so far. */
export interface StockLayout {
  /** Sheets no layout can go below. */
  bound: number;
  yield_share: number;
  sheets: {
    label: string;
    size_mm: [number, number];
    panels: number;
    yield_share: number;
    offcut_mm: [number, number] | null;
    /** The saw's way in words, in its order; empty for a router or laser. */
    cuts: string[];
    /** The sheet with its panels, as SVG. */
    picture: string;
  }[];
  /** Panels without a place, in words. */
  missing: string[];
}

/** A file for a machine: `left-first` is cut before the sheet is turned over for `left`. */
export interface CuttingFile {
  name: string;
  text: string;
}

/** What a file of a maker's is. */
export type LookedAt = OpenedDesign | OpenedPack | MarkedFile;

/** A design file, or a link. */
export interface OpenedDesign {
  is: "design";
  title: string;
  design_file: string;
  link: string;
  fingerprint: string;
}

/** A pack with its design, and which of its files belong to it. */
export interface OpenedPack {
  is: "pack";
  title: string;
  design_file: string;
  link: string;
  /** As its files should bear it, and by this version. */
  fingerprint: string;
  fingerprint_now: string;
  made_by: string | null;
  other_version: boolean;
  files: { name: string; verdict: FileVerdict; fingerprints: string[] }[];
}

export type FileVerdict = "design" | "belongs" | "other" | "unmarked";

/** A file that bears a fingerprint, held against the design at hand. */
export interface MarkedFile {
  is: "marked";
  verdict: FileVerdict;
  fingerprints: string[];
  made_by: string | null;
  other_version: boolean;
}

/** What a fingerprint read from paper says of the print; `design` is the fingerprint of the design at hand. */
export type PrintCheck = { is: "belongs" } | { is: "version"; version: string } | { is: "misread" | "other"; design: string };

/** Designs to be cut from one stack of sheets. */
export interface KitRequest {
  /** Each design as the text of a file, or as a link; `count` of each round, or altogether. */
  units: { design: string; label: string; count: number; part: KitPart }[];
  /** None: the sheets that the first design of each material has. */
  sheets: { width_mm: number; height_mm: number; count: number | null; material: string | null }[];
  /** How many sheets for these counts, or how many whole rounds from these sheets. */
  ask: "counts" | "most";
}

export type KitPart = "case" | "sleeve" | "chassis";

/** The best layouts of the kits so far. */
export interface KitsFound {
  /** The answer in one sentence. */
  sentence: string;
  answer: {
    ask: "counts" | "most";
    rounds: number;
    bound: number;
    proved: boolean;
    units: { label: string; part: KitPart; fingerprint: string; count: number; total: number; stack: number; blocked: boolean }[];
    stacks: {
      label: string;
      rounds: number;
      yield_share: number;
      /** Sheets left untouched, with their numbers. */
      unused: [string, number][];
      layouts: {
        sheets: { label: string; size_mm: [number, number]; panels: string[]; yield_share: number; cuts: string[] }[];
        bound: number;
        bound_by: string;
        fewest: boolean;
        unplaced: string[];
      };
    }[];
  };
  /** The sheets of each stack, as SVG. */
  pictures: string[][];
}
