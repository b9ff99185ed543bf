// The cautions of the trade, and which of them a step brings without being asked. It shows nothing: hover, completion and the job sheet do.
// The texts are ours. They rest on common practice and no source, but for what a caution's own source says.
import { material as shippedMaterial } from "../core/materials/material.ts";
import { valueIn } from "./entry.ts";
import { boresOfLine, namedIn } from "./evaluate/index-of.ts";
import { stepValue } from "./evaluate/order.ts";
import { hostOf, materialOfFeature } from "./evaluate/size.ts";
import { nameOf } from "./reference.ts";
import { entryOf, query, refOf, type Shop } from "./shop.ts";

export interface Caution {
  readonly name: string;
  readonly title: string;
  readonly text: string;
  /** Where a figure of the text is from; "" where it has none. */
  readonly source: string;
  /** Words of a step's name or text that bring it: too often is safer than never. */
  readonly words?: RegExp;
}

/** The closed list of the language, in its order. */
export const CAUTIONS: readonly Caution[] = [
  {
    name: "reamer-one-way",
    title: "A reamer turns one way",
    text: "Turn it forward only, on the way in and on the way out: turned back, it chips its edges and scores the bore. Never strike it, and never force one that binds: back the feed off, clear the chips, and find out why.",
    source: "",
    words: /\bream(?:s|ed|ing)?\b/i,
  },
  {
    name: "hand-reamer-no-power",
    title: "A hand reamer takes no power",
    text: "Turn a hand reamer with a wrench in both hands. Under power it grabs and breaks, and the wrench flies round with it.",
    source: "",
  },
  {
    name: "chips-and-oil",
    title: "Chips and oil",
    text: "Wear eye protection. Clear chips with a brush or a hook, never with bare fingers. Wipe up spilt oil, and wash it off the skin.",
    source: "",
    words: /\b(?:chips?|swarf)\b/i,
  },
  {
    name: "rotating-work",
    title: "Rotating work",
    text: "No gloves, loose sleeves, rings or rags near anything that turns. Take the key out of the chuck before starting, stop the machine before measuring or clearing chips, and turn a shaft with its fingers clear of the bore.",
    source: "",
    words: /\b(?:lathe|chuck|emery|(?:grind|polish|drill)(?:s|es|ed|ing)?)\b/i,
  },
  {
    name: "compressed-air",
    title: "Compressed air",
    text: "Keep it under 30 psi at the nozzle, behind a chip guard, with eye protection; never at a person, never into a blind hole that faces you, and never on dust of lead, beryllium or old linings.",
    source: "30 psi and the chip guard: US 29 CFR 1910.242(b), 1917.154",
    words: /\b(?:compressed air|air ?line|blow|flush|chips?\b|swarf)/i,
  },
  {
    name: "solvent",
    title: "Solvent",
    text: "Keep it away from flame, sparks and hot parts, with air moving through the place and gloves that stand it. Let parts dry before they are heated. Rags that are wet with it go in a closed metal bin.",
    source: "",
    words:
      /\b(?:solvent|degreas|paraffin|spirits?\b|wash|flush|clean(?:s|ed|ing)?\b)/i,
  },
  {
    name: "hot-parts",
    title: "Hot parts",
    text: "Take out seals and plugs, drain the oil, and open whatever is closed, before heat. Heat evenly, with a thermometer and not by colour, no hotter than the case bears, and in moving air: paint, plating and plastics give off fumes. Wear dry heat-proof gloves; have tongs, a place to set the part down and an extinguisher ready first: the bush must go home in one move. A hot part looks like a cold one, so mark it.",
    source: "",
    words: /\b(?:heat|hot\b|warm|oven|torch|induction)/i,
  },
  {
    name: "frozen-parts",
    title: "Frozen parts",
    text: "Dry ice and liquid nitrogen burn the skin and drive the air out of a closed room: use them with the doors open, never in a pit or a hold, where the cold gas lies, and never shut in a vessel, which bursts. Wear loose dry insulated gloves and a face shield. Cold castings crack when they are struck, and frost under a bush spoils its seat.",
    source: "",
    words: /\b(?:freez|frozen|chill|dry ice|nitrogen)/i,
  },
  {
    name: "press-work",
    title: "Pressing",
    text: "Stand out of the line of the ram. Set the work square on a firm support, and guide the bush with a stepped mandrel, never with fingers. Collars, packing and brittle parts fly when they slip or break: guard them and wear eye protection. Stop when the force climbs past what was worked out: something is not square or not in size. A bush is not driven with a bare hammer.",
    source: "",
    words: /\bpress(?:es|ing)?\b|\b(?:drift|puller)\b/i,
  },
  {
    name: "lead-and-beryllium",
    title: "Lead and beryllium",
    text: "Many bronzes hold lead and some hold beryllium. Cut them wet, make no dust, never blow it about or grind it dry. Wash before eating or smoking, and keep the chips apart. Where beryllium is in it, or nobody knows, ask before cutting.",
    source: "",
  },
  {
    name: "old-gaskets",
    title: "Old gaskets and linings",
    text: "What was fitted long ago may hold asbestos. Until that is ruled out do not scrape, sand, grind, wire-brush or blow it: wet it, and have it tested or taken off by someone who may.",
    source: "",
    words: /\b(?:old gasket|scrap|joint faces?|linings?\b)/i,
  },
  {
    name: "oil-filled-bush",
    title: "An oil-filled bush",
    text: "A porous bush holds its oil in its pores. Never heat it, never wash it in solvent, and do not ream it: the pores smear shut. Size it on a mandrel, and let it soak in its own grade of oil if it has run dry.",
    source:
      "that reaming smears the pores: a bearing seller's data sheet on sintered bushes (seen)",
  },
  {
    name: "lifting",
    title: "Lifting",
    text: "Know the weight before it hangs. Use slings and eyes that are marked for it, lift over the middle of the load, and keep from under it. Block a part up before working on it: a jack or a hoist lifts, it does not hold.",
    source: "",
    words: /\b(?:lift|hoist|sling|crane|rigg)/i,
  },
  {
    name: "stored-load",
    title: "Stored load",
    text: "Land the load, slack the wire, let springs down, let pressure off and lock the drive out before anything is opened. Undo the last bolts slowly and from the side: a part under load jumps.",
    source: "",
    words:
      /\b(?:strip|dismantl|take apart|open up|comes off|unload|springs?\b)/i,
  },
  {
    name: "closed-cavity",
    title: "A closed cavity",
    text: "Oil, grease, water or air shut in behind a bush has nowhere to go: pressed, it throws the bush back or splits the case; heated, it bursts. Drain and vent it first, and look down the vent to see that it is clear.",
    source: "",
  },
  {
    name: "first-run",
    title: "First run",
    text: "Oil it first and turn it over by hand. Run it unloaded and slow, guards on, with the stop within reach; feel the bearing for heat, and stop at once if it warms fast or the note changes. Load it in steps.",
    source: "",
    words:
      /\b(?:run-in|running-in|first[- ]run|start-?up|(?:test|trial)[- ]run|commission)/i,
  },
];

