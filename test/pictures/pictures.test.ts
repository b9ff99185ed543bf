// Every picture of every sample, the damaged ones among them: well formed by another's parser, every number a number, everything inside the
// frame, named for those who can't see it.
import { describe, expect, test } from "vitest";
import { fitPicture } from "../../server/pictures/pictures.ts";
import { escaped } from "../../server/markup/html.ts";
import { samples } from "../samples.ts";
import { all, numberOf, readSvg, textOf, titleOf } from "./read-svg.ts";
import { picturesOf, sampleShop, textShop } from "./shop.ts";

const NUMBERS = [
  "x",
  "y",
  "x1",
  "y1",
  "x2",
  "y2",
  "cx",
  "cy",
  "r",
  "width",
  "height",
];

describe.each(samples)("$path", ({ path }) => {
  test.each([
    { theme: "editor", width: 250 },
    { theme: "paper", width: 360 },
    { theme: "editor", width: 720 },
  ] as const)("$theme at $width", (options) => {
    for (const [what, markup] of picturesOf(sampleShop(path), options)) {
      const svg = readSvg(markup);
      expect(svg.attributes.role, what).toBe("img");
      expect(svg.attributes["aria-label"], what).toBeTruthy();
      expect(titleOf(svg), what).toBe(svg.attributes["aria-label"]);
      expect(markup, what).not.toMatch(/NaN|Infinity|undefined|\[object/);
      const height = numberOf(svg, "height");
      for (const each of all(svg)) {
        for (const name of NUMBERS) {
          if (each.attributes[name] !== undefined)
            expect(
              Number.isFinite(numberOf(each, name)),
              `${what}: ${name}`,
            ).toBe(true);
        }
        if (each.name === "rect") {
          // no browser draws one that has no width or no height
          expect(numberOf(each, "width"), what).toBeGreaterThan(0);
          expect(numberOf(each, "height"), what).toBeGreaterThan(0);
          expect(
            numberOf(each, "x") + numberOf(each, "width"),
            what,
          ).toBeLessThanOrEqual(options.width + 0.01);
          expect(
            numberOf(each, "y") + numberOf(each, "height"),
            what,
          ).toBeLessThanOrEqual(height + 0.01);
          expect(
            Math.min(numberOf(each, "x"), numberOf(each, "y")),
            what,
          ).toBeGreaterThanOrEqual(-0.01);
        }
        // a letter is about half as wide as it is high
        if (
          each.name === "text" &&
          each.attributes["text-anchor"] === undefined
        )
          expect(
            numberOf(each, "x") +
              each.text.length *
                Number(each.attributes["font-size"] ?? 12) *
                0.5,
            `${what}: ${each.text}`,
          ).toBeLessThanOrEqual(options.width);
        // what a policy against inline styles and scripts would refuse
        expect(
          Object.keys(each.attributes).filter(
            (name) => name === "style" || name.startsWith("on"),
          ),
        ).toEqual([]);
        expect(["style", "script", "foreignObject"]).not.toContain(each.name);
      }
    }
  });
});

test("the members of a stack are told in full at any width, each over its own bar", () => {
  const shop = textShop(`job w
  units mm
part shaft
part case
stack output-float-of-the-gearbox
  plus shoulders-of-the-housing 182.4 to 182.5
  minus shoulders-of-the-shaft 141.5 to 141.6
  minus spacer 40.2 to 40.3
  want 0.1 to 0.9
`);
  const svg = readSvg(
    picturesOf(shop, { theme: "paper", width: 250 }).find(([what]) =>
      what.startsWith("stack"),
    )?.[1] ?? "",
  );
  const texts = all(svg).filter(({ name }) => name === "text");
  expect(texts.map(({ text }) => text).join(" ")).toContain(
    "plus shoulders-of-the-housing 182.400 to 182.500 mm, predicted from its limits",
  );
  for (const each of texts.filter(
    ({ attributes }) => attributes["text-anchor"] === undefined,
  ))
    expect(numberOf(each, "x") + each.text.length * 5.5).toBeLessThan(250);
  const bars = all(svg).filter(
    ({ name, attributes }) => name === "rect" && attributes.height === "8",
  );
  expect(bars).toHaveLength(3);
  // each bar lies under the last line of its own words and over the first of the next
  const [, second, third] = ["plus", "minus", "minus"].map((_, index) =>
    numberOf(
      texts.filter(({ text }) => /^(?:plus|minus) /u.test(text))[index] ?? svg,
      "y",
    ),
  );
  const tops = bars.map((each) => numberOf(each, "y"));
  expect(tops[0]).toBeLessThan((second ?? 0) - 11);
  expect(tops[1]).toBeLessThan((third ?? 0) - 11);
});

test("the words of a stack's members have a rim that the lines down to them end at", () => {
  const [, markup = ""] =
    picturesOf(sampleShop("shop/gearbox-float.thou"), {
      theme: "paper",
      width: 340,
    }).find(([what]) => what.startsWith("stack")) ?? [];
  const words = all(readSvg(markup)).filter(
    ({ name, text }) => name === "text" && /^(?:plus|minus) /u.test(text),
  );
  expect(words).toHaveLength(5);
  for (const { attributes, text } of words)
    expect(attributes["paint-order"], text).toBe("stroke");
});

test("the samples have pictures of every kind", () => {
  const count = samples.flatMap(({ path }) =>
    picturesOf(sampleShop(path), { theme: "paper", width: 360 }),
  );
  expect(count.length).toBeGreaterThan(15);
});

test("paper has no colour but black, white and a grey that a copier keeps, and the editor's picture none of its own but as a last resort", () => {
  const shop = sampleShop("shop/winch.thou");
  for (const [what, markup] of picturesOf(shop, {
    theme: "paper",
    width: 360,
  })) {
    const colours = [...markup.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(
      (match) => match[1],
    );
    expect(new Set(colours), what).toEqual(
      new Set(
        [...new Set(colours)].filter((each) =>
          /^(?:none|#(?:000|333|666|fff))$/.test(each ?? ""),
        ),
      ),
    );
  }
  for (const [what, markup] of picturesOf(shop, {
    theme: "editor",
    width: 360,
  })) {
    const colours = [...markup.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map(
      (match) => match[1],
    );
    expect(
      colours.filter(
        (each) => each !== "none" && each?.startsWith("var(--") !== true,
      ),
      what,
    ).toEqual([]);
  }
});

describe("texts", () => {
  const HOSTILE = `<b>&amp; "it's" ]]> </svg><script>alert(1)</script> \u0000\u0007\uFFFE \uD800\u001B\u007F\u009B\u202E \u{1F529}`;

  test("are escaped so that another's parser gives them back", () => {
    const back = readSvg(`<a t="${escaped(HOSTILE)}">${escaped(HOSTILE)}</a>`);
    // what XML does not allow, and what a terminal or a reader's eye would obey
    const gone = "\u0000\u0007\uFFFE\uD800\u001B\u007F\u009B\u202E";
    const kept = Array.from(HOSTILE, (sign) =>
      gone.includes(sign) ? "\uFFFD" : sign,
    ).join("");
    expect(back.attributes.t).toBe(kept);
    expect(back.text).toBe(kept);
    expect(back.children).toEqual([]);
  });

  test("a reading's place and an entry's name in any script stay text", () => {
    const shop = textShop(
      `job j\n  units mm\npart w\npart g\njournal välle-Я on w\n  limits 24.9 to 25\nbore b in g\n  limits 25.02 to 25.04\nfit f of journal välle-Я in bore b\n  want 0.02 to 0.14\n`,
    );
    const svg = readSvg(
      fitPicture(shop, "fit f", { theme: "paper", width: 700 }),
    );
    expect(textOf(svg)).toContain("välle-Я");
  });

  test("an entry that is not there is said, however it is called", () => {
    const name = `fit ${HOSTILE}`;
    const svg = readSvg(
      fitPicture(textShop("job j\n"), name, { theme: "paper", width: 400 }),
    );
    expect(svg.attributes["aria-label"]).toContain("There is no fit <b>");
    expect(all(svg).map((each) => each.name)).not.toContain("script");
  });
});
