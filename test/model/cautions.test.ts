// Which cautions a step brings without being asked: by what it cuts and with what, by what it presses into what, and by its words. Too often
// is safer than never, so where nobody says, both ways count. That is common practice, no source.
import { describe, expect, test } from "vitest";
import {
  CAUTIONS,
  cautionNamed,
  cautionsOfCut,
  cautionsOfPress,
  cautionsOfStep,
} from "../../server/model/cautions.ts";
import { opened } from "../ide/opened.ts";

const of = (text: string, step: string): readonly string[] =>
  cautionsOfStep(opened(text).shop, `step ${step}`);

test("each caution has its name, once, and no other is known", () => {
  for (const caution of CAUTIONS)
    expect(cautionNamed(caution.name)).toBe(caution);
  expect(cautionNamed("none-such")).toBeUndefined();
});

test("each caution says what it said", async () => {
  const text = CAUTIONS.map(
    ({ name, title, text, source }) =>
      `${name}: ${title}\n  ${text}\n${source === "" ? "" : `  (${source})\n`}`,
  ).join("");
  await expect(text).toMatchFileSnapshot("../fixtures/cautions.txt");
});

describe("a cut", () => {
  const cut = (more: {
    readonly drive?: string;
    readonly material?: string;
    readonly line?: string;
  }): readonly string[] =>
    of(
      `job a
  units inch
part case
  material ${more.material ?? "steel-4140"}
material our-bronze
  expansion 18 um/m-K
material gunmetal
  expansion 18 um/m-K
material our-plastic
  expansion 90 um/m-K
reamer r
  size 0.8750
${more.drive === undefined ? "" : `  drive ${more.drive}\n`}bore front in case
line l
  bore front from 0 to 1
  ${more.line ?? "ream with r"}
step k
  cuts line l
`,
      "k",
    );
  const CHIPS = ["chips-and-oil", "compressed-air"];

  test("by hand: the reamer turns one way, and takes no power", () => {
    expect(cut({ drive: "hand" })).toEqual(
      ["reamer-one-way", "hand-reamer-no-power", ...CHIPS].sort(inOrder),
    );
  });

  test("by machine: it turns one way, and the work turns", () => {
    expect(cut({ drive: "machine" })).toEqual(
      ["reamer-one-way", "rotating-work", ...CHIPS].sort(inOrder),
    );
  });

  test("by what nobody says: both", () => {
    expect(cut({})).toEqual(
      [
        "reamer-one-way",
        "hand-reamer-no-power",
        "rotating-work",
        ...CHIPS,
      ].sort(inOrder),
    );
  });

  test("says by itself what its step does, of steel and of bronze", () => {
    const by = (material: string): readonly string[] =>
      cautionsOfCut(
        opened(
          `job a\n  units inch\npart case\n  material ${material}\nbore front in case\nline l\n  bore front from 0 to 1\n`,
        ).shop,
        "line l",
      );
    const both = ["reamer-one-way", "hand-reamer-no-power", "rotating-work"];
    expect(by("steel-4140")).toEqual([...both, ...CHIPS]);
    expect(by("bronze-c932")).toEqual([
      ...both,
      ...CHIPS,
      "lead-and-beryllium",
    ]);
    expect(by("none-such")).toEqual([...both, ...CHIPS]);
  });

  test("bored to a size: no reamer, but the work turns", () => {
    expect(cut({ line: "cut to 0.8750 to 0.8755" })).toEqual(
      ["rotating-work", ...CHIPS].sort(inOrder),
    );
  });

  // C93200 (SAE 660) holds 6 to 8 % lead: ASTM B505, from memory
  test("of leaded bronze, and of a shop's own bronze of which nobody says what is in it", () => {
    expect(cut({ material: "bronze-c932" })).toContain("lead-and-beryllium");
    expect(cut({ material: "our-bronze" })).toContain("lead-and-beryllium");
    expect(cut({ material: "gunmetal" })).toContain("lead-and-beryllium");
    expect(cut({ material: "our-plastic" })).not.toContain(
      "lead-and-beryllium",
    );
    expect(cut({ material: "steel-4140" })).not.toContain("lead-and-beryllium");
    // an aluminium bronze that is shipped says what is in it
    expect(cut({ material: "bronze-c954" })).not.toContain(
      "lead-and-beryllium",
    );
  });

  test("of a bush of which nobody says what it is", () => {
    const bush = (fact: string): readonly string[] =>
      of(
        `job a\n  units inch\npart case\n  material steel-4140\nhole a in case\nbush a in hole a\n${fact}bore a in bush a\nline l\n  bore a from 0 to 1\nstep k\n  cuts line l\n`,
        "k",
      );
    expect(bush("")).toContain("lead-and-beryllium");
    expect(bush("  material steel-1018\n")).not.toContain("lead-and-beryllium");
  });

  test.each(["our-brass", "our-babbitt", "our-beryllium", "our-copper"])(
    "of %s, in which both may be",
    (material) => {
      expect(
        of(
          `job a\n  units inch\npart case\n  material ${material}\nmaterial ${material}\n  modulus 14e6 psi\nbore front in case\nline l\n  bore front from 0 to 1\nstep k\n  cuts line l\n`,
          "k",
        ),
      ).toContain("lead-and-beryllium");
    },
  );

  test("of sintered bronze, which is oil-filled, however it is said to be made", () => {
    expect(cut({ material: "sae-841" })).toContain("oil-filled-bush");
    expect(cut({ material: "bronze-c932" })).not.toContain("oil-filled-bush");
  });
});

