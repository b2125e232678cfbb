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

/** What is told of a design after a change; the page makes its `View` of it. Lengths in mm, case frame as seen from the front. */
export interface Told {
  title: string;
  /** The values that differ from the choices' defaults, by key. */
  values: Record<string, Value>;
  /** Places in the list of choices of those that have no effect now. */
  idle: number[];
  fingerprint: string;
  link: string;
  case: {
    outside_mm: [number, number, number];
    inside_mm: [number, number, number];
    volume_l: number;
    /** Sheet the panels take: their bounding rectangles together, without waste. */
    sheet_mm2: number;
  };
  findings: Finding[];
  counts: { blocks: number; caution: number; note: number };
  /** One sentence: whether something stands in the way, and what has the least room to spare. */
  verdict: string;
  panels: Panel[];
  parts: { id: string; kind: string; label: string }[];
}

/** What the page shows: what it was told, with what it knew already. */
export interface View extends Omit<Told, "idle"> {
  /** The value of every choice, by key. */
  values: Record<string, Value>;
  /** Keys of the choices whose value is not the default, in the order of the list. */
  changed: string[];
  /** Keys of the choices that have no effect now. */
  idle: Set<string>;
}

/** What a check says. */
export interface Finding {
  rule: string;
  severity: "blocks" | "caution" | "note";
  text: string;
  remedy: string;
  /** Changes that clear it, each by itself: choices with their new values, by key. */
  mends: Record<string, Value>[];
  /** Parts, panels and features it is about: "cooler", "top", "back/fan-1-opening". */
  about: string[];
  source: string;
}

/** A flat panel; `Workbench.features` says what is cut into it. */
export interface Panel {
  id: string;
  label: string;
  assembly: string;
  size_mm: [number, number];
  thickness_mm: number;
  /** How many holes are drilled in it. */
  holes: number;
}

/** One thing cut into a panel, in the panel's own frame as seen from outside. */
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

/** Where things are in a picture of the case. Points in mm of the picture. */
export interface CasePlaces {
  width_mm: number;
  height_mm: number;
  /** Where each finding points, in the order of the view; null when it has no place. */
  points: ([number, number] | null)[];
}

/** The case as one sees it. */
export interface CasePicture extends CasePlaces {
  svg: string;
}
