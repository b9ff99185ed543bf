// What is said of blind holes, of fillets at their mouths and of the ledge at their bottoms, beyond what the pages' samples show. Lengths are
// worked out by hand, in inches.
import { describe, expect, test } from "vitest";
import { foundIn, messages, toldIn } from "./found.ts";
import { crib, HEAD } from "./reamed-job.ts";

describe("a blind hole", () => {
  const hole = (name: string, facts = ""): string =>
    `hole ${name} in case\n  depth 1.5 blind\n${facts}`;
  const shaft = (name: string, want: string): string =>
    `journal ${name} on shaft\nfit ${name} of journal ${name} in bore ${name}\n  want ${want}\n`;
  const driven = (text: string): readonly string[] =>
    foundIn(
      `job winch\n  units inch\npart shaft\npart case\n${text}`,
      "vent-missing",
    ).map(
      ({ message, related }) =>
        `${message.slice(0, message.indexOf(":"))}; ${related.map((each) => each.message).join(", ")}`,
    );
  const bush = (name: string, facts = ""): string =>
    `bush ${name} in hole ${name}\n${facts}`;
  const held = '  held by "peg"\n';

  test("wants a vent for a bush that is pressed in, and none for one that is held otherwise and slips in", () => {
    const pressed = [
      "hole a is blind and not vented, and bush a is pressed into it; bush a",
    ];
    expect(driven(hole("a") + bush("a"))).toEqual(pressed);
    expect(driven(hole("a") + bush("a", held))).toEqual([]);
    expect(
      driven(`${hole("a")}${bush("a", held)}press a of bush a in hole a\n`),
    ).toEqual(pressed);
    expect(driven(hole("a", "  vented\n") + bush("a"))).toEqual([]);
    expect(
      driven(hole("a").replace("1.5 blind", "through") + bush("a")),
    ).toEqual([]);
    expect(driven(hole("a"))).toEqual([]);
  });

  test("wants a vent for a journal that is driven into its bore or its bush's, and none for one that has clearance", () => {
    const tight = "-0.0006 to -0.0002";
    const own = `${hole("b")}bore b in case\n`;
    expect(driven(own + shaft("b", tight))).toEqual([
      "hole b is blind and not vented, and journal b is driven into it; journal b",
    ]);
    expect(driven(own + shaft("b", "0.0000 to 0.0004"))).toEqual([]);
    expect(
      driven(`${own}journal b on shaft\nfit b of journal b in bore b\n`),
    ).toEqual([]);
    expect(
      driven(
        `${hole("b")}${bush("b", held)}bore b in bush b\n${shaft("b", tight)}`,
      ),
    ).toEqual([
      "hole b is blind and not vented, and journal b is driven into it; journal b",
    ]);
    expect(
      driven(`${hole("b")}${bush("b")}bore b in bush b\n${shaft("b", tight)}`),
    ).toEqual([
      "hole b is blind and not vented, and bush b is pressed into it; bush b, journal b",
    ]);
    // of the same name, and in another part
    expect(
      driven(`part cover\n${hole("b")}bore b in cover\n${shaft("b", tight)}`),
    ).toEqual([]);
  });
});

describe("a fillet", () => {
  const job = (
    length: string,
    reaches: string,
    fillet: string,
    head = "",
  ): string => `job winch
  units inch
${head}part shaft
part case
journal front on shaft
${length}  reaches ${reaches}
  fillet ${fillet}
bore front in case
fit front of journal front in bore front
`;
  const CODE = "fillet-fouls";

  test("stands on the mouth's edge where the journal goes in as deep as it is long, and nothing is said of one that goes deeper", () => {
    const long = "  length 1.25\n";
    expect(toldIn(job(long, "1.25", "0.030"), CODE)).toEqual([
      "8:3-15 error fillet-fouls of journal front: The fillet of 0.0300 in is larger than the 0.0000 in that journal front stays out of bore front: it runs 0.0300 in onto the mouth's edge. Chamfer the mouth by at least 0.0300 in, or keep the shoulder further off. Whether the mouth is chamfered already is not known here.",
      "  see 9:6-11: the mouth of bore front",
      "  see 7:3-15: how deep it goes in",
    ]);
    expect(toldIn(job(long, "1.26", "0.030"), CODE)).toEqual([]);
    expect(toldIn(job("", "1.20", "0.060"), CODE)).toEqual([]);
  });

  test("is let off by the chamfer that the job has at its mouths", () => {
    // 0.060 − (1.25 − 1.20) − 0.005
    expect(
      messages(
        job(
          "  length 1.25\n",
          "1.20",
          "0.060",
          "  warn fillet-fouls at 0.005\n",
        ),
        CODE,
      ),
    ).toEqual([
      "The fillet of 0.0600 in is larger than the 0.0500 in that journal front stays out of bore front and the chamfer of 0.0050 in at its mouth: it runs 0.0050 in onto the mouth's edge. Chamfer the mouth by at least 0.0100 in, or keep the shoulder further off.",
    ]);
  });
});

test("a ledge that no reamer reaches past has no bottoming reamer among its ways out", () => {
  // cut to 1.350 − 0.060 − 0.020 − 0.010 = 1.260; with no lead at all to 1.340, and the journal reaches 1.345
  expect(
    toldIn(
      `${HEAD}journal front on shaft
  reaches 1.345
  limits 0.8740 to 0.8745
hole front in case
  depth 1.350 blind
bore front in case
  read 0.8716 as roughed
fit front of journal front in bore front
line layshaft
  bore front from 0 to 1.35
  ream with r-8755
`,
      "ledge-fouls",
      crib("  chamfer 0.060\n  point 0.020\n"),
    ),
  ).toEqual([
    "16:8-13 error ledge-fouls of line layshaft: journal front reaches 1.3450 in into bore front, 0.0850 in past where the reamer cuts to size, and fouls the ledge that is left there. Ways out: (1) relieve the ledge to 0.8755 in over its last 0.0900 in; (2) shorten the journal by 0.0850 in; (3) deepen the hole by 0.0850 in.",
    "  see 8:3-16: reaches 1.3450 in",
    "  see 11:3-20: the depth of hole front",
    "  see crib.thou 3:8-14: chamfer and point of reamer r-8755",
  ]);
});
