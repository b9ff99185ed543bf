// The tables of the archive: every column with its type, its unit and what it means. The page docs/archive-tables.md and the `schema.json` in
// an archive are made from this; rows.ts fills it. A change of a column here is a change of the contract: count SCHEMA up with it.

/** Counts up with every change of a table that a reader could notice. */
export const SCHEMA = 3;

export type ColumnType = "VARCHAR" | "INTEGER" | "DOUBLE" | "BOOLEAN" | "DATE";

export interface Column {
  readonly name: string;
  readonly type: ColumnType;
  /** SI, as results write it: "m", "degC", "1"; undefined where it is no quantity, or where another column says it. */
  readonly unit?: string;
  /** It may be null, and then says what `means` says of it. */
  readonly nullable?: boolean;
  readonly means: string;
}

export interface Table {
  readonly name: TableName;
  /** The schema that brought it; the first where left off. */
  readonly since?: number;
  /** One row for each of these. */
  readonly rows: string;
  readonly columns: readonly Column[];
  /** The columns after `record` that its rows are sorted by. */
  readonly order: readonly string[];
}

export const TABLE_NAMES = [
  "jobs",
  "uses",
  "entries",
  "links",
  "readings",
  "swings",
  "results",
  "workings",
  "needs",
  "findings",
  "steps",
  "concessions",
  "gauges",
] as const;
export type TableName = (typeof TABLE_NAMES)[number];

const RECORD: Column = {
  name: "record",
  type: "VARCHAR",
  means: "the file, as `jobs` names it",
};

const ENTRY: Column = {
  name: "entry",
  type: "VARCHAR",
  means: "full reference of the entry, such as `fit front`",
};

function text(name: string, means: string, nullable = false): Column {
  return { name, type: "VARCHAR", nullable, means };
}

function whole(name: string, means: string, nullable = false): Column {
  return { name, type: "INTEGER", nullable, means };
}

function day(name: string, means: string): Column {
  return { name, type: "DATE", nullable: true, means };
}

function flag(name: string, means: string, nullable = false): Column {
  return { name, type: "BOOLEAN", nullable, means };
}

function number(name: string, unit: string | undefined, means: string): Column {
  return {
    name,
    type: "DOUBLE",
    nullable: true,
    ...(unit === undefined ? {} : { unit }),
    means,
  };
}

