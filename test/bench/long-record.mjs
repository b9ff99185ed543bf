// Makes records of any length for the benches and for tests of speed: one job with as many running places as fill it, each with its
// journal, hole, bush, bore, press and fit, every fourth with a line and a step. Invented numbers, the same at every run.

export const CRIB = `shop bench-crib
  units inch

gauge mic-1
  kind micrometer
  resolution 0.00001
  uncertainty 0.00004
  calibrated 2026-05-14
  due 2027-05-14

gauge bore-1
  kind bore-gauge
  resolution 0.00001
  uncertainty 0.00005
  set with mic-1
  calibrated 2026-05-14
  due 2027-05-14

reamer r-8755
  size 0.8755
  oversize bronze-c932 +0.0001 to +0.0002
  drive hand
  flutes 6 left
`;

const HEAD = `job bench-record
  title "A record for the bench"
  units inch
  use "crib.thou"
  opened 2026-11-02 by AK

part layshaft
  material steel-4140

part case
  material aluminium-356-t6
  split across
  joint gasket 0.004
  bolts 18 lbf-ft
`.split("\n");

function place(number) {
  // a step of 0.00001 in up and down, so that no two readings of neighbours are alike
  const read = (base, step) =>
    (base + ((number * 7 + step * 3) % 9) * 0.00001).toFixed(5);
  const name = `p${number}`;
  const every = number % 4 === 0;
  return [
    "",
    `# running place ${number}`,
    `journal ${name} on layshaft`,
    "  length 1.250",
    '  limits 0.8740 to 0.8745 from "yard drawing L-204"',
    `  read near ${read(0.87425, 0)} ${read(0.87424, 1)} ${read(0.87425, 2)} with mic-1 at 68 F`,
    `  read far ${read(0.87426, 3)} ${read(0.87425, 4)} with mic-1 at 68 F`,
    "",
    `hole ${name} in case`,
    "  limits 1.0000 to 1.0005",
    "  boss 1.750",
    `  read ${read(1.0002, 1)} ${read(1.00018, 2)} with bore-1 at 68 F`,
    "",
    `bush ${name} in hole ${name}`,
    "  material bronze-c932",
    "  construction solid",
    "  od 1.0011 to 1.0012",
    "  id 0.8715 to 0.8720",
    "  length 1.250",
    "",
    `bore ${name} in bush ${name}`,
    ...(every
      ? []
      : [`  read ${read(0.8756, 5)} ${read(0.87561, 6)} with bore-1 at 68 F`]),
    "",
    `press ${name} of bush ${name} in hole ${name}`,
    "  want 0.6 to 1.2 thou",
    "",
    `fit ${name} of journal ${name} in bore ${name}`,
    "  want 0.0008 to 0.0016",
    "  runs 240 rpm",
    "  load 180 lbf steady",
    ...(every
      ? [
          "",
          `line ${name}`,
          `  bore ${name} from 0 to 1.25`,
          "  ream with r-8755",
          "  joint gasket 0.004",
          "  bolts 18 lbf-ft",
          "",
          `step ream-${name}`,
          `  cuts line ${name}`,
          `  checks fit ${name}`,
        ]
      : []),
  ];
}

/** The text of a record of about so many lines, never fewer. */
export function longRecord(lines) {
  const out = [...HEAD];
  for (let number = 1; out.length < lines; number++) out.push(...place(number));
  return `${out.join("\n")}\n`;
}
