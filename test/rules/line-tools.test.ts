// What is said of the tools of a line and of what they leave to cut, beyond what the pages' samples show: both sides of each condition, and every half of a
// sentence. Lengths are worked out by hand, in inches where nothing else is said.
import { describe, expect, test } from "vitest";
import { messages, theOne, toldIn } from "./found.ts";
import { crib, HEAD } from "./reamed-job.ts";

describe("a bush that is not to be reamed", () => {
  const bush = (name: string, facts: string): string => `hole ${name} in case
bush ${name} in hole ${name}
${facts}bore ${name} in bush ${name}
`;
  const job = `${HEAD}${bush("front", "  material sae-841\n")}${bush("mid", "  material ptfe-lined\n")}${bush(
    "rear",
    // what is said of this bush goes before what its material mostly is
    "  material sae-841\n  construction solid\n",
  )}${bush("end", "  material bronze-c932\n")}bore plain in case
line layshaft
  bore plain from 0 to 1
  bore front from 2 to 3
  bore mid from 4 to 5
  bore rear from 6 to 7
  bore end from 8 to 9
  ream with r-8755
line other
  bore front from 6 to 7
  ream with r-8755
`;

  test("is known by its material, and told once, at the line that cuts it first and at its own bore", () => {
    expect(toldIn(job, "bush-not-reamable", crib(""))).toEqual([
      "27:8-13 error bush-not-reamable of line layshaft: bush front is porous, and a reamer smears its pores shut, so that it gives no oil. Press it in over a mandrel that leaves the bore to size, or burnish it.",
      "  see 9:3-19: bush front is porous",
      "  see crib.thou 3:8-14: reamer r-8755",
      "28:8-11 error bush-not-reamable of line layshaft: bush mid is lined, and a reamer cuts its thin lining away. Take a bush that is to size once pressed, or size it on a mandrel.",
      "  see 13:3-22: bush mid is lined",
      "  see crib.thou 3:8-14: reamer r-8755",
    ]);
  });
});

describe("a groove that straight flutes drop into", () => {
  const job = `${HEAD}hole front in case
bush front in hole front
  construction solid
  groove lengthwise
bore front in bush front
  limits 0.8750 to 0.8760
bore rear in case
  limits 0.8750 to 0.8760
line layshaft
  bore rear from 2 to 3
  bore front from 0 to 1
  ream with r-straight
`;
  const reamer = (name: string, facts: string): string =>
    `reamer ${name}\n  size ${facts}\n`;
  const spirals = crib(
    [
      reamer("r-straight", "0.8755\n  flutes 6 straight"),
      reamer("r-large", "0.8900\n  flutes 6 left"),
      reamer("r-right", "0.87551\n  flutes 6 right"),
      reamer("r-none", "0.87550"),
      ...["87552", "87553", "87554", "87545"].map((size) =>
        reamer(`r-${size}`, `0.${size}\n  flutes 6 left`),
      ),
    ].join(""),
  );

  test("is cured by three left-hand spirals that serve, the best first, and by no other", () => {
    expect(toldIn(job, "groove-meets-flutes", spirals)).toEqual([
      "17:8-13 warning groove-meets-flutes of line layshaft: The flutes of reamer r-straight are straight and the groove of bush front runs lengthwise: they drop into it, chatter, and cut out of round. Take a reamer with left-hand spiral flutes, or groove the bush after it is reamed.",
      "  see 10:3-20: the groove of bush front",
      "  see crib.thou 9:3-20: the flutes of reamer r-straight",
      // off the middle of the limits, 0.87550, by 0.00002, 0.00003 and 0.00004; the fourth by 0.00005
      "  fix: Ream with reamer r-87552",
      '    18:13-23 "r-87552"',
      "  fix: Ream with reamer r-87553",
      '    18:13-23 "r-87553"',
      "  fix: Ream with reamer r-87554",
      '    18:13-23 "r-87554"',
    ]);
  });
});