describe("a press", () => {
  const pressed = ({ depth = "", bush = "" } = {}): readonly string[] =>
    of(
      `job a
  units inch
part case
hole front in case
${depth}bush front in hole front
${bush}press front of bush front in hole front
step p
  presses press front
`,
      "p",
    );

  test("may be done hot or cold, and heat is never put to what is closed", () => {
    expect(pressed()).toEqual(
      ["press-work", "frozen-parts", "hot-parts", "closed-cavity"].sort(
        inOrder,
      ),
    );
  });

  test("of an oil-filled bush: it is named, and is not chilled", () => {
    const porous = [
      "press-work",
      "oil-filled-bush",
      "hot-parts",
      "closed-cavity",
    ];
    expect(pressed({ bush: "  construction porous\n" })).toEqual(
      porous.sort(inOrder),
    );
    expect(pressed({ bush: "  construction solid\n" })).not.toContain(
      "oil-filled-bush",
    );
  });

  test("shuts something in where its hole is blind, and heat is put to nothing that is closed: as the press says by itself too", () => {
    expect(pressed({ depth: "  depth 1.350 blind\n" })).toContain(
      "closed-cavity",
    );
    const { shop } = opened(
      "job a\n  units inch\npart case\nhole front in case\nbush front in hole front\npress front of bush front in hole front\n",
    );
    expect(cautionsOfPress(shop, "press front")).toEqual([
      "press-work",
      "closed-cavity",
      "frozen-parts",
      "hot-parts",
    ]);
  });
});

