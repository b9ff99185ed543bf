// One line of an entry as its facts are read off it: where its words lie, what is wrong with them, and the names that it refers to.
import type { Line } from "../../grammar/lines.ts";
import { nodesIn, type Node } from "../../grammar/tree.ts";
import {
  entrySpec,
  REFERENCE_PLACES,
  type EntryKind,
} from "../../grammar/vocabulary.ts";
import type { System } from "../core/quantity/show.ts";
import { namedSize } from "./classes.ts";
import type { FactReader } from "./fact-parts.ts";
import type { Problem } from "./problem.ts";
import type { RefSite, Span } from "./values.ts";

/** What an entry has to know of its file. */
export interface FileContext {
  readonly system: System | undefined;
  /** The file opens with a job: then a material without facts is a fact that lost its indent. */
  readonly isJob: boolean;
}

export class LineReading implements FactReader {
  readonly body: string;
  readonly system: System | undefined;
  readonly namedSize = namedSize;
  readonly #line: Line;
  readonly #number: number;
  readonly kind: EntryKind;
  readonly word: string;
  readonly #problems: Problem[];
  readonly #refs: RefSite[];

  constructor(
    line: Line,
    number: number,
    file: FileContext,
    kind: EntryKind,
    word: string,
    problems: Problem[],
    refs: RefSite[],
  ) {
    this.body = line.body;
    this.system = file.system;
    this.#line = line;
    this.#number = number;
    this.kind = kind;
    this.word = word;
    this.#problems = problems;
    this.#refs = refs;
  }

  spanOf(node: { readonly start: number; readonly end: number }): Span {
    return {
      line: this.#number,
      start: this.#line.indent + node.start,
      end: this.#line.indent + node.end,
    };
  }

  report(
    code: string,
    node: { readonly start: number; readonly end: number },
    data: Problem["data"],
  ): void {
    this.#problems.push({ code, span: this.spanOf(node), data });
  }

  ref(node: Node): RefSite {
    const all = nodesIn(node);
    const kind = all.find((each) => each.type === "kind");
    const name = all.findLast((each) => each.type === "name") ?? node;
    const site: RefSite = {
      span: this.spanOf(node),
      nameSpan: this.spanOf(name),
      kind:
        kind === undefined
          ? undefined
          : entrySpec(this.body.slice(kind.start, kind.end))?.kind,
      name: this.body.slice(name.start, name.end),
      takes: REFERENCE_PLACES[node.type] ?? [],
    };
    this.#refs.push(site);
    return site;
  }
}