describe("no reamer of the crib that serves", () => {
  const job = (
    facts: string,
    lines: string,
    more = "",
  ): string => `${HEAD}${facts}line layshaft
${lines}${more}`;
  const journal = (name: string, size: string): string =>
    `journal ${name} on shaft
  ${size}
bore ${name} in case
fit ${name} of journal ${name} in bore ${name}
  want 0.0008 to 0.0016
`;
  const none = {
    "crib.thou": "shop harbour\n  units inch\nreamer r-8800\n  size 0.8800\n",
  };
  const CODE = "reamer-not-in-crib";

  test("names a size that is sold within the window, and one to grind in its middle", () => {
    // 0.8740 + 0.0008 to 0.8740 + 0.0016, 7/8 in within it, and 0.8752 halfway
    expect(
      messages(
        job(journal("front", "read 0.8740"), "  bore front from 0 to 1\n"),
        CODE,
        none,
      ),
    ).toEqual([
      "No reamer of the crib cuts bores of 0.8748 to 0.8756 in: buy 7/8 in, or have one ground to 0.87520 in. A test cut in a scrap bush tells what a reamer really cuts.",
    ]);
  });

  test("shows the window as finely as the finest journal was read, whatever comes of bores without one", () => {
    const [message] = messages(
      job(
        `${journal("front", "read 0.8740")}${journal("rear", "read 0.87401")}bore end in case\n  limits 0.8740 to 0.8760\n`,
        "  bore front from 0 to 1\n  bore rear from 2 to 3\n  bore end from 4 to 5\n",
      ),
      CODE,
      none,
    );
    expect(message).toContain("cuts bores of 0.87481 to 0.87560 in: ");
  });

  test("is a matter of reading first where journals are known by their limits", () => {
    // 0.8745 + 0.0008 to 0.8740 + 0.0016, with nothing that is sold within it
    expect(
      messages(
        job(
          `${journal("front", "limits 0.8740 to 0.8745")}${journal("rear", "limits 0.8740 to 0.8745")}`,
          "  bore front from 0 to 1\n  bore rear from 2 to 3\n",
        ),
        CODE,
        none,
      ),
    ).toEqual([
      "No reamer of the crib cuts bores of 0.8753 to 0.8756 in. Read journal front and journal rear first, then have one ground to 0.87545 in. A test cut in a scrap bush tells what a reamer really cuts.",
    ]);
  });

  test("is not said of a line that is bored or honed, nor while a reamer's size can't be read", () => {
    const text = journal("front", "read 0.8740");
    const bore = "  bore front from 0 to 1\n";
    expect(
      messages(job(text, bore, "  cut to 0.8750 to 0.8752\n"), CODE, none),
    ).toEqual([]);
    expect(
      messages(job(text, bore), CODE, {
        "crib.thou":
          "shop harbour\n  units inch\nreamer r-8755\n  size 0.87x0\n",
      }),
    ).toEqual([]);
    // of one that says nothing of its size there is nothing to wait for
    expect(
      messages(job(text, bore), CODE, {
        "crib.thou":
          "shop harbour\n  units inch\nreamer r-8755\n  drive hand\n",
      }),
    ).toHaveLength(1);
  });

  test("leaves an adjustable one to be set, and says to what", () => {
    expect(
      toldIn(
        job(
          journal("front", "read 0.8740"),
          "  bore front from 0 to 1\n",
          "  ream with r-8800\n",
        ),
        "reamer-wrong-size",
        {
          "crib.thou": `${none["crib.thou"]}reamer r-adj\n  expands 0.8600 to 0.8900\n`,
        },
      ),
    ).toEqual([
      "14:13-19 error reamer-wrong-size of line layshaft: reamer r-8800 cuts about 0.8800 in, which leaves 0.0060 in at journal front: 0.0044 in too large for bores of 0.8748 to 0.8756 in. Take reamer r-adj, set to 0.8752 in.",
      "  see 10:5-10: fit front wants 0.0008 to 0.0016 in",
      "  fix: Ream with reamer r-adj",
      '    14:13-19 "r-adj"',
    ]);
  });

  test("is wrong by limits alone until the journals are read", () => {
    const at = (size: string, limits: string): readonly string[] =>
      toldIn(
        job(
          `${journal("front", limits)}${journal("rear", limits)}`,
          "  bore front from 0 to 1\n  bore rear from 2 to 3\n",
          "  ream with r-own\n",
        ),
        "reamer-wrong-size",
        {
          "crib.thou": `shop harbour\n  units inch\nreamer r-own\n  size ${size}\n  oversize +0.0000 to +0.0000\n`,
        },
      );
    // a journal of 0.8740 to 0.8745 may come to want a bore of 0.8748 to 0.8761
    expect(at("0.8748", "limits 0.8740 to 0.8745")[0]).toBe(
      "20:13-18 information reamer-wrong-size of line layshaft: reamer r-own cuts about 0.8748 in, which leaves 0.0003 to 0.0008 in at journal front: 0.0005 in too small for bores of 0.8753 to 0.8756 in. No reamer of the crib serves. That is by limits alone, until journal front and journal rear are read.",
    );
    expect(at("0.8747", "limits 0.8740 to 0.8745")[0]).toMatch(
      / error .* No reamer of the crib serves\.$/u,
    );
    expect(at("0.8761", "limits 0.8740 to 0.8745")[0]).toMatch(
      / information .*too large.* are read\.$/u,
    );
    expect(at("0.8762", "limits 0.8740 to 0.8745")[0]).toMatch(
      / error .*too large/u,
    );
  });
});

