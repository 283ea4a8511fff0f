import {
  type Color,
  DoubleSide,
  type Material,
  MeshBasicMaterial,
  MeshLambertMaterial,
  type Texture,
} from "three";
import type { PictureStyle } from "../state/preferences.ts";
import { type Finish, litBall } from "./litBall.ts";
import { stuffMaterial } from "./stuffMaterial.ts";

/** What a solid is made of, as far as a drawing tells. */
export type Tone = "arm" | "knuckle" | "rod" | "tire" | "wheel" | "body";

const FINISH: Readonly<Record<Tone, Finish>> = {
  arm: "metal",
  knuckle: "metal",
  rod: "metal",
  wheel: "metal",
  tire: "rubber",
  body: "paint",
};

const TONES = Object.keys(FINISH) as readonly Tone[];

/** Of a drawing in lines a veil shows most of what is behind it; rubber and sheet a little. */
const OPACITY: Readonly<Record<PictureStyle, Readonly<Record<Tone, number>>>> = {
  lines: { tire: 0.66, wheel: 0.55, body: 0.34, arm: 0.5, knuckle: 0.5, rod: 0.5 },
  truck: { tire: 0.9, wheel: 0.86, body: 0.5, arm: 0.5, knuckle: 0.5, rod: 0.5 },
};

/**
 * Fills are pushed back a hair, so that lines on a surface are in front of it. What lies behind is kept off by depth (see
 * `Solid`): near faces need no turn of their own.
 */
export const PUSHED = {
  side: DoubleSide,
  forceSinglePass: true,
  polygonOffset: true,
  polygonOffsetFactor: 1,
  polygonOffsetUnits: 1,
} as const;

/** The fills of one style of picture. */
export interface Fills {
  readonly solid: Readonly<Record<Tone, Material>>;
  readonly veil: Readonly<Record<Tone, Material>>;
  /** A sheet whose corners say how much of it is there; drawn only, not measured. null = not drawn. */
  readonly fading: Material | null;
  /** What is cut into rubber, flat. null = not drawn. */
  readonly groove: Material | null;
  /** Shade on the floor; how dark, its corners say. null = not drawn. */
  readonly shade: Material | null;
  dispose(): void;
}

/** Mixes fills. @param color a custom property of the page by its name */
export function mixFills(style: PictureStyle, color: (name: string) => Color): Fills {
  const balls = new Map<string, Texture>();
  const lit = (name: string, finish: Finish, more: object) => {
    const ball = balls.get(name) ?? litBall(finish, color(name));
    balls.set(name, ball);
    return stuffMaterial(ball, { ...PUSHED, ...more });
  };
  const paint = (tone: Tone, more: object) =>
    style === "lines"
      ? new MeshLambertMaterial({ color: color(`--tone-${tone}`), ...PUSHED, ...more })
      : lit(`--stuff-${tone}`, FINISH[tone], more);
  const byTone = (more: (tone: Tone) => object) =>
    Object.fromEntries(TONES.map((tone): [Tone, Material] => [tone, paint(tone, more(tone))])) as Record<
      Tone,
      Material
    >;
  const solid = byTone(() => ({}));
  const veil = byTone((tone) => ({ transparent: true, opacity: OPACITY[style][tone], depthWrite: false }));
  const isTruck = style === "truck";
  const sheet = { transparent: true, depthWrite: false, vertexColors: true } as const;
  const fading = isTruck ? lit("--stuff-panel", "paint", sheet) : null;
  const groove = isTruck
    ? new MeshBasicMaterial({
        color: color("--stuff-groove"),
        transparent: true,
        side: DoubleSide,
        forceSinglePass: true,
        toneMapped: false,
      })
    : null;
  const shade = isTruck
    ? new MeshBasicMaterial({ color: color("--stuff-shade"), ...sheet, toneMapped: false })
    : null;
  const all = [...Object.values(solid), ...Object.values(veil), fading, groove, shade];
  return {
    solid,
    veil,
    fading,
    groove,
    shade,
    dispose() {
      for (const material of all) material?.dispose();
      for (const ball of balls.values()) ball.dispose();
    },
  };
}
