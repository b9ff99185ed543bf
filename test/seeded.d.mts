export function evenFrom(seed: number): () => number;
