// A box of the editor's in which a person picks or types, as much as is used of it: a test is the person.
import { vi } from "vitest";

interface Item {
  readonly value: string;
  readonly label: string;
  readonly description?: string;
  readonly detail?: string;
}

/** As much of the editor's two boxes as is used of them. */
export class Box {
  title = "";
  step = 0;
  totalSteps = 0;
  ignoreFocusOut = false;
  buttons: readonly unknown[] = [];
  value = "";
  prompt = "";
  placeholder = "";
  items: readonly Item[] = [];
  activeItems: readonly Item[] = [];
  selectedItems: readonly Item[] = [];
  canSelectMany = false;
  matchOnDescription = false;
  matchOnDetail = false;
  validationMessage: { readonly message: string } | undefined;
  isDisposed = false;
  readonly #told = new Map<string, (what: unknown) => void>();
  readonly #on =
    (event: string) =>
    (does: (what: unknown) => void): { dispose: () => void } => {
      this.#told.set(event, does);
      return { dispose: () => this.#told.delete(event) };
    };
  readonly onDidAccept = this.#on("accept");
  readonly onDidHide = this.#on("hide");
  readonly onDidTriggerButton = this.#on("button");
  readonly onDidChangeValue = this.#on("value");

  /** The person does something; and what waits for it goes on. */
  async does(
    event: "accept" | "hide" | "button" | "value",
    what?: unknown,
  ): Promise<void> {
    this.#told.get(event)?.(what);
    await vi.waitFor(() => Promise.resolve());
  }
  listens(event: string): boolean {
    return this.#told.has(event);
  }
  show(): void {
    boxes.push(this);
  }
  dispose(): void {
    this.isDisposed = true;
  }
}

/** Those that were shown, the newest last. */
export const boxes: Box[] = [];
