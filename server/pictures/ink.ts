// What the pictures are drawn with: the editor's own colours, or black on white for paper. Every meaning is carried by a word, a line style
// or a hatch as well, so that nothing is lost without colour.

export type Theme = "editor" | "paper";

export interface PictureOptions {
  /** "editor": the editor's own colours as CSS variables; "paper": black and greys on white. */
  readonly theme: Theme;
  /** In CSS pixels; `LEAST_WIDTH` is the least that is drawn. */
  readonly width: number;
}

export interface Ink {
  readonly text: string;
  readonly muted: string;
  readonly rule: string;
  readonly paper: string;
  readonly journal: string;
  readonly bore: string;
  readonly bush: string;
  readonly body: string;
  readonly wanted: string;
  readonly wrong: string;
  readonly font: string;
}

const INKS: Readonly<Record<Theme, Ink>> = {
  editor: {
    text: "var(--vscode-editor-foreground, #1f1f1f)",
    muted: "var(--vscode-descriptionForeground, #616161)",
    rule: "var(--thou-rule, var(--vscode-charts-lines, #8888))",
    paper: "var(--vscode-editor-background, #ffffff)",
    journal: "var(--vscode-charts-orange, #b5651d)",
    bore: "var(--vscode-charts-blue, #1a5fb4)",
    bush: "var(--vscode-charts-yellow, #8a6d00)",
    body: "var(--vscode-charts-foreground, #616161)",
    wanted: "var(--vscode-charts-green, #2e7d32)",
    wrong: "var(--vscode-errorForeground, #a1260d)",
    font: "var(--vscode-font-family, sans-serif)",
  },
  paper: {
    text: "#000",
    muted: "#333",
    rule: "#666",
    paper: "#fff",
    journal: "#000",
    bore: "#000",
    bush: "#000",
    body: "#000",
    wanted: "#000",
    wrong: "#000",
    font: "Helvetica, Arial, sans-serif",
  },
};

export function inkOf(theme: Theme): Ink {
  return INKS[theme];
}

/** Narrower than this a picture could not be read: it is drawn so wide and shrinks with its place. */
const LEAST_WIDTH = 250;

export function widthOf(options: PictureOptions): number {
  return Math.max(LEAST_WIDTH, Math.round(options.width) || LEAST_WIDTH);
}
