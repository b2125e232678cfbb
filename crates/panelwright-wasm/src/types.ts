/** What a choice takes. */
export type Kind =
  | { type: "pick"; options: { name: string; label: string }[] }
  | {
      type: "number";
      unit: string;
      min: number;
      max: number;
      step: number;
      presets: { label: string; value: number }[];
      optional: boolean;
    }
  | { type: "switch" }
  | { type: "text"; max_chars: number }
  | { type: "points"; max: number; limit_mm: number };

/** A value as a design file writes it; null is an optional number left open. */
export type Value = number | string | boolean | null | [number, number][];

/** One choice of the one list. */
export interface Choice {
  key: string;
  label: string;
  group: string;
  group_label: string;
  kind: Kind;
  allowed: string;
  default: Value;
  help: string;
  source: string;
  confidence: string;
  when: null | { key: string; or?: string[]; names: string[]; is: boolean };
}

/** One published size. */
export interface Source {
  group: string;
  name: string;
  value: string;
  source: string;
  confidence: string;
}

/** What the page shows after a change. Lengths in mm, case frame as seen from the front. */
export interface View {
  title: string;
  values: Record<string, Value>;
  applies: Record<string, boolean>;
  changed: string[];
  fingerprint: string;
  link: string;
  case: {
    outside_mm: [number, number, number];
    inside_mm: [number, number, number];
    volume_l: number;
    /** Area of all panels together. */
    sheet_mm2: number;
  };
  findings: Finding[];
  counts: { blocks: number; caution: number; note: number };
  /** One sentence: whether something stands in the way, and what has the least room to spare. */
  verdict: string;
  panels: Panel[];
  parts: { id: string; kind: string; label: string }[];
}

/** What a check says. */
export interface Finding {
  rule: string;
  severity: "blocks" | "caution" | "note";
  text: string;
  remedy: string;
  /** Parts, panels and features it is about: "cooler", "top", "back/fan-1-opening". */
  about: string[];
  source: string;
}

/** A flat panel and what is cut into it, in its own frame, seen from outside. */
export interface Panel {
  id: string;
  label: string;
  assembly: string;
  size_mm: [number, number];
  thickness_mm: number;
  features: Feature[];
}

/** One thing cut into a panel. */
export interface Feature {
  id: string;
  kind: string;
  key: string | null;
  why: string;
  source: string;
  centre_mm: [number, number];
  size_mm: [number, number];
  diameter_mm: number | null;
  /** Depth when it does not go through. */
  depth_mm: number | null;
}

/** How the case is looked at. */
export interface Look {
  /** Where the eye is: 0 from the right, 90 from the back, -90 from the front. */
  azimuth_deg: number;
  /** 0 level, 90 from above. */
  elevation_deg: number;
  /** Panels taken off. */
  off: string[];
  see_through: boolean;
  /** 0 together, 1 pulled apart. */
  apart: number;
}

/** The case as one sees it. Points in mm of the picture. */
export interface CasePicture {
  svg: string;
  width_mm: number;
  height_mm: number;
  /** Where each finding points, in the order of the view; null when it has no place. */
  points: ([number, number] | null)[];
}

/** What the templates will be, before they are taken. */
export interface TemplatesPlan {
  pages: number;
  sheets: { panel: string; pages: number; how: string }[];
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

/** What a new design means for a case built already. */
export interface Recut {
  /** Fingerprints. */
  old: string;
  new: string;
  panels: PanelChange[];
  fasteners: { what: string; length_mm: number | null; old: number; new: number }[];
}

/** What becomes of one panel. */
export interface PanelChange {
  panel: string;
  label: string;
  verdict: "unchanged" | "drill-more" | "trim" | "recut";
  why: string[];
  added: {
    id: string;
    letter: string | null;
    diameter_mm: number | null;
    centre_mm: [number, number];
    enlarges: boolean;
    why: string;
  }[];
  trims: { edge: string; by_mm: number }[];
  /** Where the new panel's lower left corner lies on the old one. */
  new_on_old_mm: [number, number];
}

/** What the design on the bench means for a case built from an older one. */
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
  steps: number;
  /** Whether looking on would change nothing. */
  done: boolean;
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
  }[];
  /** Panels without a place, in words. */
  missing: string[];
}
