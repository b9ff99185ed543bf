// Data: how reamers grow with heat, 1/K round room temperature. High-speed steel 11e-6 and cemented carbide 5.5e-6: typical, from memory;
// they differ by grade by a tenth or so, which over 20 K is a fifth of a micrometre on 25 mm.

export type ToolMaterial = "hss" | "carbide";

export const toolExpansion: Readonly<Record<ToolMaterial, number>> = {
  hss: 11e-6,
  carbide: 5.5e-6,
};
