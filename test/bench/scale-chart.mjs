// The chart of docs/scale.md: time of the processors and largest memory over the number of records. Both axes of the time go by tens, so that
// a cost in proportion is a line along the grey ones; the memory's own axis is even.

const FONT = "font-family='Helvetica, Arial, sans-serif'";
const INK = "#222";
const RULE = "#ddd";
/** A look for each: colours that differ for the colour-blind too, and a mark. */
const SERIES = [
  ["from nothing, 1 thread", "#0072b2", "circle"],
  ["from nothing, 2 threads", "#d55e00", "square"],
  ["from nothing, 1 thread, answers kept", "#56b4e9", "diamond"],
  ["1 in 100 changed", "#009e73", "circle"],
  ["none changed", "#cc79a7", "square"],
];
const WIDTH = 860;
const TOP = 46;
const BOTTOM = 330;
const LEGEND = 400;

const text = (x, y, words, more = "") =>
  `<text x="${x.toFixed(1)}" y="${y.toFixed(1)}" font-size="13" fill="${INK}" ${FONT} ${more}>${words}</text>`;
const line = (x1, y1, x2, y2, stroke, more = "") =>
  `<line x1="${x1.toFixed(1)}" y1="${y1.toFixed(1)}" x2="${x2.toFixed(1)}" y2="${y2.toFixed(1)}" stroke="${stroke}" ${more}/>`;

function mark(x, y, colour, shape) {
  const at = [x.toFixed(1), y.toFixed(1)];
  if (shape === "circle")
    return `<circle cx="${at[0]}" cy="${at[1]}" r="4.5" fill="${colour}"/>`;
  const turn = shape === "diamond" ? ` transform="rotate(45 ${at})"` : "";
  return `<rect x="${(x - 4).toFixed(1)}" y="${(y - 4).toFixed(1)}" width="8" height="8" fill="${colour}"${turn}/>`;
}

const byTens = (low, high, from, to) => (value) =>
  from + (Math.log(value / low) / Math.log(high / low)) * (to - from);
const even = (low, high, from, to) => (value) =>
  from + ((value - low) / (high - low)) * (to - from);
const tensIn = (low, high) =>
  [...Array(9).keys()]
    .map((power) => 10 ** (power - 2))
    .filter((ten) => low <= ten && ten <= high);

/** One panel: its frame, its marks along both axes, its lines. */
function panel({ title, rows, of, across, up, records, ups, left }) {
  const right = across(records.at(-1));
  const drawn = SERIES.flatMap(([what, colour, shape]) => {
    const points = rows
      .filter((row) => row.what === what)
      .map((row) => [across(row.records), up(of(row))]);
    if (points.length === 0) return [];
    const path = points.map((at) => at.map((n) => n.toFixed(1)).join(","));
    return [
      `<polyline points="${path.join(" ")}" fill="none" stroke="${colour}" stroke-width="2"/>`,
      ...points.map(([x, y]) => mark(x, y, colour, shape)),
    ];
  });
  return [
    text(left, TOP - 20, title, 'font-weight="bold"'),
    ...ups.flatMap((value) => [
      line(left, up(value), right, up(value), RULE),
      text(
        left - 8,
        up(value) + 4,
        value.toLocaleString("en-GB"),
        'text-anchor="end"',
      ),
    ]),
    ...records.flatMap((value) => [
      line(across(value), BOTTOM, across(value), BOTTOM + 5, INK),
      text(
        across(value),
        BOTTOM + 20,
        value.toLocaleString("en-GB"),
        'text-anchor="middle"',
      ),
    ]),
    line(left, BOTTOM, right, BOTTOM, INK),
    text((left + right) / 2, BOTTOM + 40, "records", 'text-anchor="middle"'),
    ...drawn,
  ];
}

/** @param rows as archive.json has them */
export function scaleChart(rows) {
  const known = rows.filter(({ what }) =>
    SERIES.some(([name]) => name === what),
  );
  const records = [...new Set(known.map((row) => row.records))];
  const times = known.map(({ processor }) => processor);
  const low = 10 ** Math.floor(Math.log10(Math.min(...times)));
  const high = 10 ** Math.ceil(Math.log10(Math.max(...times)));
  const most =
    100 * Math.ceil(Math.max(...known.map((row) => row.megabytes)) / 100);
  const [first, last] = [records[0], records.at(-1)];
  const left = byTens(first, last, 62, 410);
  const up = byTens(low, high, BOTTOM, TOP);
  // in proportion: ten times the records, ten times the time
  const inProportion = tensIn(low / 100, high).flatMap((start) => {
    const from = Math.max(1, low / start);
    const to = Math.min(last / first, high / start);
    return from < to
      ? [
          line(
            left(first * from),
            up(start * from),
            left(first * to),
            up(start * to),
            "#bbb",
            'stroke-dasharray="3 4"',
          ),
        ]
      : [];
  });
  const parts = [
    ...inProportion,
    ...panel({
      title: "Time of the processors, s (both axes by tens)",
      rows: known,
      of: (row) => row.processor,
      across: left,
      up,
      records,
      ups: tensIn(low, high),
      left: 62,
    }),
    ...panel({
      title: "Largest memory with all threads, MB",
      rows: known,
      of: (row) => row.megabytes,
      across: byTens(first, last, 520, 830),
      up: even(0, most, BOTTOM, TOP),
      records,
      ups: [...Array(most / 100 + 1).keys()].map((count) => count * 100),
      left: 520,
    }),
    ...SERIES.flatMap(([what, colour, shape], index) => {
      const x = 62 + (index % 3) * 270;
      const y = LEGEND + Math.floor(index / 3) * 22;
      return [
        line(x, y, x + 24, y, colour, 'stroke-width="2"'),
        mark(x + 12, y, colour, shape),
        text(x + 32, y + 4, what),
      ];
    }),
    line(
      62 + 540,
      LEGEND + 22,
      62 + 564,
      LEGEND + 22,
      "#888",
      'stroke-dasharray="3 4"',
    ),
    text(62 + 572, LEGEND + 26, "in proportion"),
  ];
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} 440" width="${WIDTH}" height="440" role="img" aria-label="Time and memory over the number of records">
<rect width="${WIDTH}" height="440" fill="#fff"/>
${parts.join("\n")}
</svg>
`;
}
