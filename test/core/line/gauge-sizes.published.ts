// Number and letter sizes as other tables print them, each list transcribed from the text named above it.
// It is kept apart from server/core/line/gauge-sizes.ts, which was written in ten-thousandths of an inch.

/** "Metric, Inch & Fractional Inch: Drills, Sizes, Threads & Preferred Sizes", v. 2, 2007 (public domain): mm */
// prettier-ignore
export const millimetresOfNumbers: Readonly<Record<number, number>> = {
  80: 0.3429, 79: 0.3683, 78: 0.4064, 77: 0.4572, 76: 0.508, 75: 0.5334, 74: 0.5715, 73: 0.6096, 72: 0.635,
  71: 0.6604, 70: 0.7112, 69: 0.74168, 68: 0.7874, 67: 0.8128, 66: 0.8382, 65: 0.889, 64: 0.9144, 63: 0.9398,
  62: 0.9652, 61: 0.9906, 60: 1.016, 59: 1.0414, 58: 1.0668, 57: 1.0922, 55: 1.3208, 54: 1.397,
};

/** "Tap drill sizes, unified thread", technical pages of a tap maker: in */
// prettier-ignore
export const inchesOfTapDrills: Readonly<Record<string, number>> = {
  "53": 0.0595, "50": 0.07, "47": 0.0785, "45": 0.082, "43": 0.089, "42": 0.0935, "38": 0.1015, "37": 0.104,
  "36": 0.1065, "33": 0.113, "29": 0.136, "25": 0.1495, "21": 0.159, "16": 0.177, "14": 0.182, "7": 0.201,
  "3": 0.213, F: 0.257, I: 0.272, Q: 0.332, U: 0.368,
};

/** Two tables of tap and clearance drills for machine screws, and a table of the most used number sizes: in */
// prettier-ignore
export const inchesOfClearanceDrills: Readonly<Record<string, number>> = {
  "71": 0.026, "65": 0.035, "62": 0.038, "55": 0.052, "52": 0.0635, "48": 0.076, "46": 0.081, "44": 0.086,
  "41": 0.096, "35": 0.11, "32": 0.116, "30": 0.1285, "28": 0.1405, "27": 0.144, "18": 0.1695, "10": 0.1935,
  "9": 0.196, "4": 0.209, "2": 0.221, "1": 0.228, H: 0.266,
};

/** A public drill chart made from the table of the encyclopaedia article "Drill bit sizes": mm, to 0.005 mm */
// prettier-ignore
export const millimetresOfLetters: Readonly<Record<string, number>> = {
  A: 5.944, B: 6.045, C: 6.147, D: 6.248, E: 6.35, F: 6.528, G: 6.629, H: 6.756, I: 6.909, J: 7.036, K: 7.137,
  L: 7.366, M: 7.493, N: 7.671, O: 8.026, P: 8.204, Q: 8.433, R: 8.611, S: 8.839, T: 9.093, U: 9.347, V: 9.576,
  W: 9.804, X: 10.08, Y: 10.26, Z: 10.49,
};

/** A public table of drill sizes in source code, numbers 80 to 1 in order: in */
// prettier-ignore
export const inchesInOrder: readonly number[] = [
  0.0135, 0.0145, 0.016, 0.018, 0.02, 0.021, 0.0225, 0.024, 0.025, 0.026, 0.028, 0.0292, 0.031, 0.032, 0.033, 0.035,
  0.036, 0.037, 0.038, 0.039, 0.04, 0.041, 0.042, 0.043, 0.0465, 0.052, 0.055, 0.0595, 0.0635, 0.067, 0.07, 0.073,
  0.076, 0.0785, 0.081, 0.082, 0.086, 0.089, 0.0935, 0.096, 0.098, 0.0995, 0.1015, 0.104, 0.1065, 0.11, 0.111, 0.113,
  0.116, 0.12, 0.1285, 0.136, 0.1405, 0.144, 0.147, 0.1495, 0.152, 0.154, 0.157, 0.159, 0.161, 0.166, 0.1695, 0.173,
  0.177, 0.18, 0.182, 0.185, 0.189, 0.191, 0.1935, 0.196, 0.199, 0.201, 0.204, 0.2055, 0.209, 0.213, 0.221, 0.228,
];

/** DIN 1420, H7 reamers: up to (mm), greatest and least deviation (µm), as a reamer maker's technical pages print it */
// prettier-ignore
export const h7Reamers: readonly (readonly [
  upTo: number,
  greatest: number,
  least: number,
])[] = [
  [3, 8, 4], [6, 10, 5], [10, 12, 6], [18, 15, 8], [30, 17, 9], [50, 21, 12], [80, 25, 14],
];
