// What is said of oil films and of methods that do not hold, beyond what the pages' samples show. The films themselves are the core's to check:
// here are the bounds that they are held against, which are Trumpler's as the page has them, in inches.
import { describe, expect, test } from "vitest";
import { messages, theOne, toldIn } from "./found.ts";

describe("an oil film", () => {
  const CODE = "film-thin";
  const job = (
    fit: string,
    { head = "", finish = "", gap = "1.0010", parts = ["", ""] } = {},
  ): string => `job winch-3
  units inch
${head}part layshaft
${parts[0] ?? ""}part case
${parts[1] ?? ""}journal front on layshaft
  length 1.000
  limits 1.0000 to 1.0000
${finish}bore front in case
  limits ${gap} to ${gap}
${finish}fit front of journal front in bore front
${fit}`;
  const runs = (
    rpm: number,
    lbf: number,
    oil = "iso-vg-68 at 100 F",
    more = "  feed splash\n",
  ): string =>
    `  runs ${String(rpm)} rpm\n  load ${String(lbf)} lbf steady\n  oil ${oil}\n${more}`;

  test("that carries running may start on 300 psi and on no more", () => {
    // the load on 1 in by 1 in
    expect(toldIn(job(runs(1800, 300)), CODE)).toEqual([]);
    expect(toldIn(job(runs(1800, 301)), CODE)).toEqual([
      "10:5-10 warning film-thin of fit front: The film carries it running, but each start is on 301 psi before there is one, and 300 psi is the most to start on. Take a longer bearing, start it unloaded, or write `warn film-thin at` with the least film of this job where such starts are meant.",
      "  see 5:9-14: journal front: 1.0000 in, predicted",
      "  see 8:6-11: bore front: 1.0010 in, predicted",
    ]);
    // whoever says what film the job wants means the rest
    expect(
      toldIn(
        job(runs(1800, 301), { head: "  warn film-thin at 0.0001\n" }),
        CODE,
      ),
    ).toEqual([]);
  });

  test("may leave at 250 °F, as warm again over its mean as that is over what enters, or as warm as the case keeps it", () => {
    const hot = runs(
      6000,
      200,
      "iso-vg-320 at 230 F",
      "  feed pressure 20 psi\n",
    );
    expect(messages(job(hot), CODE)).toEqual([
      expect.stringMatching(
        /^The oil leaves the film at up to 3\d\d °F, and 250 °F is the most that it bears for long\. Let it enter cooler, or take more clearance, a thinner oil or less load\.$/u,
      ),
    ]);
    const project = (text: string): readonly string[] =>
      messages(job(text), CODE);
    const cooled = (air: number): readonly string[] =>
      project(
        runs(
          60,
          10,
          "iso-vg-460 at 100 F",
          `  feed splash\n  cooled case 4000 sq-in, air ${String(air)} F\n`,
        ),
      ).filter((message) => message.startsWith("The oil leaves"));
    // so large a case keeps the oil at the air's own warmth, within a degree
    expect(cooled(248)).toEqual([]);
    expect(cooled(251)).toHaveLength(1);
  });

  test("of a `hot` line that leaves less is told which", () => {
    const warm = (more: string): string =>
      job(runs(240, 180, "sae-30 at 120 F", `  feed splash\n${more}`), {
        gap: "1.0012",
        parts: ["  material steel-4140\n", "  material aluminium-356-t6\n"],
      });
    const [at20] = messages(warm(""), CODE);
    const [hot] = messages(warm("  hot shaft 200 F, case 200 F\n"), CODE);
    expect(at20).toMatch(
      /^The least oil film is 0\.000\d+ to 0\.000\d+ in, and 0\.00024 in is the least to have at this size\. Take a thicker/u,
    );
    expect(hot).toMatch(
      /^The least oil film is 0\.000\d+ to 0\.000\d+ in, the least at hot 1, and 0\.00024 in is the least to have at this size\. /u,
    );
  });

  test("is held against the job's own thickness, which passes at the film itself", () => {
    const thin = runs(600, 300, "iso-vg-32 at 150 F");
    const { message } = theOne(
      job(thin, { head: "  warn film-thin at 1 in\n" }),
      CODE,
    );
    expect(message).toMatch(
      /and 1\.0\d* in is the least to have at this size in this job\. Take a thicker/u,
    );
    const [, least = ""] = /oil film is (0\.\d+)/u.exec(message) ?? [];
    // shown to a hundredth of a thou
    const at = (by: number): readonly string[] =>
      messages(
        job(thin, {
          head: `  warn film-thin at ${(Number(least) + by).toFixed(7)} in\n`,
        }),
        CODE,
      );
    expect(at(-1e-5)).toEqual([]);
    expect(at(1e-5)).toHaveLength(1);
    // what reads alike is told as the little less that it is
    const alike = [-4e-6, -2e-6, 0, 2e-6, 4e-6].flatMap(at);
    expect(alike.length).toBeGreaterThan(0);
    for (const said of alike)
      expect(said).toContain(
        `oil film is ${least} to 0.00011 in, a hair under ${least} in, which is the least to have`,
      );
  });

  test("is held against its roughness: five times for a full film, or the job's own", () => {
    const rough = (finish: number, head = ""): readonly string[] =>
      messages(
        job(runs(1800, 200), {
          head,
          finish: `  finish ${String(finish)} uin Ra\n`,
        }),
        CODE,
      );
    expect(rough(8)).toEqual([]);
    expect(rough(63)).toEqual([
      expect.stringMatching(
        /^The oil film is 3\.\d+ to 3\.\d+ times the roughness of its surfaces, and 5\.00 is the least for a full film: lubrication is mixed at the least\. Take smoother surfaces or a thicker oil\.$/u,
      ),
    ]);
    expect(rough(63, "  warn film-thin at 300 %\n")).toEqual([]);
    expect(rough(63, "  warn film-thin at 400 %\n")[0]).toContain(
      "and 4.00 is the least for a full film",
    );
    // a thickness of the job's own is all that is asked
    expect(rough(63, "  warn film-thin at 0.0001 in\n")).toEqual([]);
  });

  test("that no load and oil can make is told with why, and nothing is while the journal stands", () => {
    expect(toldIn(job(runs(60, 180_000)), CODE)).toEqual([
      "10:5-10 warning film-thin of fit front: No oil film carries this fit: no film carries even with the oil at its coolest: load too high, or speed or viscosity too low. Take less load, a longer bearing, less clearance or a thicker oil, or a material that bears it by its PV alone.",
    ]);
    expect(
      toldIn(job(runs(60, 180_000).replace("  runs 60 rpm\n", "")), CODE),
    ).toEqual([]);
  });
});

