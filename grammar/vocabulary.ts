// The words of the language: which entries there are, which facts each takes, and the start rule of thou.ohm that reads
// each. What the words mean in numbers is the model's; how a line looks is thou.ohm's.

export interface FactSpec {
  readonly word: string;
  /** The start rule in thou.ohm. */
  readonly rule: string;
  /** May stand more than once in its entry. */
  readonly many: boolean;
  /** How it is written: CAPITALS stand for what is filled in, a|b for a choice, [ ] for what may be left off. */
  readonly form: string;
  /** One line for hover and completion. */
  readonly means: string;
  /** What its numbers are at least: nothing is worked out from one that is less. Deviations, temperatures and stations in it may be anything. */
  readonly least: Least;
}

/** A size has to be above zero, an allowance may be zero, a correction may be anything. */
export type Least = "above-zero" | "zero" | "anything";

/** What is filled in in a form; `ISO VG` and `SAE` are written as they stand. */
export const OPEN_PLACE = /\b(?:(?!(?:ISO|VG|SAE)\b)[A-Z]{2,}|X|Z)\b/g;

/** The places of a form that are to be filled in: "NAME" and "PART" of `journal NAME on PART`. */
export function placesOf(form: string): readonly string[] {
  return form.match(OPEN_PLACE) ?? [];
}

export interface EntrySpec {
  readonly kind: EntryKind;
  readonly rule: string;
  readonly form: string;
  readonly means: string;
  readonly facts: readonly FactSpec[];
}

export const ENTRY_KINDS = [
  "job",
  "shop",
  "part",
  "journal",
  "hole",
  "bush",
  "bore",
  "press",
  "fit",
  "line",
  "stack",
  "step",
  "concession",
  "reamer",
  "pilot",
  "gauge",
  "material",
  "oil",
  "route",
  "lesson",
] as const;

export type EntryKind = (typeof ENTRY_KINDS)[number];

type Said = readonly [word: string, rule: string, form: string, means: string];

function specOf(
  [word, rule, form, means]: Said,
  many: boolean,
  least: Least,
): FactSpec {
  return { word, rule, many, form, means, least };
}

/** A fact that stands once. */
function fact(...said: Said): FactSpec {
  return specOf(said, false, "anything");
}
/** One that may stand more than once. */
function facts(...said: Said): FactSpec {
  return specOf(said, true, "anything");
}
/** How much there is of something, which may be nothing. */
function amount(...said: Said): FactSpec {
  return specOf(said, false, "zero");
}
function amounts(...said: Said): FactSpec {
  return specOf(said, true, "zero");
}
/** How large something is. */
function size(...said: Said): FactSpec {
  return specOf(said, false, "above-zero");
}
function sizes(...said: Said): FactSpec {
  return specOf(said, true, "above-zero");
}

