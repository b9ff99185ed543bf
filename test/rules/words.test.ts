// The tables of what people write for a unit or a word of the language, typed here the other way round: by what is meant.
import { describe, expect, test } from "vitest";
import type { Dimension } from "../../server/core/quantity/units.ts";
import {
  namesInCommon,
  nearest,
  otherNames,
} from "../../server/rules/text/near.ts";
import {
  dimensionNames,
  unitMeant,
  usualUnits,
} from "../../server/rules/text/unit-names.ts";

describe("a unit", () => {
  test.each<readonly [string, Dimension, readonly string[]]>([
    ["in", "length", ["inches", "Ins", "''", "”", "″"]],
    ["thou", "length", ["thous", "thousandths"]],
    ["uin", "length", ["microinch", "microinches", "uinch"]],
    [
      "um",
      "length",
      [
        "micron",
        "microns",
        "micrometre",
        "micrometres",
        "micrometer",
        "micrometers",
        "mu",
        "\u{B5}",
        "\u{3BC}",
      ],
    ],
    [
      "mm",
      "length",
      ["millimetre", "millimetres", "millimeter", "millimeters"],
    ],
    ["F", "temperature", ["degF", "deg F", "deg.F", "Fahrenheit"]],
    ["C", "temperature", ["degC", "Celsius", "centigrade"]],
    ["deg", "angle", ["degree", "degrees"]],
    ["lbf", "force", ["lb", "lbs", "pound", "pounds"]],
    ["N", "force", ["newton", "newtons"]],
    [
      "lbf-ft",
      "torque",
      [
        "ft-lb",
        "ft-lbs",
        "ft-lbf",
        "lb-ft",
        "lbs-ft",
        "ftlb",
        "ftlbs",
        "lbft",
        "lbfft",
        "lbf·ft",
      ],
    ],
    [
      "lbf-in",
      "torque",
      ["in-lb", "in-lbs", "in-lbf", "lb-in", "inlb", "inlbs"],
    ],
    ["N-m", "torque", ["Nm", "N·m"]],
    ["MPa", "pressure", ["N/mm2", "N/mm²"]],
    ["psi", "pressure", ["lb/in2", "lbf/in2"]],
    ["ksi", "pressure", ["kpsi"]],
    ["rpm", "rotation", ["rev", "rev/min", "r/min", "revs"]],
    ["per min", "frequency", ["/min", "cpm"]],
    ["ft/min", "speed", ["fpm", "sfm", "ft/m"]],
    ["m/min", "speed", ["mpm"]],
    ["m/s", "speed", ["m/sec", "mps"]],
    ["%", "ratio", ["percent", "pct"]],
    ["cSt", "viscosity", ["centistoke", "centistokes"]],
    ["cP", "dynamic-viscosity", ["centipoise"]],
    ["mPa-s", "dynamic-viscosity", ["mPa·s"]],
    [
      "um/m-K",
      "expansion",
      ["um/m/K", "um/mK", "um/m-C", "ppm/K", "ppm/C", "ppm/°C"],
    ],
    ["uin/in-F", "expansion", ["uin/in/F", "ppm/F", "ppm/°F"]],
    ["g/cm3", "density", ["g/cc", "g/ml", "kg/l", "kg/dm3"]],
    ["psi-ft/min", "pv", ["psi-fpm", "psi·fpm"]],
    ["sq-in", "area", ["in2", "in^2", "sqin"]],
    ["sq-ft", "area", ["ft2", "ft^2", "sqft"]],
    ["sq-m", "area", ["m2", "m^2", "sqm"]],
  ])(
    "%s has other ways to be written, which are sure where it fits and nowhere else",
    (unit, dimension, ways) => {
      for (const way of ways) {
        const meant = { words: [unit], same: true, note: undefined };
        expect(unitMeant(way, [dimension]), way).toEqual(meant);
        expect(unitMeant(way, []), way).toEqual(meant);
        const elsewhere: Dimension = dimension === "time" ? "length" : "time";
        expect(unitMeant(way, [elsewhere]).same, way).toBe(false);
        expect(unitMeant(way, [elsewhere]).words, way).not.toContain(unit);
      }
    },
  );

  test("that differs between countries is asked about", () => {
    for (const way of ["mil", "mils"])
      expect(unitMeant(way, ["length"])).toEqual({
        words: ["thou", "mm"],
        same: false,
        note: undefined,
      });
    expect(unitMeant("mil", ["force"]).words).not.toContain("thou");
  });

  test.each<readonly [string, Dimension, string]>([
    ["bar", "pressure", "1 bar is 0.1 MPa"],
    ["Pa", "pressure", "1 MPa is 1000000 Pa"],
    ["Mpsi", "pressure", "1 Mpsi is 1000 ksi"],
    ["kg/cm2", "pressure", "1 kgf/cm2 is 0.0980665 MPa"],
    ["kgf/cm²", "pressure", "1 kgf/cm2 is 0.0980665 MPa"],
    ["kg/mm2", "pressure", "1 kgf/mm2 is 9.80665 MPa"],
    ["kgf/mm2", "pressure", "1 kgf/mm2 is 9.80665 MPa"],
    ["kgf-m", "torque", "1 kgf-m is 9.80665 N-m"],
    ["kgf.m", "torque", "1 kgf-m is 9.80665 N-m"],
    ["cm2", "area", "1 sq-m is 10000 cm2"],
    ["mm²", "area", "1 sq-m is 1000000 mm2"],
    [
      "SUS",
      "viscosity",
      "what Saybolt seconds are in cSt hangs on how many they are (ASTM D2161)",
    ],
    [
      "SSU",
      "dynamic-viscosity",
      "what Saybolt seconds are in cSt hangs on how many they are (ASTM D2161)",
    ],
    ["kgf", "force", "1 kgf is 9.80665 N"],
    ["kp", "force", "1 kp is 9.80665 N"],
    ["kg", "force", "a mass of 1 kg weighs 9.80665 N"],
    ["ft", "length", "1 ft is 12 in"],
    ["Hz", "rotation", "one a second is 60 a minute"],
    ["Hz", "frequency", "one a second is 60 a minute"],
    ["rad", "angle", "1 rad is 57.2958 deg"],
  ])(
    "%s of %s is none here, and is told in those that are",
    (word, dimension, note) => {
      expect(unitMeant(word, [dimension])).toEqual({
        words: [],
        same: false,
        note,
      });
      expect(unitMeant(word, ["time"]).note).toBeUndefined();
      expect(unitMeant(word, []).note).toBeUndefined();
    },
  );

  test("misspelt is the nearest that fits, and sure where only its capitals differ", () => {
    expect(unitMeant("mpa", ["pressure"])).toEqual({
      words: ["MPa"],
      same: true,
      note: undefined,
    });
    expect(unitMeant("psj", ["pressure"])).toEqual({
      words: ["psi"],
      same: false,
      note: undefined,
    });
    expect(unitMeant("milimeters", ["length"])).toEqual({
      words: ["mm"],
      same: false,
      note: undefined,
    });
    expect(unitMeant("newtns", ["force"]).words).toEqual(["N"]);
    expect(unitMeant("newtns", ["length"]).words).not.toContain("N");
    expect(unitMeant("zzzzzzz", ["length"])).toEqual({
      words: [],
      same: false,
      note: undefined,
    });
    expect(unitMeant("constructor", ["length"])).toEqual({
      words: [],
      same: false,
      note: undefined,
    });
  });

  test("of each thing that is measured is offered in the order that the shop thinks in", () => {
    const offered = (system: string): Readonly<Record<string, string>> =>
      Object.fromEntries(
        (
          [
            "length",
            "temperature",
            "angle",
            "force",
            "torque",
            "pressure",
            "rotation",
            "frequency",
            "speed",
            "viscosity",
            "dynamic-viscosity",
            "expansion",
            "density",
            "area",
            "pv",
            "time",
            "ratio",
          ] as const
        ).map((each) => [
          dimensionNames([each]),
          usualUnits([each], system).join(" "),
        ]),
      );
    const both = {
      "an angle": "deg",
      "a turning speed": "rpm",
      "a rate of cycles": "per min",
      "a viscosity": "cP",
      "a density": "g/cm3 kg/m3",
      "a time": "h",
      "a share": "%",
    };
    expect(offered("inch")).toEqual({
      ...both,
      "a length": "in thou tenths mm um",
      "a temperature": "F C",
      "a force": "lbf N kN",
      "a torque": "lbf-ft lbf-in N-m",
      "a pressure": "psi ksi MPa GPa",
      "a speed": "ft/min m/min m/s",
      "an expansion": "uin/in-F um/m-K",
      "an area": "sq-in sq-ft sq-m",
      "a pressure times a speed": "psi-ft/min MPa-m/s",
    });
    expect(offered("mm")).toEqual({
      ...both,
      "a length": "mm um in thou",
      "a temperature": "C F",
      "a force": "N kN lbf",
      "a torque": "N-m lbf-ft",
      "a pressure": "MPa GPa psi",
      "a speed": "m/min m/s ft/min",
      "an expansion": "um/m-K uin/in-F",
      "an area": "sq-m sq-in sq-ft",
      "a pressure times a speed": "MPa-m/s psi-ft/min",
    });
    expect(usualUnits(["viscosity"], "mm")).toEqual(["cSt"]);
    expect(dimensionNames(["speed", "rotation"])).toBe(
      "a speed or a turning speed",
    );
    expect(dimensionNames(["viscosity", "dynamic-viscosity"])).toBe(
      "a viscosity",
    );
  });
});