describe("a pilot", () => {
  const job = (front: string, head = ""): string =>
    `${HEAD.replace("part shaft", `${head}part shaft`)}bore front in case
  ${front}
bore rear in case
  read 0.8700 as roughed
line layshaft
  bore rear from 2.0 to 3.0
  bore front from 0 to 1.5
  ream with r-8755
  pilot p-own in bore front for bore rear
`;
  const pilot = (facts: string, more = ""): Readonly<Record<string, string>> =>
    crib(`pilot p-own\n  ${facts}\n${more}`);
  const CODE = "pilot-tight";

  test("of which only the limits are known may not go in, which is not called sure", () => {
    const rough = "read 0.8700 as roughed";
    expect(toldIn(job(rough), CODE, pilot("od 0.8699 to 0.8705"))).toEqual([
      "15:9-14 warning pilot-tight of line layshaft: pilot p-own may not go into bore front, still uncut: the pilot is 0.8699 to 0.8705 in and the bore 0.8700 in, up to 0.0005 in too small. Take a smaller pilot or turn this one down, or measure the bore first.",
      "  see crib.thou 7:7-12: pilot p-own: 0.8699 to 0.8705 in",
      "  see 7:6-11: bore front, still uncut: 0.8700 in",
    ]);
    const level = (facts: string, bore = rough): string =>
      theOne(job(bore), CODE, pilot(facts)).level;
    // its smallest is still larger than the bore
    expect(level("od 0.8701 to 0.8705")).toBe("error");
    // both are read, and the bore is oval
    expect(level("read 0.8705", "read 0.8700 0.8706 as roughed")).toBe("error");
    expect(toldIn(job(rough), CODE, pilot("od 0.8695 to 0.8700"))).toEqual([]);
  });

  test("that does not go in is followed by those of the crib that do, and not by itself", () => {
    const titles = theOne(
      job("read 0.8700 as roughed"),
      CODE,
      pilot(
        "read 0.8705",
        "pilot p-less\n  read 0.8699\npilot p-more\n  read 0.8703\n",
      ),
    ).fixes.map(({ title }) => title);
    expect(titles).toEqual(["Take pilot p-less"]);
  });

  test("is held against the job's own length, and a cure is one that keeps to it", () => {
    // slack 0.0010: 0.0010 / 2 + 0.0010 / 1.5 · 1.5, of the length from the end of its bore to the far end of the cut
    const at = (length: string): readonly string[] =>
      toldIn(
        job(
          "read 0.8710 as roughed",
          `  warn pilot-slack at ${length}\n`,
        ).replace("use", "use"),
        "pilot-slack",
        pilot(
          "read 0.8700",
          "pilot p-near\n  read 0.8707\npilot p-loose\n  read 0.8706\n",
        ),
      );
    expect(at("0.0015")).toEqual([]);
    expect(at("0.0005")).toEqual([
      "16:9-14 warning pilot-slack of line layshaft: pilot p-own has 0.0010 in of slack in bore front, still uncut, so bore rear may be cut up to 0.0015 in off its axis, over the job's 0.0005 in. Take a closer pilot, or one that is guided nearer to the cut.",
      "  see crib.thou 7:7-12: pilot p-own: 0.8700 in",
      "  see 8:6-11: bore front, still uncut: 0.8710 in",
      // 1.5 · 0.0003 = 0.00045; of the other 1.5 · 0.0004 = 0.0006
      "  fix: Take pilot p-near",
      '    16:9-14 "p-near"',
    ]);
  });

  test("that would run in the bore that it guides the cut of is offered three others of the line", () => {
    const bores = ["e", "d", "c", "b", "a"];
    const text = `${HEAD}${bores.map((name) => `bore ${name} in case\n`).join("")}line layshaft
${bores.map((name, at) => `  bore ${name} from ${String(2 * at)} to ${String(2 * at + 1)}\n`).join("")}  ream with r-8755
  pilot p-own in bore c for bore c
  pilot p-own in bore a for bore b
`;
    expect(toldIn(text, "pilot-in-cut-bore", pilot("read 0.8700"))).toEqual([
      "19:18-24 error pilot-in-cut-bore of line layshaft: pilot p-own would run in bore c and guide the cut of that same bore. Let it run in another bore of the line, one that stays as it is meanwhile.",
      "  see crib.thou 7:7-12: pilot p-own",
      "  see 9:6-7: the bore being cut",
      "  fix: Run it in bore e",
      '    19:23-24 "e"',
      "  fix: Run it in bore d",
      '    19:23-24 "d"',
      "  fix: Run it in bore b",
      '    19:23-24 "b"',
    ]);
  });
});