const NOTE = facts(
  "note",
  "NoteFact",
  'note "TEXT"',
  "A remark. It changes no result.",
);
const LIMITS = size(
  "limits",
  "LimitsFact",
  'limits LOW to HIGH [from "SOURCE"]',
  "Limits of size as drawn; `0.8745 +0 -0.0005`, `0.8742 +/- 0.0003` and a class such as `25 mm H7` do as well.",
);
const NOMINAL = size(
  "nominal",
  "NominalFact",
  "nominal SIZE",
  "The size by which it is known. It changes no result: readings far from it are asked about.",
);
const SERVICE_LIMIT = size(
  "service-limit",
  "ServiceLimitFact",
  'service-limit SIZE [from "SOURCE"]',
  "The size at which it counts as worn out: worn is not the same as wrong.",
);
const READ = sizes(
  "read",
  "ReadFact",
  "read [PLACE] VALUES [station Z] [with GAUGE] [at TEMPERATURE [, gauge TEMPERATURE]] [as STAGE] [by WHO on DATE]",
  "Diameters read round one place, at different angles. Named places along the length give taper.",
);
const REPEAT = sizes(
  "repeat",
  "RepeatFact",
  "repeat [PLACE] VALUES [station Z] [with GAUGE] [at TEMPERATURE [, gauge TEMPERATURE]] [as STAGE] [by WHO on DATE]",
  "The same diameter read again and again at one place: how well the reading repeats, and which value is a stray.",
);
const SWING = amounts(
  "swing",
  "SwingFact",
  "swing [PLACE] VALUE on vee ANGLE, COUNT lobes [with GAUGE] [as STAGE] [by WHO on DATE]",
  "How far an indicator swings as the part is turned in a vee, and how many times in a turn: lobes that two points don't see.",
);
const BORE_SWING = amounts(
  "swing",
  "BoreSwingFact",
  "swing [PLACE] VALUE on three points, COUNT lobes [with GAUGE] [as STAGE] [by WHO on DATE]",
  "How far a bore gauge of three contacts swings as it is turned, on diameter, and how many times in a turn: lobes that two points don't see.",
);
const FINISH = amount(
  "finish",
  "FinishFact",
  "finish VALUE Ra|Rz",
  "Surface roughness.",
);
const ROUND = amount(
  "round",
  "RoundFact",
  "round VALUE",
  "Out-of-round that is allowed, as the difference of two-point diameters.",
);
const TAPER = amount(
  "taper",
  "TaperFact",
  "taper VALUE",
  "Taper that is allowed over its length, on diameter.",
);
const LENGTH = size(
  "length",
  "LengthFact",
  "length VALUE",
  "Length along the axis.",
);
const JOINT = amount(
  "joint",
  "JointFact",
  "joint gasket THICKNESS",
  "What lies in the joint, `gasket` with its thickness or `bare`: the bore is cut as it will run.",
);
const BOLTS = amount(
  "bolts",
  "BoltsFact",
  "bolts TORQUE",
  "Tightening torque of the joint's bolts.",
);
const DOWELS = fact(
  "dowels",
  "DowelsFact",
  "dowels COUNT",
  "How many dowels locate the joint.",
);
const MATERIAL = fact(
  "material",
  "MaterialFact",
  "material NAME",
  "A shipped material, or one of the crib's own.",
);
const UNITS = fact(
  "units",
  "UnitsFact",
  "units inch|mm",
  "The unit of every length that stands bare.",
);
const USE = facts(
  "use",
  "UseFact",
  'use "FILE"',
  "A crib whose entries hold here too; the path is from this file.",
);
const WARN = facts(
  "warn",
  "WarnFact",
  "warn CODE at VALUE",
  "This job's own threshold of a finding, in place of the shipped one.",
);
const HOT = facts(
  "hot",
  "HotFact",
  "hot shaft TEMPERATURE, bush TEMPERATURE, case TEMPERATURE",
  "Temperatures when warm in service.",
);
const COLD = facts(
  "cold",
  "ColdFact",
  "cold shaft TEMPERATURE, case TEMPERATURE",
  "Temperatures at the coldest start.",
);

