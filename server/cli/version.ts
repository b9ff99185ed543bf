// The version of the tool, from the package's own manifest: written in one place.
import manifest from "../../package.json" with { type: "json" };

export const version: string = manifest.version;
