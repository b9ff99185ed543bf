// A value that lies on its bound passes, and one that lies a little past it is told: the verdict is given after rounding to 0.1 nm, so that
// what a sentence shows and what is decided are one. Each bound is what the job itself writes, or the shop's practice as the page has it.
import { expect, test } from "vitest";
import { endFloat } from "./end-float.ts";
import { foundIn } from "./found.ts";

const HEAD = `job winch
  units inch
`;
const fit = (journal: string, bore: string, want: string): string => `${HEAD}
part shaft
part case
journal front on shaft
  read ${journal}
bore front in case
  read ${bore}
fit front of journal front in bore front
  want ${want}
`;
const journal = (facts: string): string => `${HEAD}
part shaft
journal front on shaft
  ${facts}
`;
const lobedFit = (swing: string): string =>
  fit(
    `0.8740\n  swing ${swing} on vee 60 deg, 3 lobes`,
    "0.8748",
    "0.0004 to 0.0012",
  );
const press = (od: string, want = "  want 0.0006 to 0.0012\n"): string =>
  `${HEAD}
part case
  material iron-grey
hole front in case
  boss 1.75
  read 1.0000
bush front in hole front
  material bronze-c932
  id 0.8715
  read od ${od}
press front of bush front in hole front
${want}`;
const running = (facts: string, load: string, rpm = "100"): string => `${HEAD}
material own
  ${facts}
part shaft
part case
  material own
journal front on shaft
  read 1.0000
  length 1
bore front in case
  read 1.0020
fit front of journal front in bore front
  runs ${rpm} rpm
  load ${load}
`;
const stock = (before: string, more = ""): string => `${HEAD}
  use "crib.thou"
${more}part case
  material iron-grey
bore front in case
  read ${before} as roughed
line layshaft
  bore front from 0 to 1
  ream with r-8755
`;
const REAMER = `shop harbour
  units inch
reamer r-8755
  size 0.8755
  drive hand
`;
const gauged = (gauge: string): string => `${HEAD}
gauge mic-1
  kind micrometer
  ${gauge}
part shaft
journal front on shaft
  limits 0.8740 to 0.8750
  read 0.87431 with mic-1
`;
const worn = (kind: string, value: string): string =>
  kind === "journal"
    ? journal(`service-limit 0.8735\n  read ${value}`)
    : `${HEAD}part case
bore front in case
  service-limit 0.8765
  read ${value}
`;
const blind = (reach: string, fillet: string): string => `${HEAD}
part shaft
part case
journal front on shaft
  length 1.25
  reaches ${reach}
  fillet ${fillet}
bore front in case
  length 1.25
fit front of journal front in bore front
  want 0.001 to 0.002
`;
const hot = (clearance: string): string => `${HEAD}
part shaft
  material steel-4140
part case
  material steel-4140
journal front on shaft
  read 0.8740
bore front in case
  read ${clearance}
fit front of journal front in bore front
  want 0.0005 to 0.0020
  want-hot 0.0005 to 0.0010
  hot shaft 68 F, bush 68 F, case 68 F
`;

const offNominal = (at: string, read: string): string =>
  journal(`nominal 0.8750\n  read ${read}`).replace(
    "inch\n",
    `inch\n  warn reading-off-nominal at ${at}\n`,
  );

