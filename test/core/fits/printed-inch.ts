// Owns copies of printed ANSI B4.1 tables: numbers in thousandths of an inch as they stood in texts that were read for this work, each
// with its source. A misprint in a source is named and left out.

const n = (text: string): number[] => text.trim().split(/\s+/).map(Number);

export const handbook31 =
  "Machinery's Handbook, 31st edition, Tables 8a to 12 (ANSI/ASME B4.1-1967), p. 646 to 660";
export const handbook27 =
  "Machinery's Handbook, 27th edition, Table 11 (ANSI B4.1-1967 (R1999)), p. 663";
export const handbookR1987 =
  "Machinery's Handbook, Table 3 (ANSI B4.1-1967 (R1987)), p. 634, and Table 1, p. 630";
export const aeronautical =
  "Aeronautical Engineer's Data Book, Table 12.5, p. 225";
export const tableSite =
  "Table LC6-LC11 (ANSI B4.1-1967, R1987) as reprinted on an engineering tables site (cobanengineering.com)";

/** Table 1: grades 4 to 13 in each row, a row a step to 200 in. */
export const grades = [
  "0.12 0.12 0.15 0.25 0.4 0.6 1.0 1.6 2.5 4 6",
  "0.24 0.15 0.20 0.3 0.5 0.7 1.2 1.8 3.0 5 7",
  "0.40 0.15 0.25 0.4 0.6 0.9 1.4 2.2 3.5 6 9",
  "0.71 0.2 0.3 0.4 0.7 1.0 1.6 2.8 4.0 7 10",
  "1.19 0.25 0.4 0.5 0.8 1.2 2.0 3.5 5.0 8 12",
  "1.97 0.3 0.4 0.6 1.0 1.6 2.5 4.0 6 10 16",
  "3.15 0.3 0.5 0.7 1.2 1.8 3.0 4.5 7 12 18",
  "4.73 0.4 0.6 0.9 1.4 2.2 3.5 5 9 14 22",
  "7.09 0.5 0.7 1.0 1.6 2.5 4.0 6 10 16 25",
  "9.85 0.6 0.8 1.2 1.8 2.8 4.5 7 12 18 28",
  "12.41 0.6 0.9 1.2 2.0 3.0 5.0 8 12 20 30",
  "15.75 0.7 1.0 1.4 2.2 3.5 6 9 14 22 35",
  "19.69 0.8 1.0 1.6 2.5 4 6 10 16 25 40",
  "30.09 0.9 1.2 2.0 3 5 8 12 20 30 50",
  "41.49 1.0 1.6 2.5 4 6 10 16 25 40 60",
  "56.19 1.2 2.0 3 5 8 12 20 30 50 80",
  "76.39 1.6 2.5 4 6 10 16 25 40 60 100",
  "100.9 2.0 3 5 8 12 20 30 50 80 125",
  "131.9 2.5 4 6 10 16 25 40 60 100 160",
  "171.9 3 5 8 12 20 30 50 80 125 200",
  "200 4 6 10 16 25 40 60 100 160 250",
].map((row) => {
  const [upTo = 0, ...values] = n(row);
  return { upTo, values };
});

/** One class's column: `shaft` as "upper lower", `clearance` as "least most" (negative is interference), from a step on. */
export interface PrintedColumn {
  readonly word: string;
  readonly what: "shaft" | "clearance" | "hole";
  /** The step's number, from 0, that the column begins at. */
  readonly from: number;
  readonly values: readonly number[];
  readonly source: string;
}

function column(
  source: string,
  word: string,
  what: PrintedColumn["what"],
  text: string,
  from = 0,
): PrintedColumn {
  return { word, what, from, values: n(text), source };
}

