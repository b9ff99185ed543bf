// How far a feature may wear before it is past use, and what of a size outside its limits is borne: as wear, or signed for.
import { metresToTenths } from "../../core/quantity/exact.ts";
import { given, type Entry } from "../entry.ts";
import { entryOf, type Shop } from "../shop.ts";
import { acceptedBy } from "./concessions.ts";
import { sizeOf } from "./size.ts";

/** The size past which a feature is worn: a journal's least, a hole's or bore's greatest; undefined where none is written that can be one. */
export function wearLimit(entry: Entry): number | undefined {
  return isWithinLimits(entry) ? undefined : writtenLimit(entry);
}

function writtenLimit(entry: Entry): number | undefined {
  const limit = given(entry, "ServiceLimitFact");
  if (limit.state !== "given") return undefined;
  return entry.kind === "journal" ? limit.value.low : limit.value.high;
}

/** Whether a part could be worn past its service limit as it is made, within its limits: one of the two is a slip. */
export function isWithinLimits(entry: Entry): boolean {
  const service = writtenLimit(entry);
  const limits = given(entry, "LimitsFact");
  if (service === undefined || limits.state !== "given") return false;
  const { low, high } = limits.value;
  return entry.kind === "journal"
    ? metresToTenths(low) < metresToTenths(service)
    : metresToTenths(service) < metresToTenths(high);
}

/** Whether a size (m) lies past the service limit; never where none is written. */
export function isPastService(entry: Entry, value: number): boolean {
  const service = wearLimit(entry);
  if (service === undefined) return false;
  const past = metresToTenths(value) - metresToTenths(service);
  return entry.kind === "journal" ? past < 0 : 0 < past;
}

/** Whether every reading outside its limits is wear within the service limit, or is within a signed concession. */
export function isBorne(shop: Shop, ref: string): boolean {
  const entry = entryOf(shop, ref);
  const size = sizeOf(shop, ref);
  if (entry === undefined || !size.known) return false;
  const limits = given(entry, "LimitsFact");
  if (limits.state !== "given") return false;
  const low = metresToTenths(limits.value.low);
  const high = metresToTenths(limits.value.high);
  const values = size.value.places.flatMap(({ readings }) =>
    readings.flatMap((each) => each.values),
  );
  return values.every((value) => {
    const tenths = metresToTenths(value);
    if (low <= tenths && tenths <= high) return true;
    const isWear = (entry.kind === "journal") === tenths < low;
    const isWorn = isWear && isPastService(entry, value);
    if (isWear && !isWorn && wearLimit(entry) !== undefined) return true;
    const code = isWorn ? "worn" : "reading-off-limits";
    return acceptedBy(shop, ref, { code, value }) !== undefined;
  });
}