export const ENTRIES: readonly EntrySpec[] = [
  {
    kind: "job",
    rule: "JobEntry",
    form: "job NAME",
    means: "The job that this file records; one a file.",
    facts: [
      fact("title", "TitleFact", 'title "TEXT"', "What the job is, in words."),
      UNITS,
      USE,
      fact(
        "opened",
        "OpenedFact",
        "opened DATE by WHO",
        "When the job was opened, and by whom.",
      ),
      amounts(
        "hours",
        "HoursFact",
        "hours HOURS [on DATE]",
        "What the hour meter of the machine showed that day, or else on the day that the job was opened.",
      ),
      fact(
        "temperature",
        "TemperatureFact",
        "temperature VALUE",
        "Temperature of parts and gauges where a reading does not say its own.",
      ),
      fact(
        "verdict",
        "VerdictFact",
        "verdict simple|guarded",
        "How a size is judged: against its limits as they are, or held back by the uncertainty (ISO 14253-1).",
      ),
      fact(
        "follow",
        "FollowFact",
        "follow ROUTE",
        "The route whose steps this job takes.",
      ),
      WARN,
      NOTE,
    ],
  },
  {
    kind: "shop",
    rule: "ShopEntry",
    form: "shop NAME",
    means: "What holds for a crib file, in place of a job.",
    facts: [UNITS, USE, WARN, NOTE],
  },
  {
    kind: "part",
    rule: "PartEntry",
    form: "part NAME",
    means: "A shaft, a case, a lever.",
    facts: [
      MATERIAL,
      fact(
        "serial",
        "SerialFact",
        "serial NUMBER",
        "Its serial number: records of the same part are followed over the years.",
      ),
      fact(
        "split",
        "SplitFact",
        "split along|across",
        "It is in halves, parted along or across the axis of its bores.",
      ),
      JOINT,
      BOLTS,
      DOWELS,
      NOTE,
    ],
  },
  {
    kind: "journal",
    rule: "JournalEntry",
    form: "journal NAME on PART",
    means: "Where a shaft runs.",
    facts: [
      NOMINAL,
      LIMITS,
      SERVICE_LIMIT,
      LENGTH,
      READ,
      REPEAT,
      SWING,
      FINISH,
      amount(
        "runout",
        "RunoutFact",
        "runout VALUE",
        "Run-out of the journal, full indicator movement.",
      ),
      amount(
        "fillet",
        "FilletFact",
        "fillet RADIUS",
        "Radius where the journal meets its shoulder.",
      ),
      amount(
        "reaches",
        "ReachesFact",
        "reaches DEPTH",
        "How deep the shaft's end goes into the bore, from the bore's mouth.",
      ),
      ROUND,
      TAPER,
      NOTE,
    ],
  },
  {
    kind: "hole",
    rule: "HoleEntry",
    form: "hole NAME in PART",
    means: "The housing bore that takes a bush.",
    facts: [
      NOMINAL,
      LIMITS,
      READ,
      REPEAT,
      BORE_SWING,
      size(
        "boss",
        "BossFact",
        "boss DIAMETER",
        "Outside diameter of the metal round the hole.",
      ),
      FINISH,
      size(
        "depth",
        "DepthFact",
        "depth VALUE blind|through",
        "How deep the hole is, and whether it goes through.",
      ),
      fact(
        "vented",
        "VentedFact",
        "vented",
        "Air and oil can get out from behind a bush or shaft driven in.",
      ),
      ROUND,
      TAPER,
      NOTE,
    ],
  },
  {
    kind: "bush",
    rule: "BushEntry",
    form: "bush NAME in HOLE",
    means: "The bush as bought.",
    facts: [
      MATERIAL,
      size("od", "OdFact", "od LOW to HIGH", "Outside diameter as bought."),
      size(
        "id",
        "IdFact",
        "id LOW to HIGH",
        "Inside diameter as bought, before pressing.",
      ),
      sizes(
        "read",
        "BushReadFact",
        "read od|id [PLACE] VALUES [station Z] [with GAUGE] [at TEMPERATURE [, gauge TEMPERATURE]] [as STAGE] [by WHO on DATE]",
        "Diameters read, outside or inside.",
      ),
      FINISH,
      LENGTH,
      fact(
        "construction",
        "ConstructionFact",
        "construction solid|wrapped|porous|lined",
        "How the bush is made: porous and lined ones are not reamed.",
      ),
      fact(
        "lot",
        "LotFact",
        "lot NUMBER",
        "The lot it was bought in: bushes of one lot close alike.",
      ),
      fact(
        "groove",
        "GrooveFact",
        "groove round|lengthwise",
        "An oil groove in the running bore.",
      ),
      fact(
        "oil-hole",
        "OilHoleFact",
        "oil-hole at ANGLE",
        "Where oil enters, from the direction of the load.",
      ),
      fact(
        "held",
        "HeldFact",
        'held by "TEXT"',
        "What keeps it from turning besides the press fit.",
      ),
      NOTE,
    ],
  },
  {
    kind: "bore",
    rule: "BoreEntry",
    form: "bore NAME in bush|part NAME",
    means: "The running bore, in a bush or in the part itself.",
    facts: [
      NOMINAL,
      LIMITS,
      SERVICE_LIMIT,
      READ,
      REPEAT,
      BORE_SWING,
      LENGTH,
      FINISH,
      ROUND,
      TAPER,
      NOTE,
    ],
  },
  {
    kind: "press",
    rule: "PressEntry",
    form: "press NAME of BUSH in HOLE",
    means: "A press fit.",
    facts: [
      fact(
        "want",
        "WantFact",
        "want LOW to HIGH",
        "The interference that is wanted, on diameter.",
      ),
      amount(
        "friction",
        "FrictionFact",
        "friction LOW to HIGH",
        "Coefficient of friction while pressing and holding.",
      ),
      amount(
        "smoothing",
        "SmoothingFact",
        "smoothing VALUE",
        "What the surfaces give as they are pressed, on diameter.",
      ),
      NOTE,
    ],
  },
  {
    kind: "fit",
    rule: "FitEntry",
    form: "fit NAME of JOURNAL in BORE",
    means: "A running fit.",
    facts: [
      fact(
        "want",
        "WantFact",
        "want LOW to HIGH",
        "The clearance that is wanted, on diameter; a class such as `25 mm H7/f7` does as well.",
      ),
      fact(
        "want-hot",
        "WantHotFact",
        "want-hot LOW to HIGH",
        "The clearance that is wanted when hot or cold.",
      ),
      size("runs", "RunsFact", "runs SPEED", "Speed of rotation."),
      size(
        "oscillates",
        "OscillatesFact",
        "oscillates ANGLE, RATE per min",
        "Swing from end to end, and full cycles a minute.",
      ),
      amount(
        "load",
        "LoadFact",
        "load FORCE steady|reversing|shock",
        "Radial load on this bore.",
      ),
      fact(
        "oil",
        "OilFact",
        "oil NAME at TEMPERATURE",
        "Oil, and its temperature as it enters.",
      ),
      size(
        "feed",
        "FeedFact",
        "feed splash|drip|grease",
        "How the oil gets there; `pressure 30 psi` where it is pumped.",
      ),
      size(
        "cooled",
        "CooledFact",
        "cooled case AREA, air TEMPERATURE",
        "The case gives the heat off to the air, by so much of its outside (which may be left out); where this is not written, the oil that leaves carries the heat.",
      ),
      HOT,
      COLD,
      NOTE,
    ],
  },
  {
    kind: "line",
    rule: "LineEntry",
    form: "line NAME",
    means: "Bores cut in line, in the order of cutting.",
    facts: [
      facts(
        "bore",
        "LineBoreFact",
        "bore NAME from Z to Z",
        "A bore of the line and where it lies along the axis; `centre X, Y` once checked.",
      ),
      fact(
        "ream",
        "ReamFact",
        "ream with REAMER",
        "The reamer that cuts every bore of the line.",
      ),
      size(
        "cut",
        "CutFact",
        "cut to LOW to HIGH",
        "Size cut by boring bar or hone, in place of a reamer.",
      ),
      facts(
        "pilot",
        "LinePilotFact",
        "pilot NAME in BORE for BORE",
        "A pilot, the bore it runs in, and the bore whose cut it guides.",
      ),
      fact(
        "temperature",
        "CutTemperatureFact",
        "temperature part VALUE, tool VALUE",
        "Temperatures at the cut.",
      ),
      JOINT,
      BOLTS,
      DOWELS,
      size(
        "speed",
        "SpeedFact",
        "speed VALUE",
        "Cutting speed, or turns a minute.",
      ),
      NOTE,
    ],
  },
  {
    kind: "stack",
    rule: "StackEntry",
    form: "stack NAME",
    means: "A chain of lengths along an axis, and the end float it leaves.",
    facts: [
      facts(
        "plus",
        "PlusFact",
        "plus NAME LOW to HIGH of PART",
        "A length that adds to the float.",
      ),
      facts(
        "minus",
        "MinusFact",
        "minus NAME LOW to HIGH of PART",
        "A length that takes from the float.",
      ),
      facts(
        "read",
        "StackReadFact",
        "read NAME VALUES [with GAUGE] [at TEMPERATURE [, gauge TEMPERATURE]] [as STAGE] [by WHO on DATE]",
        "A member of the stack as measured.",
      ),
      fact(
        "want",
        "WantFact",
        "want LOW to HIGH",
        "The end float that is wanted.",
      ),
      HOT,
      COLD,
      amount(
        "shims",
        "ShimsFact",
        "shims VALUE, VALUE, VALUE",
        "Thicknesses of shim at hand.",
      ),
      NOTE,
    ],
  },
  {
    kind: "step",
    rule: "StepEntry",
    form: "step NAME",
    means: "A step of the work.",
    facts: [
      facts(
        "after",
        "AfterFact",
        "after STEP",
        "Steps that come before this one.",
      ),
      fact("do", "DoFact", 'do "TEXT"', "What is done, in words."),
      facts(
        "cuts",
        "CutsFact",
        "cuts LINE",
        "The lines that this step cuts: it waits until the figures hold.",
      ),
      facts(
        "presses",
        "PressesFact",
        "presses PRESS",
        "The press fits that this step makes.",
      ),
      facts("checks", "ChecksFact", "checks ENTRY", "What this step checks."),
      facts(
        "caution",
        "CautionFact",
        "caution NAME",
        "A caution to show with this step.",
      ),
      fact(
        "found",
        "FoundFact",
        'found passed|failed "TEXT"',
        "What the step found; a failed one stays open and blocks.",
      ),
      fact("done", "DoneFact", "done DATE by WHO", "The step is done."),
      NOTE,
    ],
  },
  {
    kind: "concession",
    rule: "ConcessionEntry",
    form: "concession NAME",
    means: "A departure that someone has signed for.",
    facts: [
      fact(
        "allows",
        "AllowsFact",
        "allows CODE on ENTRY",
        "The finding that is allowed, and the entry it is allowed on.",
      ),
      fact(
        "up",
        "UpToFact",
        "up to VALUE",
        "How far: the value itself, not the excess.",
      ),
      fact(
        "why",
        "WhyFact",
        'why "TEXT" by WHO on DATE',
        "The reason, signed and dated.",
      ),
      NOTE,
    ],
  },
  {
    kind: "reamer",
    rule: "ReamerEntry",
    form: "reamer NAME",
    means: "A reamer of the crib.",
    facts: [
      size(
        "size",
        "SizeFact",
        "size VALUE",
        "Nominal size, or the limits it was made to; a hole class means a reamer made for such holes (DIN 1420); `no 7` and `letter F` do as well.",
      ),
      READ,
      facts(
        "oversize",
        "OversizeFact",
        "oversize [MATERIAL] LOW to HIGH",
        "How much larger than itself it cuts, by material.",
      ),
      fact(
        "drive",
        "DriveFact",
        "drive hand|machine",
        "Turned by hand, or by a machine.",
      ),
      fact(
        "material",
        "ReamerMaterialFact",
        "material hss|carbide",
        "What its edges are made of.",
      ),
      amount(
        "chamfer",
        "ChamferFact",
        "chamfer LENGTH",
        "Length of its bevel: the hole is not to size over it.",
      ),
      amount(
        "point",
        "PointFact",
        "point LENGTH",
        "Length ahead of the bevel.",
      ),
      size(
        "flutes",
        "FlutesFact",
        "flutes COUNT straight|left|right",
        "Number of flutes, and their hand.",
      ),
      amount(
        "stock",
        "StockFact",
        "stock LEAST to MOST",
        "What it takes off, on diameter.",
      ),
      size(
        "expands",
        "ExpandsFact",
        "expands LEAST to MOST",
        "The range over which an adjustable reamer can be set.",
      ),
      NOTE,
    ],
  },
  {
    kind: "pilot",
    rule: "PilotEntry",
    form: "pilot NAME",
    means: "A pilot of the crib, that guides a reamer.",
    facts: [
      size("od", "OdFact", "od LOW to HIGH", "Its diameter."),
      READ,
      LENGTH,
      NOTE,
    ],
  },
  {
    kind: "gauge",
    rule: "GaugeEntry",
    form: "gauge NAME",
    means: "A micrometer, bore gauge, plug or indicator of the crib.",
    facts: [
      fact(
        "kind",
        "KindFact",
        "kind micrometer|bore-gauge|plug|indicator|air",
        "What sort of gauge it is.",
      ),
      size(
        "resolution",
        "ResolutionFact",
        "resolution VALUE",
        "The least step that it shows.",
      ),
      amount(
        "uncertainty",
        "UncertaintyFact",
        "uncertainty VALUE",
        "From its certificate: expanded uncertainty U, k = 2.",
      ),
      amount(
        "mpe",
        "MpeFact",
        "mpe VALUE",
        "Largest error that it may show, from its maker or standard.",
      ),
      fact(
        "adds",
        "AddsFact",
        "adds VALUE",
        "Correction that is added to its readings.",
      ),
      size(
        "set",
        "SetFact",
        "set on ring SIZE",
        "What a comparing gauge was set on: a ring, or `set with` another gauge, whose correction it then takes over.",
      ),
      fact(
        "calibrated",
        "CalibratedFact",
        "calibrated DATE",
        "When it was last calibrated.",
      ),
      fact("due", "DueFact", "due DATE", "When it is to be calibrated again."),
      NOTE,
    ],
  },
  {
    kind: "material",
    rule: "MaterialEntry",
    form: "material NAME",
    means: "A material of the shop's own.",
    facts: [
      size(
        "expansion",
        "ExpansionFact",
        "expansion VALUE",
        "Coefficient of thermal expansion.",
      ),
      size("modulus", "ModulusFact", "modulus VALUE", "Young's modulus."),
      amount("poisson", "PoissonFact", "poisson VALUE", "Poisson's ratio."),
      size("yield", "YieldFact", "yield VALUE", "Yield strength."),
      size(
        "specific-load",
        "SpecificLoadFact",
        "specific-load VALUE",
        "Largest load on the projected area.",
      ),
      size(
        "speed",
        "MaterialSpeedFact",
        "speed VALUE",
        "Largest surface speed.",
      ),
      size("pv", "PvFact", "pv VALUE", "Largest pressure times speed."),
      NOTE,
    ],
  },
  {
    kind: "oil",
    rule: "OilEntry",
    form: "oil NAME",
    means: "An oil of the shop's own.",
    facts: [
      fact(
        "grade",
        "GradeFact",
        "grade ISO VG NUMBER",
        "Its grade, `ISO VG 46` or `SAE 30`.",
      ),
      size(
        "viscosity",
        "ViscosityFact",
        "viscosity VALUE at TEMPERATURE, VALUE at TEMPERATURE",
        "Viscosity at two temperatures.",
      ),
      size("density", "DensityFact", "density VALUE", "Density at 15 °C."),
      NOTE,
    ],
  },
  {
    kind: "route",
    rule: "RouteEntry",
    form: "route NAME",
    means: "Steps used again from job to job, in order.",
    facts: [
      facts("step", "RouteStepFact", "step NAME", "A step of the route."),
      NOTE,
    ],
  },
  {
    kind: "lesson",
    rule: "LessonEntry",
    form: "lesson NAME",
    means:
      "What the shop's own records teach of a reamer, of a size of bush, or of two gauges; `thou learn` writes it.",
    facts: [
      fact(
        "reamer",
        "LessonReamerFact",
        "reamer REAMER in MATERIAL",
        "The reamer that it is about, and the material that it cuts.",
      ),
      fact(
        "oversize",
        "LessonOversizeFact",
        "oversize mean VALUE spread VALUE from COUNT",
        "What the reamer cuts over its own size: the mean, the standard deviation of one cut, and of how many cuts; of a single cut without `spread`.",
      ),
      fact(
        "bush",
        "LessonBushFact",
        "bush MATERIAL solid|wrapped|porous|lined SIZE by SIZE [lot NUMBER]",
        "The bushes that it is about: material, construction, outside by inside diameter, and the lot where it is about one lot.",
      ),
      fact(
        "closes",
        "LessonClosesFact",
        "closes RATIO spread RATIO from COUNT",
        "How much such bushes close when pressed, as a share of what Lamé's rings foretell: mean, standard deviation of one bush, and of how many.",
      ),
      fact(
        "gauge",
        "LessonGaugeFact",
        "gauge GAUGE against GAUGE",
        "Two gauges that read the same places.",
      ),
      fact(
        "reads",
        "LessonReadsFact",
        "reads VALUE spread VALUE from COUNT",
        "What the first gauge reads over the second: the mean, the standard deviation of one time, and of how many times.",
      ),
      fact(
        "between",
        "BetweenFact",
        "between DATE and DATE",
        "The days of the first and the last reading that it was learned from.",
      ),
      NOTE,
    ],
  },
];