/** Columns over the steps of the running and locational fits. */
// prettier-ignore
export const columns: readonly PrintedColumn[] = [
  column(handbookR1987, "RC1", "clearance", "0.1 0.45 0.15 0.5 0.2 0.6 0.25 0.75 0.3 0.95 0.4 1.1 0.4 1.2 0.5 1.5 0.6 1.8 0.6 2.0 0.8 2.3 1.0 2.7 1.2 3.0"),
  column(handbookR1987, "RC1", "hole", "0.2 0.2 0.25 0.3 0.4 0.4 0.5 0.6 0.7 0.8 0.9 1.0 1.0"),
  column(handbookR1987, "RC1", "shaft", "-0.1 -0.25 -0.15 -0.3 -0.2 -0.35 -0.25 -0.45 -0.3 -0.55 -0.4 -0.7 -0.4 -0.7 -0.5 -0.9 -0.6 -1.1 -0.6 -1.2 -0.8 -1.4 -1.0 -1.7 -1.2 -2.0"),
  column(handbookR1987, "RC2", "clearance", "0.1 0.55 0.15 0.65 0.2 0.85 0.25 0.95 0.3 1.2 0.4 1.4 0.4 1.6 0.5 2.0 0.6 2.3 0.6 2.6 0.8 2.9 1.0 3.4 1.2 3.8"),
  column(handbookR1987, "RC2", "hole", "0.25 0.3 0.4 0.4 0.5 0.6 0.7 0.9 1.0 1.2 1.2 1.4 1.6"),
  column(handbook31, "RC3", "clearance", "0.4 1.2 0.5 1.5 0.6 1.7 0.8 2.1 1.0 2.6 1.2 3.1 1.4 3.7 1.6 4.2 2.0 5.0 2.5 5.7 3.0 6.6 4.0 8.1", 1),
  column(handbook31, "RC3", "shaft", "-0.5 -0.9 -0.6 -1.0 -0.8 -1.3 -1.0 -1.6 -1.2 -1.9 -1.4 -2.3 -1.6 -2.6 -2.0 -3.2 -2.5 -3.7 -3.0 -4.4 -4.0 -5.6", 2),
  column(handbookR1987, "RC4", "hole", "0.6 0.7 0.9 1.0 1.2 1.6 1.8 2.2 2.5 2.8 3.0 3.5 4.0"),
  column(handbook31, "RC4", "clearance", "0.3 1.3 0.4 1.6 0.5 2.0 0.6 2.3 0.8 2.8 1.0 3.6 1.2 4.2 1.4 5.0 1.6 5.7 2.0 6.6 2.5 7.5 3.0 8.7"),
  column(handbook31, "RC4", "shaft", "-0.3 -0.7 -0.4 -0.9 -0.5 -1.1 -0.6 -1.3 -0.8 -1.6 -1.0 -2.0 -1.2 -2.4 -1.4 -2.8 -1.6 -3.2 -2.0 -3.8 -2.5 -4.5 -3.0 -5.2 -4.0 -6.5"),
  column(handbook31, "RC5", "clearance", "0.6 1.6 0.8 2.0 1.0 2.5 1.2 2.9 1.6 3.6 2.0 4.6 2.5 5.5 3.0 6.6 3.5 7.6 4.0 8.6"),
  column(handbook31, "RC5", "shaft", "-0.6 -1.0 -0.8 -1.3 -1.0 -1.6 -1.2 -1.9 -1.6 -2.4 -2.0 -3.0 -2.5 -3.7 -3.0 -4.4"),
  column(handbook31, "RC6", "clearance", "0.6 2.2 0.8 2.7 1.0 3.3 1.2 3.8 1.6 4.8 2.0 6.1 2.5 7.3 3.0 8.7"),
  column(handbook31, "RC6", "shaft", "-0.6 -1.2 -0.8 -1.5 -1.0 -1.9 -1.2 -2.2 -1.6 -2.8 -2.0 -3.6 -2.5 -4.3 -3.0 -5.2 -3.5 -6.0 -4.0 -6.8 -5.0 -8.0 -6.0 -9.5 -8.0 -12.0"),
  column(handbook31, "RC7", "clearance", "1.0 2.6 1.2 3.1 1.6 3.9 2.0 4.6 2.5 5.7 3.0 7.1 4.0 8.8"),
  column(handbook31, "RC7", "shaft", "-1.0 -1.6 -1.2 -1.9 -1.6 -2.5 -2.0 -3.0 -2.5 -3.7 -3.0 -4.6 -4.0 -5.8 -5.0 -7.2 -6.0 -8.5 -7.0 -9.8 -8.0 -11.0 -10.0 -13.5 -12.0 -16.0"),
  column(handbook31, "RC8", "clearance", "2.5 5.1 2.8 5.8 3.0 6.6 3.5 7.9"),
  column(handbook31, "RC8", "shaft", "-2.5 -3.5 -2.8 -4.0 -3.0 -4.4 -3.5 -5.1 -4.5 -6.5 -5.0 -7.5 -6.0 -9.0 -7.0 -10.5 -8.0 -12.0 -10.0 -14.5 -12.0 -17.0 -14.0 -20.0 -16.0 -22.0"),
  column(handbook31, "RC9", "clearance", "4.0 8.1 4.5 9.0 5.0 10.7 6.0 12.8 7.0 15.5 8.0 18.0 9.0 20.5 10.0 24.0 12.0 28.0 15.0 34.0 18.0 38.0 22.0 45.0 25.0 51.0"),
  column(handbook31, "RC9", "shaft", "-4.0 -5.6 -4.5 -6.0 -5.0 -7.2 -6.0 -8.8 -7.0 -10.5 -8.0 -12.0 -9.0 -13.5 -10.0 -15.0 -12.0 -18.0 -15.0 -22.0 -18.0 -26.0 -22.0 -31.0 -25.0 -35.0"),
  column(tableSite, "LC6", "shaft", "-0.3 -0.9 -0.4 -1.1 -0.5 -1.4 -0.6 -1.6 -0.8 -2.0 -1.0 -2.6"),
  column(tableSite, "LC7", "clearance", "0.6 3.2 0.8 3.8 1.0 4.6 1.2 5.6 1.6 7.1 2.0 8.5"),
  column(tableSite, "LC7", "shaft", "-0.6 -1.6 -0.8 -2.0 -1.0 -2.4 -1.2 -2.8 -1.6 -3.6 -2.0 -4.5"),
  // the first most of LC 8 is printed 2.0, a misprint of 3.6: 1.6 + 2.0 by the same row's limits
  column(tableSite, "LC8", "clearance", "1.2 4.2 1.6 5.2 2.0 6.4 2.5 8.0", 1),
  column(tableSite, "LC8", "shaft", "-1.0 -2.0 -1.2 -2.4 -1.6 -3.0 -2.0 -3.6 -2.5 -4.5"),
  column(tableSite, "LC9", "shaft", "-2.5 -4.1 -2.8 -4.6 -3.0 -5.2 -3.5 -6.3 -4.5 -8.0"),
  column(tableSite, "LC9", "clearance", "2.5 6.6 2.8 7.6 3.0 8.7 3.5 10.3"),
  column(tableSite, "LC10", "clearance", "4 12 4.5 14.5 5 17 6 20 7 23"),
  column(tableSite, "LC10", "shaft", "-4 -8 -4.5 -9.5 -5 -11 -6 -13 -7 -15"),
  column(tableSite, "LC11", "clearance", "5 17 6 20 7 25 8 28 10 34"),
  column(tableSite, "LC11", "shaft", "-5 -11 -6 -13 -7 -16 -8 -18 -10 -22"),
  column(handbook31, "LT1", "clearance", "-0.12 0.52 -0.15 0.65 -0.2 0.8 -0.2 0.9 -0.25 1.05 -0.3 1.3 -0.3 1.5"),
  column(handbook31, "LT1", "shaft", "0.12 -0.12 0.15 -0.15 0.2 -0.2 0.2 -0.2 0.25 -0.25 0.3 -0.3 0.3 -0.3 0.4 -0.4 0.5 -0.5 0.6 -0.6 0.6 -0.6 0.7 -0.7 0.8 -0.8"),
  column(handbook31, "LT2", "clearance", "-0.4 1.6 -0.5 2.1 -0.6 2.4 -0.7 2.9 -0.8 3.3 -0.9 3.7 -1.0 4.0 -1.0 4.5 -1.2 5.2", 4),
  column(handbook31, "LT4", "shaft", "0.7 0.1 0.8 0.1 0.9 0.1 1.1 0.1 1.3 0.1 1.5 0.1 1.7 0.1 2.0 0.2 2.2 0.2 2.4 0.2 2.7 0.2", 2),
  column(handbook31, "LT5", "clearance", "-0.8 0.2 -0.9 0.2 -1.1 0.2 -1.3 0.3 -1.5 0.4 -1.9 0.4 -2.2 0.4 -2.6 0.4 -2.6 0.6 -3.0 0.6 -3.4 0.7", 2),
  column(handbook31, "LN1", "shaft", "0.45 0.25 0.5 0.3 0.65 0.4 0.8 0.4 1.0 0.5 1.1 0.6 1.3 0.8 1.6 1.0 1.9 1.2 2.2 1.4 2.3 1.4 2.6 1.6 2.8 1.8"),
  column(handbook31, "LN2", "shaft", "0.65 0.4 0.8 0.5 1.0 0.6 1.1 0.7 1.3 0.8 1.6 1.0 2.1 1.4 2.5 1.6 2.8 1.8 3.2 2.0 3.4 2.2 3.9 2.5 4.4 2.8"),
  column(handbook31, "LN3", "shaft", "0.75 0.5 0.9 0.6 1.2 0.8 1.4 1.0 1.7 1.2 2.0 1.4 2.3 1.6 2.9 2.0 3.5 2.5 4.2 3.0 4.7 3.5 5.9 4.5 6.6 5.0"),
  column(handbook31, "LN3", "clearance", "-0.9 -0.1 -1.2 -0.2 -1.4 -0.3 -1.7 -0.4 -2.0 -0.4 -2.3 -0.4 -2.9 -0.6 -3.5 -0.9 -4.2 -1.2 -4.7 -1.5 -5.9 -2.3 -6.6 -2.5", 1),
];

