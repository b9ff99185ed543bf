// Data: the number (wire gauge) and letter sizes of drills and reamers, in ten-thousandths of an inch.
// They follow no formula; ASME B94.11M lists them for twist drills. Read: the whole lists in two public tables in source
// code; numbers 80 to 54 in "Metric, Inch & Fractional Inch: Drills, Sizes, Threads & Preferred Sizes", v. 2, 2007 (public
// domain); letters in a public drill chart made from the encyclopaedia article "Drill bit sizes"; some thirty of the rest
// in tables of tap and clearance drills. test/core/line/gauge-sizes.published.ts holds what these say.
// Numbers 81 to 107 are smaller than any bore that is reamed and are left out.

/** Number sizes in order from 80 (the smallest) to 1, 0.0001 in */
export const numberSizes: readonly number[] = [
  135, 145, 160, 180, 200, 210, 225, 240, 250, 260, 280, 292, 310, 320, 330,
  350, 360, 370, 380, 390, 400, 410, 420, 430, 465, 520, 550, 595, 635, 670,
  700, 730, 760, 785, 810, 820, 860, 890, 935, 960, 980, 995, 1015, 1040, 1065,
  1100, 1110, 1130, 1160, 1200, 1285, 1360, 1405, 1440, 1470, 1495, 1520, 1540,
  1570, 1590, 1610, 1660, 1695, 1730, 1770, 1800, 1820, 1850, 1890, 1910, 1935,
  1960, 1990, 2010, 2040, 2055, 2090, 2130, 2210, 2280,
];

/** Letter sizes in order from A (the smallest) to Z, 0.0001 in */
export const letterSizes: readonly number[] = [
  2340, 2380, 2420, 2460, 2500, 2570, 2610, 2660, 2720, 2770, 2810, 2900, 2950,
  3020, 3160, 3230, 3320, 3390, 3480, 3580, 3680, 3770, 3860, 3970, 4040, 4130,
];
