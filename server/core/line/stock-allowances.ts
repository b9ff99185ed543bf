// Data: how much stock to leave for a reamer, on diameter, and where a little or a lot becomes a finding.
// Makers' tables differ twofold, so these are bands, and each row says where it was read.

/** The classes that reaming advice tells apart. A material's own class is given by whoever knows the material. */
export type MaterialClass =
  | "steel"
  | "stainless"
  | "cast-iron"
  | "bronze"
  | "brass"
  | "aluminium"
  | "plastic";

export type Drive = "hand" | "machine";

export interface StockRow {
  /** Diameters up to and including this, m */
  readonly upTo: number;
  /** m, on diameter */
  readonly least: number;
  readonly most: number;
}

const inch = 0.0254;

/**
 * Hand. Most: 0.005 in "to 3 in" or, of others, 0.004 to 1 in, 0.007 to 2 in and 0.010 above: "Modern Shop Practice"
 * (American Technical Society), vol. 1, "Fluted chucking reamers", read; the larger of the two stands here. Least:
 * 0.002 in, common practice, no source.
 */
export const handStock: readonly StockRow[] = [
  { upTo: 1 * inch, least: 0.002 * inch, most: 0.005 * inch },
  { upTo: 2 * inch, least: 0.002 * inch, most: 0.007 * inch },
  { upTo: 3 * inch, least: 0.002 * inch, most: 0.01 * inch },
];

/** Machine, steel. A reamer maker's table "material left (diameter)" for 0.090 to 2.50 in, read; below: its first row. */
export const machineStock: readonly StockRow[] = [
  { upTo: 0.17 * inch, least: 0.005 * inch, most: 0.01 * inch },
  { upTo: 0.28 * inch, least: 0.008 * inch, most: 0.012 * inch },
  { upTo: 0.88 * inch, least: 0.01 * inch, most: 0.016 * inch },
  { upTo: 2.5 * inch, least: 0.015 * inch, most: 0.03 * inch },
];

/**
 * What a machine's most is multiplied by for other materials: soft ones take more, work-hardening ones the same but
 * never less than the least. Common practice, no source.
 */
export const machineStockShare: Readonly<Record<MaterialClass, number>> = {
  steel: 1,
  stainless: 1,
  "cast-iron": 1.25,
  bronze: 1.25,
  brass: 1.25,
  aluminium: 1.5,
  plastic: 1.5,
};

export interface StockThresholds {
  /** Under this the stock is thin, m */
  readonly thin: number;
  /** Over this it is heavy, m; undefined: over the most for the size and material */
  readonly heavy: number | undefined;
}

/**
 * Where stock becomes a finding unless a job says otherwise. Hand: thin under 0.002 in, heavy over 0.010 in ("never
 * over"); machine: thin under 0.004 in, heavy by size. Common practice, no source.
 */
export const stockThresholds: Readonly<Record<Drive, StockThresholds>> = {
  hand: { thin: 0.002 * inch, heavy: 0.01 * inch },
  machine: { thin: 0.004 * inch, heavy: undefined },
};