describe("a word of the trade", () => {
  // what the language calls it, then what the trade does
  const MEANT: Readonly<Record<string, readonly string[]>> = {
    journal: ["shaft", "axle"],
    part: [
      "shaft",
      "axle",
      "spindle",
      "case",
      "housing",
      "casting",
      "component",
    ],
    hole: ["housing"],
    bush: ["bearing", "bushing", "sleeve", "liner"],
    gauge: ["gage", "micrometer", "mic"],
    reamer: ["tool"],
    oil: ["lubricant", "grease"],
    feed: ["grease", "lubrication"],
    step: ["operation", "op", "task"],
    job: ["record", "order"],
    shop: ["crib"],
    concession: ["deviation", "waiver"],
    want: ["clearance", "interference", "endplay", "target"],
    fit: ["clearance"],
    press: ["interference"],
    stack: ["endplay"],
    limits: [
      "diameter",
      "dia",
      "size",
      "tolerance",
      "tol",
      "limit",
      "nominal",
      "od",
      "id",
    ],
    size: ["diameter", "dia", "nominal", "od", "size"],
    // in capitals they stand for themselves
    runout: ["runout"],
    depth: ["depth"],
    speed: ["speed"],
    od: ["diameter", "dia", "size"],
    read: ["diameter", "dia", "measured", "measure", "reading"],
    finish: ["roughness", "surface", "ra"],
    fillet: ["radius"],
    reaches: ["depth"],
    bolts: ["torque", "clamped"],
    joint: ["gasket"],
    dowels: ["dowel"],
    runs: ["speed", "rpm", "turns", "rotates", "spins"],
    load: ["force"],
    temperature: ["temp"],
    hot: ["temp"],
    uncertainty: ["accuracy"],
    mpe: ["accuracy"],
    use: ["include", "import"],
    note: ["comment", "remark", "description"],
    title: ["name", "description"],
    do: ["description"],
    opened: ["date"],
    done: ["date", "signed"],
    calibrated: ["date"],
    units: ["unit"],
    why: ["signed", "reason"],
    modulus: ["young's"],
    expansion: ["cte"],
    chamfer: ["bevel", "lead"],
    point: ["tip"],
  };

  test.each(Object.entries(MEANT))(
    "%s has the trade's other names, and no other word has them",
    (word, names) => {
      const found = [...new Set(Object.values(MEANT).flat())].filter((name) =>
        otherNames(name.toUpperCase(), [word]).includes(word),
      );
      expect(found.sort()).toEqual([...names].sort());
      for (const name of names) expect(otherNames(name, [])).toEqual([]);
    },
  );

  test("keeps the order of what is meant most, and is never its own other name", () => {
    const all = Object.keys(MEANT);
    expect(otherNames("diameter", all)).toEqual([
      "limits",
      "size",
      "od",
      "read",
    ]);
    expect(otherNames("shaft", all)).toEqual(["journal", "part"]);
    expect(otherNames("size", all)).toEqual(["limits", "od"]);
    expect(otherNames("toString", all)).toEqual([]);
  });
});