describe("words", () => {
  const said = (text: string, name = "k"): readonly string[] =>
    of(`job a\n  units inch\nstep ${name}\n  do "${text}"\n`, name);

  test("that mean nothing bring nothing", () => {
    expect(said("look it over")).toEqual([]);
  });

  test.each([
    ["dry it on the air line", ["compressed-air"]],
    ["dry it on the airline", ["compressed-air"]],
    ["use compressed air", ["compressed-air"]],
    ["blow it dry", ["compressed-air"]],
    ["wash it", ["solvent"]],
    ["wipe with spirit", ["solvent"]],
    ["rub with solvent", ["solvent"]],
    ["paraffin and a brush", ["solvent"]],
    ["put it in hot", ["hot-parts", "closed-cavity"]],
    ["a torch does", ["hot-parts", "closed-cavity"]],
    ["by induction", ["hot-parts", "closed-cavity"]],
    ["freeze the bush", ["frozen-parts"]],
    ["once frozen", ["frozen-parts"]],
    ["in dry ice", ["frozen-parts"]],
    ["in nitrogen", ["frozen-parts"]],
    ["take off the old gasket", ["old-gaskets"]],
    ["clean the joint face", ["solvent", "old-gaskets"]],
    ["flush out the chips", ["chips-and-oil", "compressed-air", "solvent"]],
    ["ream it by hand", ["reamer-one-way"]],
    ["feel where the reamer's bevel stopped", []],
    ["polish the journal in the lathe", ["rotating-work"]],
    ["grind it", ["rotating-work"]],
    ["press the old bush out", ["press-work"]],
    ["knock it out with a drift", ["press-work"]],
    ["let the pressure off, as pressed", []],
    ["look at the linings", ["old-gaskets"]],
    ["look at the lining", ["old-gaskets"]],
    ["lift it", ["lifting"]],
    ["by a sling", ["lifting"]],
    ["by crane", ["lifting"]],
    ["rigging", ["lifting"]],
    ["dismantle it", ["stored-load"]],
    ["take apart", ["stored-load"]],
    ["open up", ["stored-load"]],
    ["the cover comes off", ["stored-load"]],
    ["unload it", ["stored-load"]],
    ["mind the spring", ["stored-load"]],
    ["run-in for an hour", ["rotating-work", "first-run"]],
    ["running-in", ["rotating-work", "first-run"]],
    ["first-run", ["rotating-work", "first-run"]],
    ["startup", ["rotating-work", "first-run"]],
    ["start-up", ["rotating-work", "first-run"]],
    ["test run", ["rotating-work", "first-run"]],
    ["trial-run", ["rotating-work", "first-run"]],
    ["commission it", ["rotating-work", "first-run"]],
    ["a shot, a photo, a hothouse", []],
    ["degrease the case", ["solvent"]],
    ["chill the bush", ["frozen-parts"]],
    ["scrape the joint faces", ["old-gaskets"]],
    ["hoist the drum", ["lifting"]],
    ["strip the gearbox", ["stored-load"]],
    ["first run, no load", ["rotating-work", "first-run"]],
    ["warm the case in the oven", ["hot-parts", "closed-cavity"]],
  ])("%s", (text, names) => {
    expect(said(text)).toEqual(names);
  });

  test("of a step's name count as those of its text", () => {
    expect(said("as agreed", "heat-case")).toEqual([
      "hot-parts",
      "closed-cavity",
    ]);
  });

  test("what a step writes itself stands with what it brings, each once, in the list's order", () => {
    expect(
      of(
        'job a\n  units inch\nstep k\n  do "hoist it"\n  caution lifting, solvent\n',
        "k",
      ),
    ).toEqual(["solvent", "lifting"]);
  });
});

function inOrder(one: string, other: string): number {
  const place = (name: string): number =>
    CAUTIONS.findIndex((each) => each.name === name);
  return place(one) - place(other);
}

test("the cautions are the closed list of the language, each with a title and a text of its own", () => {
  expect(CAUTIONS.map((each) => each.name)).toEqual(
    (
      "reamer-one-way hand-reamer-no-power chips-and-oil rotating-work compressed-air solvent hot-parts frozen-parts press-work " +
      "lead-and-beryllium old-gaskets oil-filled-bush lifting stored-load closed-cavity first-run"
    ).split(" "),
  );
  expect(new Set(CAUTIONS.map((each) => each.text)).size).toBe(CAUTIONS.length);
  // US 29 CFR 1910.242(b) and 1917.154 (seen): reduced to less than 30 psi, with chip guarding and protective equipment
  expect(CAUTIONS.find((each) => each.name === "compressed-air")?.text).toMatch(
    /under 30 psi .*chip guard.*eye protection/,
  );
});