export const TABLES: readonly Table[] = [
  {
    name: "jobs",
    rows: "record, a job or a crib",
    order: [],
    columns: [
      text(
        "record",
        "the file, from the folder that the archive names files from, with forward slashes",
      ),
      text(
        "kind",
        "`job`, or `shop` for a crib; null where neither opens it",
        true,
      ),
      text("name", "name of the job or shop; null where there is none", true),
      text("title", "its title; null where none is written", true),
      text(
        "units",
        "`inch` or `mm`, as the file writes lengths; null where neither",
        true,
      ),
      day(
        "opened",
        "the day it was opened; the partition `year` is its year, 0 where it is null",
      ),
      text("opened_by", "who opened it", true),
      text(
        "follows",
        "the route that it follows, such as `route line-ream`",
        true,
      ),
      whole(
        "errors",
        "findings that are errors, those accepted left out, as in the summary of `thou check`",
      ),
      whole("warnings", "findings that are warnings, likewise"),
      whole("information", "findings that inform, likewise"),
      whole("hints", "findings that hint, likewise"),
      whole("accepted", "findings that a concession accepts"),
      text("content", "SHA-256 of the file's bytes, in hexadecimal"),
      text("thou", "version of thou that worked it out"),
    ],
  },
  {
    name: "uses",
    rows: "file that a record uses, however far",
    order: ["used"],
    columns: [
      RECORD,
      text("used", "the file that is used, named as a record is"),
      text(
        "content",
        "SHA-256 of its bytes; null where it was not there or could not be read",
        true,
      ),
      text(
        "beside",
        "where it was not there, SHA-256 of the names of the records in its folder, sorted, with slashes between: the finding may name one of them",
        true,
      ),
    ],
  },
  {
    name: "entries",
    rows: "entry of a record's own file",
    order: ["number"],
    columns: [
      RECORD,
      whole("number", "its place in the file, from 1"),
      whole("line", "its first line in the file, from 1"),
      text(
        "kind",
        "`journal`, `fit` and so on; null where no known word opens it",
        true,
      ),
      text("name", "its name; null where it has none", true),
      text(
        "entry",
        "full reference, such as `fit front`; null where kind or name is missing",
        true,
      ),
      flag("counts", "it is the first of its name: only that has results"),
      flag(
        "damaged",
        "its opening line can't be read, or stands in the wrong place",
      ),
      text("serial", "serial of a part", true),
      text("lot", "lot that a bush was bought in", true),
    ],
  },
  {
    name: "links",
    rows: "reference that an entry makes to another",
    order: ["entry", "number"],
    columns: [
      RECORD,
      ENTRY,
      text(
        "fact",
        "word of the line that makes it, such as `ream`; `on` for the opening line",
      ),
      whole("number", "its place among the entry's references, from 1"),
      text(
        "target",
        "full reference of the other entry; null where it could not be told",
        true,
      ),
      text(
        "target_record",
        "the file that holds the other entry; null where none does, or where it ships with thou",
        true,
      ),
      text("written", "the name as it is written"),
    ],
  },
  {
    name: "readings",
    rows: "value of a `read` or `repeat` line",
    order: ["line", "number"],
    columns: [
      RECORD,
      ENTRY,
      whole("line", "line of the file, from 1"),
      text("fact", "`read` or `repeat`"),
      text("side", "of a bush: `od` or `id`", true),
      text("member", "of a stack: the member", true),
      text("place", "place along the length; null where it is not named", true),
      whole("number", "place of the value on its line, from 1"),
      number("value", "m", "as written, before any correction"),
      number("step", "m", "size of its last written digit"),
      number(
        "corrected",
        "m",
        "at 20 °C, with what the gauge and those it was set with add; null where that is not known",
      ),
      number(
        "station",
        "m",
        "where along the length; null where it is not written",
      ),
      text(
        "gauge",
        "the gauge, such as `gauge mic-1`; null where none is named or it could not be told",
        true,
      ),
      text("gauge_record", "the file that holds the gauge", true),
      number(
        "temperature",
        "degC",
        "of the part, and of the gauge where that has none of its own, as the line says; null where it does not",
      ),
      number(
        "gauge_temperature",
        "degC",
        "of the gauge, where the line says another; null where it does not",
      ),
      text(
        "stage",
        "`bought`, `pressed`, `roughed`, `finished` or `run`, the unwritten one filled in",
      ),
      day("taken", "the day it was taken"),
      text("taken_by", "who took it", true),
    ],
  },
  {
    name: "swings",
    since: 2,
    rows: "`swing` line of a journal, hole or bore",
    order: ["line"],
    columns: [
      RECORD,
      ENTRY,
      whole("line", "line of the file, from 1"),
      text("place", "place along the length; null where it is not named", true),
      number(
        "swing",
        "m",
        "how far the pointer went in one turn, as written; on diameter where the method is `three-points`",
      ),
      number("step", "m", "size of its last written digit"),
      text("method", "`vee` or `three-points`"),
      number("vee_angle", "rad", "included angle of the vee; null without one"),
      text(
        "indicator",
        "where the pointer stood to a vee: `opposite` or `between` its faces; null without one",
        true,
      ),
      whole("lobes", "how often the pointer rose in the turn"),
      number(
        "factor",
        "1",
        "how much larger the swing is than the radial roundness; null where the method is blind to so many lobes",
      ),
      number("roundness", "m", "radial, the swing over the factor; likewise"),
      text(
        "gauge",
        "the gauge, such as `gauge dti-1`; null where none is named or it could not be told",
        true,
      ),
      text("gauge_record", "the file that holds the gauge", true),
      text(
        "stage",
        "`bought`, `pressed`, `roughed`, `finished` or `run`, the unwritten one filled in",
      ),
      day("taken", "the day it was taken"),
      text("taken_by", "who took it", true),
    ],
  },
  {
    name: "results",
    rows: "result, as `thou check --format json` gives it",
    order: ["number"],
    columns: [
      RECORD,
      whole("number", "its place among the record's results, from 1"),
      ENTRY,
      text("kind", "what it is, such as `clearance`"),
      text(
        "about",
        "`of` in the JSON: a reference or a place where one entry has several",
        true,
      ),
      whole("hot_case", "`case` in the JSON: which `hot` line, from 1", true),
      number("low", undefined, "least; null where the status is `unknown`"),
      number("nominal", undefined, "middle, likewise"),
      number("high", undefined, "most, likewise"),
      text(
        "unit",
        "the unit of the three, SI: m, Pa, N, K, degC, W, m/s, Pa.m/s or 1",
      ),
      text("status", "`measured`, `predicted` or `unknown`"),
      text("verdict", "`in`, `out`, `unsure` or `none`"),
      text("text", "for a person, in the file's units"),
    ],
  },
  {
    name: "workings",
    rows: "step of the working of a result",
    order: ["result", "number"],
    columns: [
      RECORD,
      whole("result", "`number` of the result"),
      whole("number", "its place in the working, from 1"),
      text("formula", "the rule in words and signs"),
      text(
        "with_numbers",
        "`with` in the JSON: the same with this job's numbers",
      ),
      text(
        "source",
        "a standard with its clause, or where else it is from; empty where it is plain arithmetic",
      ),
    ],
  },
  {
    name: "needs",
    rows: "fact that would settle an unknown result",
    order: ["result", "number"],
    columns: [
      RECORD,
      whole("result", "`number` of the result"),
      whole("number", "its place among the needs, from 1"),
      text(
        "needs_entry",
        "`ref` in the JSON: the entry that the fact belongs to",
      ),
      text("fact", "the fact's word"),
      text("text", "for a person"),
    ],
  },
  {
    name: "findings",
    rows: "finding, as `thou check --format json` gives it",
    order: ["number"],
    columns: [
      RECORD,
      whole("number", "its place among the record's findings, from 1"),
      text("code", "which finding, as `thou explain` lists them"),
      text(
        "level",
        "`error`, `warning`, `information` or `hint`; an accepted one is information",
      ),
      whole("line", "where it is, from 1"),
      whole("first_column", "`column` in the JSON, from 1, in UTF-16 units"),
      whole("end_line", "`endLine` in the JSON"),
      whole("end_column", "`endColumn` in the JSON, exclusive"),
      text("message", "the sentence"),
      text(
        "entry",
        "full reference of the entry it is about; null where there is none",
        true,
      ),
      flag("accepted", "a signed concession accepts it"),
      text(
        "accepted_by",
        "name of that concession; null where none does",
        true,
      ),
    ],
  },
  {
    name: "steps",
    rows: "step of a job, those of its route among them",
    order: ["number"],
    columns: [
      RECORD,
      whole(
        "number",
        "its place in the order, from 1; those of the route first",
      ),
      ENTRY,
      text("text", "what is to be done; null where it is not written", true),
      flag("done", "it is done; one that failed is not"),
      day("done_on", "the day it was done"),
      text("done_by", "who did it", true),
      flag("failed", "it was found failed"),
      text("found", "what was found, in words", true),
      flag("next", "it is not done and waits for no other step"),
    ],
  },
  {
    name: "concessions",
    rows: "concession of a record",
    order: ["entry"],
    columns: [
      RECORD,
      ENTRY,
      text("name", "its name, as `findings.accepted_by` has it"),
      text(
        "code",
        "the finding that it allows; null where its line can't be read",
        true,
      ),
      text(
        "on_entry",
        "the entry that it is for; null where it could not be told",
        true,
      ),
      number(
        "bound",
        undefined,
        "up to which value; a bare number is a length where the finding takes one, in m",
      ),
      text(
        "bound_unit",
        "the unit of the bound, SI; null where it could not be told",
        true,
      ),
      text("why", "the reason that is written", true),
      text("signed_by", "who signed; null where nobody did", true),
      day("signed_on", "the day it was signed"),
    ],
  },
  {
    name: "gauges",
    rows: "gauge that a record's own file describes",
    order: ["gauge"],
    columns: [
      RECORD,
      text("gauge", "full reference, such as `gauge mic-1`"),
      text(
        "kind",
        "`micrometer`, `bore-gauge` and so on; null where it is not written",
        true,
      ),
      number("resolution", "m", "its smallest step"),
      number("uncertainty", "m", "U, k = 2"),
      number("mpe", "m", "largest permissible error"),
      number(
        "adds",
        "m",
        "correction that is added to its readings; 0 where none is written",
      ),
      day("calibrated", "the day of its calibration"),
      day("due", "the day up to which that holds"),
    ],
  },
];

export type Value = string | number | boolean | null;
/** Values in the order of the table's columns. Days are ISO 8601. */
export type Row = readonly Value[];
export type Rows = Readonly<Record<TableName, readonly Row[]>>;

export function tableNamed(name: TableName): Table {
  const table = TABLES.find((each) => each.name === name);
  if (table === undefined) throw new Error(`no table ${name}`);
  return table;
}

/** The schema as a file in the archive says it, for whoever reads it without this page. */
export function schemaText(): string {
  return `${JSON.stringify(
    {
      schema: SCHEMA,
      partition: {
        name: "year",
        type: "INTEGER",
        means: "year of jobs.opened; 0 where there is none",
      },
      tables: TABLES.map(({ name, rows, columns }) => ({
        name,
        oneRowForEach: rows,
        columns: columns.map((column) => ({
          name: column.name,
          type: column.type,
          unit: column.unit ?? null,
          nullable: column.nullable ?? false,
          means: column.means.replaceAll("`", ""),
        })),
      })),
    },
    undefined,
    2,
  )}\n`;
}
