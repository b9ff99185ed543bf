// A fit that runs in an oil with a film: one job in inch and its twin in millimetres.
import type { FileCheck } from "../../server/model/result.ts";
import { resultOf } from "./check-text.ts";

/** A journal or a bore: its length, its one size and its finish, as they are written. */
interface Written {
  readonly length: string;
  readonly size: string;
  readonly finish: string;
}

export interface FilmJob {
  readonly units?: "inch" | "mm";
  /** Whole lines below those of the job, and those of the shaft, the case and the fit. */
  readonly job?: string;
  readonly shaft?: string;
  readonly case?: string;
  readonly fit?: string;
  readonly journal: Written;
  readonly bore: Written;
  readonly load: string;
  /** Of the oil where it enters. */
  readonly at?: string;
}

/** The job, of whole lines. */
export function filmJob(written: FilmJob): string {
  const { units = "mm", journal, bore, load, at = "40 C" } = written;
  const { job = "", shaft = "", case: of = "", fit = "" } = written;
  return `
job winch-9
  units ${units}
${job}part layshaft
${shaft}part case
${of}journal front on layshaft
  length ${journal.length}
  limits ${journal.size} to ${journal.size}
  finish ${journal.finish}
bore front in case
  length ${bore.length}
  limits ${bore.size} to ${bore.size}
  finish ${bore.finish}
oil own
  viscosity 100 cSt at 40 C, 11 cSt at 100 C
  density 880 kg/m3
fit front of journal front in bore front
  runs 600 rpm
  load ${load} steady
  oil own at ${at}
  feed splash
${fit}`;
}

export const INCH = filmJob({
  units: "inch",
  journal: { length: "1.250", size: "0.8740", finish: "8 uin Ra" },
  bore: { length: "1.000", size: "0.8755", finish: "16 uin Ra" },
  load: "150 lbf",
  at: "104 F",
});

export const METRIC = filmJob({
  journal: { length: "31.75", size: "22.1996", finish: "0.2032 um Ra" },
  bore: { length: "25.4", size: "22.2377", finish: "0.4064 um Ra" },
  load: "667.233242907825 N",
});

export const FIT = "fit front";
export const LBF = 4.4482216152605;

export function nominal(check: FileCheck, kind: string): number {
  return Number(resultOf(check, FIT, kind)?.nominal);
}

/** The fit's facts replaced. */
export function fitWith(text: string, ...facts: readonly string[]): string {
  const at = text.indexOf("fit front of");
  const head = text.indexOf("\n", at);
  return `${text.slice(0, head)}\n${facts.map((fact) => `  ${fact}\n`).join("")}`;
}