/** What stands under every sheet and every list of cautions. */
export const LIMIT_OF_RECORD =
  "A record does not replace the maker's manual, local rules, or a licensed or qualified person where the law asks for one.";

const BY_NAME: ReadonlyMap<string, Caution> = new Map(
  CAUTIONS.map((caution) => [caution.name, caution]),
);

/** The caution of that name, or nothing. */
export function cautionNamed(name: string): Caution | undefined {
  return BY_NAME.get(name);
}

/** The names of the cautions that a step needs, in the order of the list: those it writes, and those that its work brings. */
export const cautionsOfStep = query<readonly string[]>(
  "cautions",
  (shop, ref) => {
    const step = stepValue(shop, ref);
    const said = `${ref} ${step.text ?? ""}`;
    const names = new Set([
      ...step.cautions,
      ...CAUTIONS.filter((each) => each.words?.test(said) === true).map(
        (each) => each.name,
      ),
      ...step.cuts.flatMap((line) => cautionsOfCut(shop, line)),
      ...step.presses.flatMap((press) => cautionsOfPress(shop, press)),
    ]);
    if (names.has("hot-parts")) names.add("closed-cavity");
    if (names.has("first-run")) names.add("rotating-work");
    return CAUTIONS.filter((each) => names.has(each.name)).map(
      (each) => each.name,
    );
  },
);

/** What cutting a line brings, by its tool and by what it cuts. Where nobody says what drives the reamer, both ways count. */
export function cautionsOfCut(shop: Shop, line: string): readonly string[] {
  const entry = entryOf(shop, line);
  const isBored = valueIn(entry, "CutFact") !== undefined;
  const reamer = refOf(shop, valueIn(entry, "ReamFact"));
  const drive =
    reamer === undefined
      ? undefined
      : valueIn(entryOf(shop, reamer), "DriveFact");
  const ofTool = isBored
    ? ["rotating-work"]
    : [
        "reamer-one-way",
        ...(drive === "machine" ? [] : ["hand-reamer-no-power"]),
        ...(drive === "hand" ? [] : ["rotating-work"]),
      ];
  return [
    ...ofTool,
    "chips-and-oil",
    "compressed-air",
    ...boresOfLine(shop, line).flatMap((bore) =>
      cautionsOfMaterial(shop, bore, hostOf(shop, bore)),
    ),
  ];
}

/** What pressing a bush brings, by the bush and the hole; heat and cold too, for either may be how it goes in. */
export function cautionsOfPress(shop: Shop, press: string): readonly string[] {
  const [bush] = namedIn(shop, press);
  const isPorous =
    bush !== undefined &&
    cautionsOfMaterial(shop, bush, bush).includes("oil-filled-bush");
  return [
    "press-work",
    // a blind hole is one; and no heat is put to any
    "closed-cavity",
    // an oil-filled bush goes in cold: its case may still be heated
    ...(isPorous ? ["oil-filled-bush"] : ["frozen-parts"]),
    "hot-parts",
  ];
}

function cautionsOfMaterial(
  shop: Shop,
  feature: string,
  bush: string | undefined,
): readonly string[] {
  const construction =
    bush === undefined
      ? undefined
      : valueIn(entryOf(shop, bush), "ConstructionFact");
  const material = materialOfFeature(shop, feature);
  const name = material.known ? nameOf(material.value.ref) : "";
  const shipped = shippedMaterial(name);
  const isPorous = construction === "porous" || shipped?.family === "sintered";
  // of a shop's own bronze or brass nobody has said what is in it, and of a bush without a material not even that
  const mayHoldLead =
    shipped !== undefined
      ? /lead|free-cutting brass|beryllium/i.test(shipped.what)
      : bush !== undefined && !material.known
        ? !material.silent
        : /bronze|brass|gun-?metal|white-?metal|babbitt|beryllium|copper/i.test(
            name,
          );
  return [
    ...(isPorous ? ["oil-filled-bush"] : []),
    ...(mayHoldLead ? ["lead-and-beryllium"] : []),
  ];
}
