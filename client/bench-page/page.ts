/// <reference lib="dom" />
// The script of the bench view's page: shows what the extension sends and replaces only what changed, so that neither the place that is
// scrolled to nor the focus is lost; keeps a picture that a damaged line took away, marked as old; tells clicks and its own width.
import type { BenchSection } from "../../server/protocol/bench.ts";
import type { FromPage, ToPage } from "./messages.ts";

interface Host {
  postMessage(message: FromPage): void;
  getState(): unknown;
  setState(state: { readonly uri: string; readonly scroll: number }): void;
}
declare function acquireVsCodeApi(): Host;

const host = acquireVsCodeApi();
const title = byId("title");
const file = byId("file");
const notice = byId("notice");
const jump = byId("jump");
const main = byId("sections");

/** The section that was last drawn whole, by key and name. */
const whole = new Map<string, string>();
/** What stands in each section now. */
const standing = new Map<string, string>();
let uri = "";
let scrollTo = scrollBefore();

window.addEventListener("message", ({ data }: MessageEvent<ToPage>) => {
  if (data.type === "view") show(data);
  else if (data.type === "old") tell(data.notice, data.restart);
  else {
    clear();
    tell(data.notice, false);
  }
});

document.addEventListener("click", ({ target }) => {
  if (!(target instanceof Element)) return;
  const to = target.closest("[data-jump]")?.getAttribute("data-jump");
  if (typeof to === "string") {
    jumpTo(to);
    return;
  }
  const ref = target.closest("[data-ref]")?.getAttribute("data-ref");
  if (typeof ref === "string") host.postMessage({ type: "go", ref });
});

let settling: ReturnType<typeof setTimeout> | undefined;
let told = 0;
new ResizeObserver(() => {
  clearTimeout(settling);
  settling = setTimeout(() => {
    tellWidth(false);
  }, 100);
}).observe(document.body);
document.addEventListener("scroll", remember, { passive: true });
tellWidth(true);

function tellWidth(fresh: boolean): void {
  const width = main.clientWidth;
  if (!fresh && width === told) return;
  told = width;
  host.postMessage({ type: "width", width, fresh });
}

function show({
  view,
  uri: now,
  file: name,
}: Extract<ToPage, { type: "view" }>): void {
  if (uri !== now) whole.clear();
  uri = now;
  title.textContent = view.title;
  file.textContent = name;
  tell("", false);
  const focus = focused();
  const shown = view.sections.map((section) => drawn(section));
  shown.forEach((element, index) => {
    if (main.children[index] !== element)
      main.insertBefore(element, main.children[index] ?? null);
  });
  while (shown.length < main.children.length) main.lastElementChild?.remove();
  for (const key of standing.keys()) {
    if (!view.sections.some((section) => section.key === key))
      standing.delete(key);
  }
  listSections(view.sections);
  refocus(focus);
  if (scrollTo !== undefined) window.scrollTo(0, scrollTo);
  scrollTo = undefined;
  remember();
}

/** The element of a section, its content replaced only where it changed. */
function drawn(section: BenchSection): Element {
  const id = `${section.key}\n${section.name}`;
  const before = section.unread ? whole.get(id) : undefined;
  if (!section.unread) whole.set(id, section.html);
  const isOld = before !== undefined;
  const html = isOld
    ? `<p class="old-mark">Old: drawn before a line became unreadable.</p>${before}`
    : section.html;
  const element = sectionOf(section.key) ?? document.createElement("section");
  element.setAttribute("data-key", section.key);
  element.className = [
    ...(section.half ? ["half"] : []),
    ...(isOld ? ["old"] : []),
  ].join(" ");
  if (standing.get(section.key) !== html || element.parentElement === null) {
    // the server escapes every text in it, and the page's policy runs no script but this one
    const wasOpen = element.querySelector("details")?.open === true;
    element.innerHTML = html;
    const details = element.querySelector("details");
    if (wasOpen && details !== null) details.open = true;
    standing.set(section.key, html);
  }
  return element;
}

function sectionOf(key: string): Element | undefined {
  return Array.from(main.children).find(
    (each) => each.getAttribute("data-key") === key,
  );
}

function listSections(sections: readonly BenchSection[]): void {
  const names = sections.map(({ key, name }) => `${key}\n${name}`).join("\n");
  if (jump.dataset.names === names) return;
  jump.dataset.names = names;
  jump.replaceChildren(
    ...sections.map(({ key, name }) => {
      const button = document.createElement("button");
      button.type = "button";
      button.dataset.jump = key;
      button.textContent = name;
      return button;
    }),
  );
}

function jumpTo(key: string): void {
  const heading = sectionOf(key)?.querySelector("h2");
  heading?.scrollIntoView();
  heading?.focus({ preventScroll: true });
}

interface Focus {
  readonly key: string | undefined;
  readonly jump: string | undefined;
  readonly ref: string | undefined;
  readonly at: number;
}

/** What has the focus, so that it has it again when its section was replaced. */
function focused(): Focus | undefined {
  const active = document.activeElement;
  if (!(active instanceof HTMLElement) || active === document.body)
    return undefined;
  const section = active.closest("section");
  const ref = active.dataset.ref;
  const alike =
    section === null || ref === undefined ? [] : buttonsOf(section, ref);
  return {
    key: section?.dataset.key,
    jump: active.dataset.jump,
    ref,
    at: alike.indexOf(active),
  };
}

function refocus(focus: Focus | undefined): void {
  if (
    focus === undefined ||
    (document.activeElement !== null &&
      document.activeElement !== document.body)
  )
    return;
  if (focus.jump !== undefined) {
    const { jump: to } = focus;
    Array.from(jump.children)
      .find(
        (each): each is HTMLElement =>
          each instanceof HTMLElement && each.dataset.jump === to,
      )
      ?.focus({ preventScroll: true });
    return;
  }
  const section = focus.key === undefined ? undefined : sectionOf(focus.key);
  if (section === undefined) return;
  const alike = focus.ref === undefined ? [] : buttonsOf(section, focus.ref);
  const again = alike[focus.at] ?? alike[0] ?? section.querySelector("h2");
  again?.focus({ preventScroll: true });
}

function buttonsOf(section: Element, ref: string): readonly HTMLElement[] {
  return Array.from(
    section.querySelectorAll<HTMLElement>("button[data-ref]"),
  ).filter((each) => each.dataset.ref === ref);
}

function tell(text: string, restart: boolean): void {
  notice.textContent = text;
  document.body.classList.toggle(
    "old",
    text !== "" && main.children.length !== 0,
  );
  if (!restart) return;
  const button = document.createElement("button");
  button.type = "button";
  button.textContent = "Restart Server";
  button.addEventListener("click", () => {
    host.postMessage({ type: "restart" });
  });
  notice.append(" ", button);
}

function clear(): void {
  main.replaceChildren();
  jump.replaceChildren();
  delete jump.dataset.names;
  standing.clear();
  whole.clear();
  title.textContent = "Thou Bench";
  file.textContent = "";
}

function remember(): void {
  if (uri !== "") host.setState({ uri, scroll: window.scrollY });
}

function scrollBefore(): number | undefined {
  const state = host.getState();
  return typeof state === "object" &&
    state !== null &&
    "scroll" in state &&
    typeof state.scroll === "number"
    ? state.scroll
    : undefined;
}

function byId(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`the page has no ${id}`);
  return found;
}
