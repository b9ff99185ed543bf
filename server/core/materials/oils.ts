// Shipped oils by grade, plain mineral ones: kinematic viscosity at 40 and 100 °C with the grade's band, density at 15 °C. How
// viscosity runs between and beyond is the film's affair.
//
// What a grade fixes, it fixes: ISO 3448 the band at 40 °C (±10 % of the number; table seen), SAE J300 (2015; table seen)
// and SAE J306 (2005; table seen) the band at 100 °C, its upper end not included. The other temperature's figures are those
// of an oil of viscosity index near 100 at the middle and the ends of the band: low goes with low and high with high. They
// were written from memory; by ASTM D2270 (table seen) their indices are 95 to 103. An oil thickened with polymers (a multigrade) is none of these; write its two viscosities.
import { cSt, figure, type Figure } from "./figure.ts";
import { memory } from "./sources.ts";

export interface Oil {
  readonly name: string;
  /** As it stands on the can. */
  readonly grade: string;
  readonly use: "industrial" | "engine" | "gear";
  /** Kinematic viscosity at 40 and at 100 °C, m²/s. */
  readonly at40: Figure;
  readonly at100: Figure;
  /** At 15 °C, kg/m³. */
  readonly density: Figure;
}

const iso = "ISO 3448, ±10 % (table seen)";
const j300 = "SAE J300, 2015 (table seen)";
const j306 = "SAE J306, 2005 (table seen)";
const index = "an oil of viscosity index 95 to 103 by ASTM D2270 (table seen)";

/** Grade, then at 100 °C: value, low, high in cSt; density in kg/m³. */
const industrial: readonly (readonly [
  number,
  number,
  number,
  number,
  number,
])[] = [
  [10, 2.65, 2.49, 2.81, 850],
  [15, 3.4, 3.19, 3.6, 856],
  [22, 4.3, 4.03, 4.56, 862],
  [32, 5.4, 5.06, 5.74, 868],
  [46, 6.8, 6.36, 7.22, 872],
  [68, 8.7, 8.14, 9.26, 877],
  [100, 11.2, 10.45, 11.94, 882],
  [150, 14.7, 13.7, 15.67, 888],
  [220, 19, 17.71, 20.16, 893],
  [320, 24, 22.47, 25.56, 897],
  [460, 30.5, 28.45, 32.48, 901],
];

/** Grade, then at 100 °C: low, high; at 40 °C: value, low, high, all in cSt; density in kg/m³. */
const automotive: readonly (readonly [
  string,
  "engine" | "gear",
  number,
  number,
  number,
  number,
  number,
  number,
])[] = [
  ["20", "engine", 6.9, 9.3, 60.7, 47.1, 75.3, 877],
  ["30", "engine", 9.3, 12.5, 95.9, 75.3, 117.8, 882],
  ["40", "engine", 12.5, 16.3, 145.5, 117.8, 175, 888],
  ["50", "engine", 16.3, 21.9, 221.9, 175, 276.3, 893],
  ["60", "engine", 21.9, 26.1, 320, 276.3, 363.3, 897],
  ["80", "gear", 7, 11, 71.6, 48.2, 97.3, 885],
  ["85", "gear", 11, 13.5, 114.3, 97.3, 132.1, 890],
  ["90", "gear", 13.5, 18.5, 170.2, 132.1, 211.4, 895],
  ["110", "gear", 18.5, 24, 263.3, 211.4, 320, 900],
  ["140", "gear", 24, 32.5, 409.6, 320, 506.4, 905],
  ["190", "gear", 32.5, 41, 610, 506.4, 720, 910],
];

export const oils: readonly Oil[] = [
  ...industrial.map(([grade, value, low, high, density]): Oil => ({
    name: `iso-vg-${grade}`,
    grade: `ISO VG ${grade}`,
    use: "industrial",
    at40: figure(cSt, grade, 0.9 * grade, 1.1 * grade, iso),
    at100: figure(cSt, value, low, high, index),
    density: densityOf(density),
  })),
  winter("sae-10", "SAE 10"),
  winter("sae-10w", "SAE 10W"),
  ...automotive.map(
    ([grade, use, low, high, value40, low40, high40, density]): Oil => ({
      name: `sae-${grade}`,
      grade: `SAE ${grade}`,
      use,
      at40: figure(cSt, value40, low40, high40, index),
      at100: figure(
        cSt,
        (low + high) / 2,
        low,
        high,
        use === "engine" ? j300 : j306,
      ),
      density: densityOf(density),
    }),
  ),
];

const byName = new Map(oils.map((oil) => [oil.name, oil]));

/** The shipped oil of that name, or nothing. */
export function oil(name: string): Oil | undefined {
  return byName.get(name);
}

/** J300 sets no upper end at 100 °C for a winter grade; SAE 20's lower end is taken. SAE 10 is the same oil's older name. */
function winter(name: string, grade: string): Oil {
  return {
    name,
    grade,
    use: "engine",
    at40: figure(cSt, 32.9, 20.4, 47.1, index),
    at100: figure(
      cSt,
      5.5,
      4.1,
      6.9,
      `${j300}, its lower end; the upper is SAE 20's lower, the value an oil of viscosity index near 100`,
    ),
    density: densityOf(870),
  };
}

function densityOf(value: number): Figure {
  return figure(1, value, value - 15, value + 15, memory);
}