/** Columns over the finer steps of the force fits; clearance here as printed: least and most interference. */
// prettier-ignore
export const forceColumns: readonly PrintedColumn[] = [
  column(handbook27, "FN1", "clearance", "0.05 0.5 0.1 0.6 0.1 0.75 0.1 0.8 0.2 0.9 0.2 1.1 0.3 1.2 0.3 1.3 0.4 1.4 0.6 1.8 0.7 1.9 0.9 2.4"),
  column(handbook27, "FN1", "shaft", "0.5 0.3 0.6 0.4 0.75 0.5 0.8 0.5 0.9 0.6 1.1 0.7 1.2 0.8 1.3 0.9 1.4 1.0 1.8 1.3 1.9 1.4 2.4 1.8"),
  column(handbook31, "FN1", "shaft", "2.9 2.2 3.2 2.5 3.5 2.8 3.8 3.0 4.3 3.5 4.3 3.5 4.9 4.0 4.9 4.0 5.5 4.5 6.1 5.0 7.0 6.0 7.0 6.0", 13),
  column(handbook27, "FN2", "clearance", "0.2 0.85 0.2 1.0 0.4 1.4 0.5 1.6 0.5 1.6 0.6 1.9 0.6 1.9 0.8 2.4 0.8 2.4 0.8 2.7 1.0 2.9 1.4 3.7"),
  column(handbook27, "FN2", "shaft", "0.85 0.6 1.0 0.7 1.4 1.0 1.6 1.2 1.6 1.2 1.9 1.4 1.9 1.4 2.4 1.8 2.4 1.8 2.7 2.0 2.9 2.2"),
  column(handbook31, "FN2", "shaft", "4.5 3.5 5.0 4.0 5.5 4.5 6.2 5.0 6.2 5.0 7.2 6.0 7.2 6.0 8.2 7.0 9.4 8.0 9.4 8.0", 13),
  column(handbook27, "FN3", "clearance", "0.8 2.1 1.0 2.6 1.2 2.8 1.3 3.2 1.8 3.7 2.1 4.4", 6),
  column(handbook27, "FN3", "shaft", "2.1 1.6 2.6 2.0 2.8 2.2 3.2 2.5 3.7 3.0", 6),
  column(handbook31, "FN3", "shaft", "6.0 5.0 6.0 5.0 7.0 6.0 8.2 7.0 8.2 7.0 9.2 8.0 10.2 9.0 10.2 9.0 11.4 10.0 13.4 12.0 13.6 12.0 15.6 14.0", 13),
  column(handbook27, "FN4", "clearance", "0.3 0.95 0.4 1.2 0.6 1.6 0.7 1.8 0.7 1.8 0.8 2.1 1.0 2.3 1.5 3.1 1.8 3.4 2.3 4.2 2.8 4.7 3.6 5.9"),
  column(handbook27, "FN4", "shaft", "0.95 0.7 1.2 0.9 1.6 1.2 1.8 1.4 1.8 1.4 2.1 1.6 2.3 1.8 3.1 2.5 3.4 2.8 4.2 3.5 4.7 4.0"),
  column(handbook31, "FN4", "shaft", "8.0 7.0 8.0 7.0 9.0 8.0 10.2 9.0 11.2 10.0 13.2 12.0 13.2 12.0 15.2 14.0 17.4 16.0 19.4 18.0 21.6 20.0 23.6 22.0", 13),
  column(handbook27, "FN5", "clearance", "0.3 1.3 0.5 1.7 0.5 2.0 0.6 2.3 0.8 2.5 1.0 3.0 1.3 3.3 1.4 4.0 2.4 5.0 3.2 6.2 4.2 7.2 4.8 8.4"),
  column(handbook27, "FN5", "shaft", "1.3 0.9 1.7 1.2 2.0 1.4 2.3 1.6 2.5 1.8 3.0 2.2 3.3 2.5 4.0 3.0 5.0 4.0 6.2 5.0 7.2 6.0"),
  column(handbook31, "FN5", "shaft", "11.6 10.0 13.6 12.0 13.6 12.0 15.8 14.0 17.8 16.0 17.8 16.0 20.0 18.0 22.0 20.0 24.2 22.0 27.2 25.0 30.5 28.0 32.5 30.0", 13),
  column(handbook31, "FN5", "clearance", "7.5 11.6 9.5 13.6 9.5 13.6 11.2 15.8 13.2 17.8 13.2 17.8 15.0 20.0 17.0 22.0 18.5 24.2 21.5 27.2 24.0 30.5 26.0 32.5", 13),
];

