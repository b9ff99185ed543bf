// Names that come up again and again and are to be told once: each is handed over with the answer after which it first came up.
export interface FreshNames {
  add(name: string): void;
  /** Those that came up first since the last call, in their order. */
  take(): readonly string[];
}

export function createFreshNames(): FreshNames {
  const known = new Set<string>();
  let fresh: string[] = [];
  return {
    add(name) {
      if (known.has(name)) return;
      known.add(name);
      fresh.push(name);
    },
    take() {
      const found = fresh;
      fresh = [];
      return found;
    },
  };
}