describe("a word that is near another", () => {
  test("may differ by its capitals alone where it is one letter, by a slip or one letter where it is short, by a third where it is long", () => {
    expect(nearest("f", ["F", "C"])).toEqual(["F"]);
    expect(nearest("f", ["C"])).toEqual([]);
    expect(nearest("bor", ["bore"])).toEqual(["bore"]);
    expect(nearest("bux", ["bush"])).toEqual([]);
    expect(nearest("jurnal", ["journal"])).toEqual(["journal"]);
    expect(nearest("jurnel", ["journal"])).toEqual(["journal"]);
    expect(nearest("grein", ["groin", "green"])).toEqual(["groin", "green"]);
    expect(nearest("grein", ["greet"])).toEqual([]);
    expect(nearest("jrnl", ["journal"])).toEqual([]);
  });

  test("counts two letters changed about as one, a beginning of three as one, and case least", () => {
    expect(nearest("hoel", ["hole", "hoek"])).toEqual(["hole", "hoek"]);
    expect(nearest("abc", ["bac", "acb", "cab"])).toEqual(["bac", "acb"]);
    expect(nearest("jou", ["journal"])).toEqual(["journal"]);
    expect(nearest("jo", ["journal"])).toEqual([]);
    expect(nearest("Bore", ["bore", "bora"])).toEqual(["bore"]);
    expect(nearest("bore", ["bore", "Bore"])).toEqual(["bore"]);
    expect(nearest("bare", ["bore", "bara", "bars", "bard"])).toEqual([
      "bore",
      "bara",
      "bars",
    ]);
  });

  test("is, where it is short, what a slip of the hand makes of it", () => {
    // the next key: beside, above to either side, below to either side, and none farther
    expect(nearest("bash", ["bush"])).toEqual(["bush"]);
    expect(nearest("gole", ["hole"])).toEqual(["hole"]);
    expect(nearest("yole", ["hole"])).toEqual(["hole"]);
    expect(nearest("uole", ["hole"])).toEqual(["hole"]);
    expect(nearest("bole", ["hole"])).toEqual(["hole"]);
    expect(nearest("nole", ["hole"])).toEqual(["hole"]);
    expect(nearest("tole", ["hole"])).toEqual([]);
    expect(nearest("mole", ["hole"])).toEqual([]);
    expect(nearest("fole", ["hole"])).toEqual([]);
    expect(nearest("h-le", ["hole"])).toEqual([]);
    expect(nearest("b3", ["b1", "b2", "b4"])).toEqual(["b2", "b4"]);
    // a vowel for a vowel, where there are letters enough
    expect(nearest("beru", ["bera", "berk"])).toEqual(["bera"]);
    expect(nearest("hat", ["hot"])).toEqual([]);
    // a letter twice, or a neighbour's key with it
    expect(nearest("fiit", ["fit"])).toEqual(["fit"]);
    expect(nearest("fiot", ["fit"])).toEqual(["fit"]);
    expect(nearest("foit", ["fit"])).toEqual(["fit"]);
    expect(nearest("faut", ["fit", "fat"])).toEqual([]);
    expect(nearest("fita", ["fit"])).toEqual([]);
    expect(nearest("fits", ["fit"])).toEqual(["fit"]);
    // a letter left out, and no more than one
    expect(nearest("bsh", ["bush"])).toEqual(["bush"]);
    expect(nearest("bh", ["bush"])).toEqual([]);
  });

  test("shares a part of three letters or more, those with most in common first, whatever the spelling of the country", () => {
    expect(
      namesInCommon("grey-iron-cast", [
        "iron-a",
        "cast-iron",
        "bronze",
        "iron-b",
        "iron-c",
      ]),
    ).toEqual(["cast-iron", "iron-a", "iron-b"]);
    expect(namesInCommon("aluminum-7", ["aluminium-356", "x-7"])).toEqual([
      "aluminium-356",
    ]);
    expect(namesInCommon("st-37", ["st-44", "37-x"])).toEqual([]);
    expect(namesInCommon("irons", ["iron-a"])).toEqual([]);
  });
});
