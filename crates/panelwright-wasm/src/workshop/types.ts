/** What the templates will be, before they are taken. */
export interface TemplatesPlan {
  pages: number;
  sheets: { panel: string; pages: number; how: string }[];
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
