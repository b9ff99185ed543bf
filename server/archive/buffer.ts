// What an export has at hand while a state is made: the engine, records that wait, and how they go into parts. So the engine holds one table of
// one part and no more, however many records there are.
import path from "node:path";
import { createChunks, type ChunkOptions, type Chunks } from "./chunks.ts";
import { openEngine, type Engine } from "./engine.ts";
import { createMerging, type Merging } from "./merging.ts";

export interface Buffer {
  readonly engine: Engine;
  readonly chunks: Chunks;
  readonly merging: Merging;
  close(): void;
}

/** @param options the folder is for what a sort can't hold in memory as well; what the engine puts in order counts as held */
export async function openBuffer(options: ChunkOptions): Promise<Buffer> {
  const { folder, disk, holds } = options;
  const engine = await openEngine({ scratch: path.join(folder, "scratch") });
  return {
    engine,
    chunks: createChunks(engine, options),
    merging: await createMerging(engine, disk, holds),
    close() {
      engine.close();
    },
  };
}