describe("stock", () => {
  const job = (read: string, line = ""): string => `${HEAD}bore front in case
  read ${read} as roughed
line layshaft
  bore front from 0 to 1${line}
  ream with r-8755
`;

  test("that is none, for a bore as large as the reamer or larger, is said in those words", () => {
    for (const size of ["0.8755", "0.8760"])
      expect(messages(job(size), "stock-thin", crib(""))).toEqual([
        `bore front is ${size} in before the cut, and at its largest the reamer takes nothing off it. Start from a smaller bore, or take a larger reamer where the window allows one.`,
      ]);
    expect(messages(job("0.8754"), "stock-thin", crib(""))).toEqual([
      "bore front is 0.8754 in before the cut and leaves 0.0001 in of stock: under 0.0020 in a hand reamer rubs rather than cuts. Start from a smaller bore, or take a larger reamer where the window allows one.",
    ]);
  });

  test("that reaches round is no matter where the bore is round and on its axis; off it, a machine's least is twice a hand's", () => {
    const clean = (
      read: string,
      centre: string,
      more = "",
    ): readonly string[] =>
      messages(
        `${job(read, ` centre ${centre}`)}${more}`,
        "wont-clean-up",
        crib(""),
      );
    expect(clean("0.8754", "0, 0")).toEqual([]);
    // 0.0020 of 0.8755 − 0.8740
    expect(clean("0.8730 0.8740", "0, 0")).toEqual([
      "bore front won't clean up: it is out of round by 0.0010 in. With 0.0020 in as the least to cut it needs 0.0020 in of stock over its largest place, and has 0.0015 in. Bore it true first, or start from a bore that is smaller by 0.0005 in.",
    ]);
    // 2 · 0.0010 + 0.0040 of 0.0020
    expect(
      messages(job("0.8735", " centre 0.0010, 0"), "wont-clean-up", {
        "crib.thou": (crib("")["crib.thou"] ?? "").replace(
          "drive hand",
          "drive machine",
        ),
      }),
    ).toEqual([
      "bore front won't clean up: it is off centre by 0.0010 in. With 0.0040 in as the least to cut it needs 0.0060 in of stock over its largest place, and has 0.0020 in. Bore it true first, or start from a bore that is smaller by 0.0040 in.",
    ]);
  });

  test("by hand follows the old bore where no pilot guides that bore's cut", () => {
    const text = (pilot: string): string => `${HEAD}bore front in case
  read 0.8720 as roughed
bore rear in case
  read 0.8720 as roughed
line layshaft
  bore front from 0 to 1
  bore rear from 2 to 3 centre 0.0010, 0
  ream with r-8755
${pilot}`;
    const told = (pilot: string): string =>
      theOne(text(pilot), "wont-clean-up", crib("pilot p-own\n  read 0.8718\n"))
        .message;
    // 2 · 0.0010 + 0.0020 of 0.0035
    const end =
      " A hand reamer without a pilot follows the old bore besides, whatever the stock.";
    const cure = "start from a bore that is smaller by 0.0005 in.";
    expect(told("").endsWith(cure + end)).toBe(true);
    expect(
      told("  pilot p-own in bore front for bore rear\n").endsWith(cure),
    ).toBe(true);
    expect(
      told("  pilot p-own in bore rear for bore front\n").endsWith(cure + end),
    ).toBe(true);
  });
});
