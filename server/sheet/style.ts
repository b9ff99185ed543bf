// How a sheet looks: on paper first, A4 or Letter, black on white, without colour or grey that a copier would lose. The screen gets the
// same page on a plain ground.
import { cssText } from "../markup/html.ts";

/**
 * The style of a page; `foot` and `date` stand in the margin of every page printed, with the page's number.
 * Sizes: no text that is to be read on the bench is under 9 pt.
 */
export function styleOf(foot: string, date: string): string {
  return `${STYLE}@page {
  margin: 14mm 12mm 16mm;
  @bottom-left { content: ${cssText(foot)}; font: 9pt ${FONT}; }
  @bottom-center { content: ${cssText(date)}; font: 9pt ${FONT}; }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 9pt ${FONT}; }
}
`;
}

const FONT = '"Liberation Sans", Arial, Helvetica, sans-serif';

const STYLE = `* { box-sizing: border-box; }
html { background: #fff; color: #000; font: 10.5pt/1.32 ${FONT}; font-variant-numeric: tabular-nums; }
/* the outer half of a frame on the edge of the page would not be printed */
body { margin: 0 auto; padding: 0 0.3mm; overflow-wrap: anywhere; }
h1, h2, h3, p, ul, ol, table, figure { margin: 0; }
h1 { font-size: 18pt; line-height: 1.15; }
h2 { font-size: 13pt; margin-top: 6mm; padding-bottom: 0.8mm; border-bottom: 0.6mm solid #000; break-after: avoid; }
h3 { font-size: 11pt; margin-top: 4mm; break-after: avoid; }
h3 small { font-size: 9.5pt; font-weight: normal; }
p { margin-top: 1.5mm; orphans: 2; widows: 2; }
.heads { break-after: avoid; break-inside: avoid; }
.small, .small td, .small th { font-size: 9pt; }
code { font: 0.92em "Liberation Mono", "Courier New", monospace; }
.small code { font-size: 9pt; }
ul, ol { padding-left: 6mm; }
li { margin-top: 0.8mm; break-inside: avoid; }
table { width: 100%; margin-top: 1.5mm; border-collapse: collapse; table-layout: fixed; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
/* no row of results stands alone at the foot of a page or at the head of the next, and what is said below them stands below a row */
.short tbody tr:first-child { break-after: avoid; }
.short tbody tr:last-child, .below { break-before: avoid; }
th, td { padding: 0.7mm 1.4mm; border: 0.2mm solid #000; text-align: left; vertical-align: top; }
thead th { font-size: 9pt; border-bottom-width: 0.5mm; vertical-align: bottom; }
.results td { font-size: 9.5pt; }
.results thead th { font-size: 10pt; }
.results .plain { font-size: 9pt; font-weight: normal; }
.facts, .facts td, .facts th { border: 0; }
.facts th, .facts td { padding: 0.4mm 3mm 0.4mm 0; font-size: 10pt; }
.facts th { width: 34mm; font-weight: normal; }
.standing th { width: 31mm; }
.sheet-head { border-bottom: 0.8mm solid #000; padding-bottom: 3mm; }
.kind { font-size: 10pt; letter-spacing: 0.06em; text-transform: uppercase; }
.written { font: 9pt "Liberation Mono", "Courier New", monospace; margin-bottom: 0.8mm; }
.reasons { margin-top: 1mm; }
.out { font-weight: bold; border: 0.5mm solid #000; padding: 0 1mm; }
.unsure { font-weight: bold; border: 0.3mm dashed #000; padding: 0 1mm; }
.box { display: inline-block; width: 4.2mm; height: 4.2mm; border: 0.35mm solid #000; vertical-align: -0.8mm; text-align: center; font: bold 10pt/3.6mm ${FONT}; }
.line { display: inline-block; width: 26mm; border-bottom: 0.25mm solid #000; height: 1.3em; vertical-align: baseline; }
.long { width: 46mm; }
.angle { width: 10mm; }
/* room for a pencil: lines 8 mm apart, and no word that asks for something parted from where that is written */
.pen { line-height: 8.4mm; margin-top: 0; break-inside: avoid; }
.ask { white-space: nowrap; }
figure { margin-top: 3mm; break-inside: avoid; }
figure svg { display: block; width: 100%; height: auto; max-height: 225mm; }
.pictures { display: flex; flex-wrap: wrap; gap: 3mm; }
.pictures figure { width: 100%; }
.pictures .beside { width: calc(50% - 1.5mm); }
figcaption { font-size: 9pt; margin-top: 1mm; break-before: avoid; }
.keep { break-inside: avoid; }
.columns { columns: 2; column-gap: 8mm; margin-top: 1.5mm; }
.columns h3:first-child { margin-top: 0; }
.rule { margin-top: 1.2mm; font-size: 9pt; break-inside: avoid; }
.rule div { margin-left: 4mm; }
.working p { font-size: 9pt; }
.cautions div { break-inside: avoid; margin-bottom: 2.2mm; font-size: 9.5pt; }
.fill td { height: 8.2mm; vertical-align: middle; padding: 0.5mm 1mm; }
.fill thead th { font-size: 9pt; padding: 0.6mm 1mm; }
.verdict { display: flex; justify-content: space-between; white-space: nowrap; font-size: 9pt; }
.verdict span { white-space: nowrap; }
.limits { display: flex; flex-wrap: wrap; gap: 0.5mm 6mm; margin-top: 1mm; padding: 1mm 2.5mm; border: 0.5mm solid #000; font-size: 11pt; break-inside: avoid; break-after: avoid; }
.limits b { font-size: 12pt; }
.end { margin-top: 6mm; padding-top: 1mm; border-top: 0.4mm solid #000; break-inside: avoid; }
@media screen {
  html { background: #e8e8e8; }
  body { background: #fff; min-height: 100vh; padding: 14mm 12mm; max-width: 210mm; }
}
/* narrower than the paper the page is read and not written on: its fields shrink */
@media screen and (max-width: 210mm) {
  body { padding: 4mm; }
  .ask { white-space: normal; }
  .line, .long { width: 17mm; }
}
/* and where its tables and its widest pictures would be squeezed until nobody could read them, each of them scrolls by itself */
@media screen and (max-width: 150mm) {
  .wide, figure { overflow-x: auto; }
  .wide table, figure svg { min-width: 142mm; }
  .pictures .beside { width: 100%; }
  .beside svg { min-width: 0; }
  .columns { columns: 1; }
}
/* the pictures are black on white; the colours of a reader's own are for the words */
@media screen and (forced-colors: active) {
  figure svg { forced-color-adjust: none; background: #fff; }
}
`;