/** Least and most clearance of RC 1 to RC 9, a row a step. Its least of RC 1 over 0.12 to 0.24 in, printed 1.5
 * for 0.15, is left out (NaN). */
export const runningClearances = [
  "0.1 0.45 0.1 0.55 0.3 0.95 0.3 1.3 0.6 1.6 0.6 2.2 1.0 2.6 2.5 5.1 4.0 8.1",
  "- 0.5 0.15 0.65 0.4 1.2 0.4 1.6 0.8 2.0 0.8 2.7 1.2 3.1 2.8 5.8 4.5 9.0",
  "0.2 0.6 0.2 0.85 0.5 1.5 0.5 2.0 1.0 2.5 1.0 3.3 1.6 3.9 3.0 6.6 5.0 10.7",
  "0.25 0.75 0.25 0.95 0.6 1.7 0.6 2.3 1.2 2.9 1.2 3.8 2.0 4.6 3.5 7.9 6.0 12.8",
  "0.3 0.95 0.3 1.2 0.8 2.1 0.8 2.8 1.6 3.6 1.6 4.8 2.5 5.7 4.5 10.0 7.0 15.5",
  "0.4 1.1 0.4 1.4 1.0 2.6 1.0 3.6 2.0 4.6 2.0 6.1 3.0 7.1 5.0 11.5 8.0 18.0",
  "0.4 1.2 0.4 1.6 1.2 3.1 1.2 4.2 2.5 5.5 2.5 7.3 4.0 8.8 6.0 13.5 9.0 20.5",
  "0.5 1.5 0.5 2.0 1.4 3.7 1.4 5.0 3.0 6.6 3.0 8.7 5.0 10.7 7.0 15.5 10.0 24.0",
].map(n);