const BY_KIND: ReadonlyMap<string, EntrySpec> = new Map(
  ENTRIES.map((entry) => [entry.kind, entry]),
);
const BY_WORD: ReadonlyMap<string, ReadonlyMap<string, FactSpec>> = new Map(
  ENTRIES.map((entry) => [
    entry.kind,
    new Map(entry.facts.map((spec) => [spec.word, spec])),
  ]),
);

/** The entry that a word in column 1 opens. */
export function entrySpec(word: string): EntrySpec | undefined {
  return BY_KIND.get(word);
}

/** What a word says in an entry of this kind. */
export function factSpec(kind: EntryKind, word: string): FactSpec | undefined {
  return BY_WORD.get(kind)?.get(word);
}

/** What the first word of a line says: of the line that opens a block, or of another one of an entry of this kind. */
export function lineSpec(
  kind: EntryKind | undefined,
  word: string,
  opens: boolean,
): EntrySpec | FactSpec | undefined {
  if (opens) return entrySpec(word);
  return kind === undefined ? undefined : factSpec(kind, word);
}

/** The kinds of entry that take this word as a fact. */
export function kindsWithFact(word: string): readonly EntryKind[] {
  return ENTRIES.filter((entry) =>
    entry.facts.some((spec) => spec.word === word),
  ).map((entry) => entry.kind);
}

