// A shipped oil as the film takes it.
import { oilBand, type OilBand } from "../../../server/core/film/viscosity.ts";
import { oil } from "../../../server/core/materials/oils.ts";
import { got } from "./got.ts";

export function grade(name: string): OilBand {
  const shipped = oil(name);
  if (shipped === undefined) throw new Error(`no oil ${name} is shipped`);
  return got(oilBand(shipped));
}
