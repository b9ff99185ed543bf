import type { BuildOptions } from "esbuild";

export function session(outdir: string): BuildOptions;
export function serverOnNode(outdir: string, entry?: string): BuildOptions;
export function restOnNode(outdir: string): BuildOptions;
export function commandLine(outdir: string): BuildOptions;
export function serverInBrowser(outdir: string): BuildOptions;
export function clientInBrowser(outdir: string): BuildOptions;
export function bundles(outdir: string): readonly BuildOptions[];