/** The facts whose form has a word that begins no line, as `blind` of a hole's `depth`; CAPITALS, which stand for what is filled in, are no such words. */
export function factsWithin(
  word: string,
): readonly { readonly kind: EntryKind; readonly fact: FactSpec }[] {
  if (word !== word.toLowerCase()) return [];
  return ENTRIES.flatMap(({ kind, facts }) =>
    facts
      .filter(({ form }) => form.split(/[^\p{L}\d-]+/u).includes(word))
      .map((fact) => ({ kind, fact })),
  );
}

/** The kinds of entry that a place of thou.ohm takes, by the rule of the place. */
export const REFERENCE_PLACES: Readonly<Record<string, readonly EntryKind[]>> =
  {
    partRef: ["part"],
    journalRef: ["journal"],
    holeRef: ["hole"],
    bushRef: ["bush"],
    boreRef: ["bore"],
    boreHost: ["bush", "part"],
    pressRef: ["press"],
    lineRef: ["line"],
    stepRef: ["step"],
    routeRef: ["route"],
    reamerRef: ["reamer"],
    pilotRef: ["pilot"],
    gaugeRef: ["gauge"],
    materialRef: ["material"],
    oilRef: ["oil"],
    entryRef: ENTRY_KINDS,
    fullRef: ENTRY_KINDS,
  };

/** Words that no entry can be named, because they open a clause. */
export const CLAUSE_WORDS: readonly string[] = [
  "in",
  "on",
  "of",
  "to",
  "from",
  "at",
  "with",
  "by",
  "after",
  "station",
  "per",
  "as",
];