describe("a method that does not hold", () => {
  const CODE = "not-valid-here";
  const MM = "job winch\n  units mm\n";

  test("is told of each result that it leaves out, once for one reason, by what people call them", () => {
    expect(
      toldIn(
        `${MM}part case
  material iron-grey
  split along
hole front in case
  boss 40
  read 25.000
bush front in hole front
  material bronze-c932
  id 20
  length 20
  read od 25.020
bore front in bush front
part shaft
journal front on shaft
  read 19.95
press front of bush front in hole front
fit front of journal front in bore front
  want 0.01 to 0.1
`,
        CODE,
      ),
    ).toEqual([
      // the closure and the bore after it rest on the press, and the clearance on those: not said again at the fit
      "18:7-12 information not-valid-here of press front: No contact pressure, bush stress, hole stress, bore closure, bore after press or press force is given, since the method does not hold here: the boss is split along its axis and is no closed ring.",
    ]);
    expect(
      messages(
        `job winch
  units inch
part shaft
part case
journal front on shaft
  length 1.000
  limits 1.0000 to 1.0000
  finish 8 uin Ra
bore front in case
  limits 1.0010 to 1.0010
  finish 8 uin Ra
fit front of journal front in bore front
  runs 60 rpm
  load 180000 lbf steady
  oil iso-vg-46 at 140 F
  feed splash
`,
        CODE,
      )[0],
    ).toMatch(
      /^No film, film ratio, relative eccentricity, Sommerfeld number, friction power or oil rise is given, since/u,
    );
  });

  test("is told where it happens and not at what rests on it, near or through others", () => {
    const job = (step: string): string => `${MM}material a
  expansion 10 um/m-K
part shaft
  material a
part case
  material a
journal front on shaft
  read 20.000 at 400 C
bore front in case
  read 20.040
fit front of journal front in bore front
  want 0.01 to 0.02
${step}`;
    expect(toldIn(job(""), CODE)).toEqual([
      "9:9-14 information not-valid-here of journal front: No size is given, since the method does not hold here: the temperature is not between −50 and 200 °C.",
    ]);
  });

  test("of another reason is told at its own place, two results with one reason in one sentence", () => {
    expect(
      messages(
        `${MM}material a
  expansion 10 um/m-K
part shaft
  material a
part case
  material a
journal front on shaft
  read 20.000
bore front in case
  read 20.040
fit front of journal front in bore front
  hot shaft 500 C, case 20 C
  cold shaft -200 C, case 20 C
`,
        CODE,
      ),
    ).toEqual([
      "No hot clearance or cold clearance is given, since the method does not hold here: a temperature or an expansion is out of all range.",
    ]);
  });

  test("is no word of a film that grease or a shock leaves none of", () => {
    const fit = (facts: string): readonly string[] =>
      messages(
        `${MM}part shaft
part case
journal front on shaft
  length 20
  read 20.000
bore front in case
  read 20.040
fit front of journal front in bore front
  runs 100 rpm
  oil iso-vg-46 at 60 C
${facts}`,
        CODE,
      );
    expect(fit("  load 100 N steady\n  feed grease\n")).toEqual([]);
    expect(fit("  load 100 N shock\n  feed splash\n")).toEqual([]);
  });
});
