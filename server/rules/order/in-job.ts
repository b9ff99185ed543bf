// Which steps the job itself writes: findings stand at those, and at its `follow` for what only the crib has.
import { entryOf, type Shop } from "../../model/shop.ts";

export function isInJob(shop: Shop, ref: string): boolean {
  // where an entry lies is no input of the graph: the entry is, and it is another one once it lies in another file
  return entryOf(shop, ref) !== undefined && shop.places.get(ref)?.file === 0;
}
