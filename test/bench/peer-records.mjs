// Documents of about so many lines for the servers beside ours, and the schema that they are checked by: a list of stock in JSON and in YAML,
// ten lines a piece as our records have blocks. Invented numbers, the same at every run.

const KINDS = ["bar", "tube", "ring", "plate"];

export const SCHEMA = {
  $schema: "http://json-schema.org/draft-07/schema#",
  type: "object",
  required: ["title", "pieces"],
  properties: {
    title: { type: "string", description: "What the list is of" },
    pieces: {
      type: "array",
      items: {
        type: "object",
        required: ["id", "kind", "outside"],
        additionalProperties: false,
        properties: {
          id: { type: "string", pattern: "^p\\d+$", description: "Its number" },
          kind: { enum: KINDS, description: "The form it comes in" },
          outside: {
            type: "number",
            exclusiveMinimum: 0,
            maximum: 200,
            description: "Outside diameter, mm",
          },
          inside: { type: ["number", "null"] },
          length: { type: "number" },
          count: { type: "integer", minimum: 0 },
          at: {
            type: "object",
            properties: { row: { type: "integer" }, bay: { type: "integer" } },
          },
          marks: { type: "array", items: { type: "string" } },
        },
      },
    },
  },
};

/** Every fortieth piece is larger than the schema allows, so that there is something to find. */
function piece(number) {
  return {
    id: `p${number}`,
    kind: KINDS[number % 4],
    outside: number % 40 === 0 ? 250.5 : 20 + (number % 97) / 8,
    inside: number % 3 === 0 ? null : 10 + (number % 31) / 16,
    length: 100 + ((number * 7) % 900),
    count: number % 12,
    row: number % 9,
    bay: number % 23,
    marks: [`heat ${number % 50}`, `lot ${number % 20}`],
  };
}

const jsonPiece = (number) => {
  const { id, kind, outside, inside, length, count, row, bay, marks } =
    piece(number);
  return `    {
      "id": "${id}",
      "kind": "${kind}",
      "outside": ${outside},
      "inside": ${inside},
      "length": ${length},
      "count": ${count},
      "at": { "row": ${row}, "bay": ${bay} },
      "marks": ${JSON.stringify(marks).replace(",", ", ")}
    }`;
};

const yamlPiece = (number) => {
  const { id, kind, outside, inside, length, count, row, bay, marks } =
    piece(number);
  return `  - id: ${id}
    kind: ${kind}
    outside: ${outside}
    inside: ${inside}
    length: ${length}
    count: ${count}
    at:
      row: ${row}
      bay: ${bay}
    marks: [${marks.join(", ")}]`;
};

const pieces = (lines, one) =>
  Array.from({ length: Math.ceil(lines / 10) }, (_, number) => one(number));

export const jsonRecord = (lines) =>
  `{\n  "title": "stock",\n  "pieces": [\n${pieces(lines, jsonPiece).join(",\n")}\n  ]\n}\n`;

export const yamlRecord = (lines) =>
  `title: stock\npieces:\n${pieces(lines, yamlPiece).join("\n")}\n`;
