// The job sheet: a record on paper, for the wall and for the file. It puts the sections together; each is in a file of its own.
import { asked, penLine } from "./blanks.ts";
import { LIMIT_OF_RECORD } from "../model/cautions.ts";
import type { OpenFile } from "../model/project.ts";
import type { FileCheck } from "../model/result.ts";
import {
  GENERATOR,
  jobName,
  subjectOf,
  titleOf,
  type SheetFacts,
} from "./facts.ts";
import { concessionsSection, findingsSection } from "./findings.ts";
import { headOfSheet } from "./head.ts";
import { el, page, type Child, type Markup } from "../markup/html.ts";
import { picturesOf } from "./pictures.ts";
import { materialsSection } from "./materials.ts";
import { notesSection, resultsSection } from "./results.ts";
import { createSources, sourcesSection } from "./sources.ts";
import { standing } from "./standing.ts";
import { stepsSection } from "./steps.ts";
import { styleOf } from "./style.ts";
import {
  assumptionsSection,
  budgetsSection,
  workingSection,
} from "./working.ts";

/** The record as one page of HTML that needs nothing else. */
export function jobSheet(
  open: OpenFile,
  check: FileCheck,
  facts: SheetFacts,
): string {
  const subject = subjectOf(open, check, facts);
  const sources = createSources();
  const title = titleOf(subject);
  const body: Child = [
    headOfSheet(subject, "Job sheet"),
    standing(subject),
    findingsSection(subject),
    stepsSection(subject),
    concessionsSection(subject),
    signatures(),
    resultsSection(subject, (refs) => picturesOf(subject, refs)),
    notesSection(subject),
    assumptionsSection(subject),
    materialsSection(subject, sources),
    budgetsSection(subject),
    workingSection(subject, sources),
    sourcesSection(sources),
  ];
  return page({
    title: `${title}: job sheet`,
    generator: `${GENERATOR} ${facts.version}`,
    style: styleOf(jobName(subject), `Job sheet, ${facts.date}`),
    body: el("main", {}, body),
  });
}

function signatures(): Markup {
  return el(
    "div",
    { class: "end" },
    penLine(asked("Work done as written, by", true), asked("on")),
    penLine(asked("Sheet checked by", true), asked("on")),
    el("p", {}, LIMIT_OF_RECORD),
  );
}
