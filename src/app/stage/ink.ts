import {
  BackSide,
  Color,
  LineBasicMaterial,
  LineDashedMaterial,
  type Material,
  MeshBasicMaterial,
  NoBlending,
  type ShaderMaterial,
  type Vector2,
} from "three";
import type { GapWord } from "../../studies/wording/gapTexts.ts";
import type { PictureStyle } from "../state/preferences.ts";
import { bandMaterial } from "./bandMaterial.ts";
import { type Fills, mixFills, PUSHED } from "./fills.ts";
import { outlineMaterial } from "./outlineMaterial.ts";

/** Every material of the stage, one each, in the colors of the page. */
export interface Ink extends Fills {
  /** Depth without color: keeps a veil's own far side from showing through it. */
  readonly depth: Material;
  /** Silhouettes by the state of what they are around. */
  readonly outline: Readonly<Record<GapWord, ShaderMaterial>>;
  /** The same of what is a guess still, dashed. */
  readonly guess: Readonly<Record<GapWord, ShaderMaterial>>;
  /** Edges and marks on a surface, by state. */
  readonly edge: Readonly<Record<GapWord, Material>>;
  readonly gridLine: Material;
  /** Far faces of what is cut open, flat, so that it looks solid where it is cut. */
  readonly cutFace: Material;
  readonly centerLine: Material;
  /** Dashed outlines of a truck that is not the one shown. */
  readonly ghostLine: Material;
  /** How far a point may be from where it is drawn: over all else, since points lie inside parts. */
  readonly withinLine: Material;
  /** Fill of the envelope, by bands of distance. */
  readonly band: ShaderMaterial;
}

/** Pixels that a dash of a guess is long, and its gap. */
const DASH = 7;

/** Mixes the stage's materials from the page's own colors (custom properties of `element`). */
export function mixInk(element: Element, viewSize: Vector2, picture: PictureStyle): Ink {
  const style = getComputedStyle(element);
  const color = (name: string) => new Color(style.getPropertyValue(name).trim());
  // Called transparent, all that belongs to veils is drawn after the solids and in the order that `Solid` gives.
  const layered = { transparent: true } as const;
  const stateColors = { rubs: color("--rubs"), close: color("--close"), clear: color("--ink") };

  const fills = mixFills(picture, color);
  const depth = new MeshBasicMaterial({ ...PUSHED, ...layered, colorWrite: false, blending: NoBlending });
  const outline = {
    rubs: outlineMaterial(stateColors.rubs, viewSize, 2),
    close: outlineMaterial(stateColors.close, viewSize, 2),
    clear: outlineMaterial(stateColors.clear, viewSize, 1),
  };
  const guess = {
    rubs: outlineMaterial(stateColors.rubs, viewSize, 2, DASH),
    close: outlineMaterial(stateColors.close, viewSize, 2, DASH),
    clear: outlineMaterial(stateColors.clear, viewSize, 2, DASH),
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
  const withinLine = new LineBasicMaterial({ color: color("--focus"), depthTest: false, ...layered });
  const band = bandMaterial([color("--rubs"), color("--close"), color("--clear"), color("--ink-soft")]);
  const all = [
    ...[outline, guess, edge].flatMap((set) => Object.values<Material>(set)),
    ...[depth, cutFace, gridLine, centerLine, ghostLine, withinLine, band],
  ];
  return {
    ...fills,
    depth,
    cutFace,
    outline,
    guess,
    edge,
    gridLine,
    centerLine,
    ghostLine,
    withinLine,
    band,
    dispose: () => {
      fills.dispose();
      for (const material of all) material.dispose();
    },
  };
}