const BOUNDS: readonly (readonly [
  code: string,
  what: string,
  on: string,
  past: string,
  others?: Readonly<Record<string, string>>,
])[] = [
  [
    "fit-tight",
    "the least clearance",
    fit("0.8740", "0.8748", "0.0008 to 0.0016"),
    fit("0.874001", "0.874800", "0.0008 to 0.0016"),
  ],
  [
    "fit-loose",
    "the most clearance",
    fit("0.8740", "0.8756", "0.0008 to 0.0016"),
    fit("0.873999", "0.875600", "0.0008 to 0.0016"),
  ],
  [
    "fit-interferes",
    "a clearance of the least that is any",
    fit("0.874000", "0.874001", "0.000001 to 0.0016"),
    fit("0.874000", "0.874000", "0.000001 to 0.0016"),
  ],
  [
    "reading-off-limits",
    "the upper limit",
    journal("limits 0.8740 to 0.8745\n  read 0.874500"),
    journal("limits 0.8740 to 0.8745\n  read 0.874501"),
  ],
  [
    "reading-off-limits",
    "the lower limit",
    journal("limits 0.8740 to 0.8745\n  read 0.874000"),
    journal("limits 0.8740 to 0.8745\n  read 0.873999"),
  ],
  [
    "worn",
    "a journal's service limit",
    worn("journal", "0.873500"),
    worn("journal", "0.873499"),
  ],
  [
    "worn",
    "a bore's service limit",
    worn("bore", "0.876500"),
    worn("bore", "0.876501"),
  ],
  [
    "out-of-round",
    "what the entry allows",
    journal("round 0.0001\n  read 0.87420 0.87430"),
    journal("round 0.0001\n  read 0.87420 0.874301"),
  ],
  [
    "out-of-round",
    "a quarter of the tolerance",
    journal("limits 0.8740 to 0.8748\n  read 0.87420 0.87440"),
    journal("limits 0.8740 to 0.8748\n  read 0.87420 0.874401"),
  ],
  [
    "out-of-round",
    "the length that the job sets",
    journal("read 0.87420 0.87430").replace(
      "inch\n",
      "inch\n  warn out-of-round at 0.0001\n",
    ),
    journal("read 0.87420 0.874301").replace(
      "inch\n",
      "inch\n  warn out-of-round at 0.0001\n",
    ),
  ],
  [
    "lobed",
    "a quarter of the tolerance",
    journal(
      "limits 0.8740 to 0.8748\n  read 0.8742\n  swing 0.0006 on vee 60 deg, 3 lobes",
    ),
    journal(
      "limits 0.8740 to 0.8748\n  read 0.8742\n  swing 0.000601 on vee 60 deg, 3 lobes",
    ),
  ],
  [
    "lobed",
    "the length that the job sets",
    journal("read 0.8742\n  swing 0.0003 on vee 60 deg, 3 lobes").replace(
      "inch\n",
      "inch\n  warn lobed at 0.0001\n",
    ),
    journal("read 0.8742\n  swing 0.000301 on vee 60 deg, 3 lobes").replace(
      "inch\n",
      "inch\n  warn lobed at 0.0001\n",
    ),
  ],
  [
    "lobed",
    "a quarter of the clearance that there would be were it round",
    lobedFit("0.0006"),
    lobedFit("0.000601"),
  ],
  [
    "taper",
    "what the entry allows",
    journal("taper 0.0001\n  read near 0.87420\n  read far 0.87430"),
    journal("taper 0.0001\n  read near 0.87420\n  read far 0.874301"),
  ],
  [
    "press-light",
    "the least that is wanted",
    press("1.000600"),
    press("1.000599"),
  ],
  [
    "press-heavy",
    "the most that is wanted",
    press("1.001200"),
    press("1.001201"),
  ],
  [
    "press-light",
    "the least that the job takes",
    press("1.000800", "").replace(
      "inch\n",
      "inch\n  warn press-light at 0.0008\n",
    ),
    press("1.000799", "").replace(
      "inch\n",
      "inch\n  warn press-light at 0.0008\n",
    ),
  ],
  [
    "load-over",
    "what the material bears",
    running("specific-load 180 psi", "180 lbf"),
    running("specific-load 179.9 psi", "180 lbf"),
  ],
  [
    "stock-thin",
    "0.002 in by hand",
    stock("0.873500"),
    stock("0.873501"),
    { "crib.thou": REAMER },
  ],
  [
    "stock-heavy",
    "0.010 in by hand",
    stock("0.865500"),
    stock("0.865499"),
    { "crib.thou": REAMER },
  ],
  [
    "stock-thin",
    "the job's own",
    stock("0.872500", "  warn stock-thin at 0.003\n"),
    stock("0.872501", "  warn stock-thin at 0.003\n"),
    { "crib.thou": REAMER },
  ],
  [
    "gauge-coarse",
    "a tenth of the tolerance",
    gauged("resolution 0.0001"),
    gauged("resolution 0.00011"),
  ],
  [
    "gauge-coarse",
    "a quarter of the tolerance to 2U",
    gauged("uncertainty 0.000125"),
    gauged("uncertainty 0.000126"),
  ],
  [
    "fillet-fouls",
    "what the journal stays out",
    blind("1.200", "0.050"),
    blind("1.201", "0.050"),
  ],
  ["float-off", "the most end float", endFloat("10.2000"), endFloat("10.2001")],
  [
    "float-off",
    "the least end float",
    endFloat("10.1000"),
    endFloat("10.0999"),
  ],
  ["hot-loose", "the most when hot", hot("0.875000"), hot("0.875001")],
  ["hot-tight", "the least when hot", hot("0.874500"), hot("0.874499")],
  [
    "reading-off-nominal",
    "the job's share over it",
    offNominal("1 %", "0.883750"),
    offNominal("1 %", "0.883751"),
  ],
  [
    "reading-off-nominal",
    "the job's share under it",
    offNominal("1 %", "0.866250"),
    offNominal("1 %", "0.866249"),
  ],
  [
    "reading-off-nominal",
    "the job's length",
    offNominal("0.004", "0.871000"),
    offNominal("0.004", "0.870999"),
  ],
];

for (const [code, what, on, past, others = {}] of BOUNDS)
  test(`${code}: ${what} passes, and a little past it is told`, () => {
    expect(foundIn(on, code, others).map(({ message }) => message)).toEqual([]);
    expect(foundIn(past, code, others)).not.toEqual([]);
  });
