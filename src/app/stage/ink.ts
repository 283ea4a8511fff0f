import {
  BackSide,
  Color,
  DoubleSide,
  LineBasicMaterial,
  LineDashedMaterial,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type ShaderMaterial,
  type Vector2,
} from "three";
import type { GapWord } from "../../studies/wording/gapTexts.ts";
import { bandMaterial } from "./bandMaterial.ts";
import { outlineMaterial } from "./outlineMaterial.ts";

/** What a solid is made of, as far as a drawing tells. */
export type Tone = "arm" | "knuckle" | "rod" | "tire" | "wheel" | "body";

/** Every material of the stage, one each, in the colors of the page. */
export interface Ink {
  /** Fills of opaque solids. */
  readonly solid: Readonly<Record<Tone, Material>>;
  /** Fills of solids that let what is behind them show through. */
  readonly veil: Readonly<Record<Tone, Material>>;
  /** Depth without color: keeps a veil's own far side from showing through it. */
  readonly depth: Material;
  /** Silhouettes by the state of what they are around. */
  readonly outline: Readonly<Record<GapWord, ShaderMaterial>>;
  /** Edges and marks on a surface, by state. */
  readonly edge: Readonly<Record<GapWord, Material>>;
  readonly gridLine: Material;
  /** Far faces of what is cut open, flat, so that it looks solid where it is cut. */
  readonly cutFace: Material;
  readonly centerLine: Material;
  /** Dashed outlines of a truck that is not the one shown. */
  readonly ghostLine: Material;
  /** Fill of the envelope, by bands of distance. */
  readonly band: ShaderMaterial;
  dispose(): void;
}

const TONES: readonly Tone[] = ["arm", "knuckle", "rod", "tire", "wheel", "body"];
const VEIL_OPACITY = { tire: 0.66, wheel: 0.55, body: 0.34, arm: 0.5, knuckle: 0.5, rod: 0.5 } as const;

/** Mixes the stage's materials from the page's own colors (custom properties of `element`). */
export function mixInk(element: Element, viewSize: Vector2): Ink {
  const style = getComputedStyle(element);
  const color = (name: string) => new Color(style.getPropertyValue(name).trim());
  // Fills are pushed back a hair, so that lines on a surface are in front of it.
  const fill = {
    side: DoubleSide,
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 1,
  } as const;
  // Called transparent, all that belongs to veils is drawn after the solids and in the order that `Solid` gives.
  const layered = { transparent: true } as const;
  const byTone = (make: (tone: Tone) => Material) =>
    Object.fromEntries(TONES.map((tone) => [tone, make(tone)])) as Record<Tone, Material>;
  const stateColors = { rubs: color("--rubs"), close: color("--close"), clear: color("--ink") };

  const solid = byTone((tone) => new MeshLambertMaterial({ color: color(`--tone-${tone}`), ...fill }));
  const veil = byTone(
    (tone) =>
      new MeshLambertMaterial({
        color: color(`--tone-${tone}`),
        ...fill,
        ...layered,
        opacity: VEIL_OPACITY[tone],
        depthWrite: false,
      }),
  );
  const depth = new MeshBasicMaterial({ ...fill, ...layered, colorWrite: false });
  const outline = {
    rubs: outlineMaterial(stateColors.rubs, viewSize, 2),
    close: outlineMaterial(stateColors.close, viewSize, 2),
    clear: outlineMaterial(stateColors.clear, viewSize, 1),
  };
  const edge = {
    rubs: new LineBasicMaterial({ color: stateColors.rubs, ...layered }),
    close: new LineBasicMaterial({ color: stateColors.close, ...layered }),
    clear: new LineBasicMaterial({ color: color("--ink-soft"), ...layered }),
  };
  const gridLine = new LineBasicMaterial({ color: color("--rule") });
  const cutFace = new MeshBasicMaterial({ color: color("--ink-soft"), side: BackSide });
  const centerLine = new LineBasicMaterial({ color: color("--ink-soft") });
  const ghostLine = new LineDashedMaterial({ color: color("--ink"), dashSize: 16, gapSize: 11, ...layered });
  const band = bandMaterial([color("--rubs"), color("--close"), color("--clear"), color("--ink-soft")]);
  const all = [
    ...[solid, veil, outline, edge].flatMap((set) => Object.values<Material>(set)),
    ...[depth, cutFace, gridLine, centerLine, ghostLine, band],
  ];
  return {
    ...{ solid, veil, depth, cutFace, outline, edge, gridLine, centerLine, ghostLine, band },
    dispose: () => {
      for (const material of all) material.dispose();
    },
  };
}
