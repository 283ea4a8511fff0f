import type { AdjustersSetup } from "../../../setup/types/types.ts";
import type { AdjusterSetting } from "../../../studies/alignment/setSide.ts";
import { amountText, lengthText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { keepTogether } from "../../words/keyWords.ts";
import { ShimStack, shimPieces } from "./ShimStack.tsx";

type EccentricDialProps = {
  /** From the middle, mm. */
  setting: number;
  asBolted: number;
  /** How far it reaches to either side, mm. */
  reach: number;
};

const RADIUS = 24;
const CENTER = 32;

/** Where an eccentric of that reach points: it moves its pivot by reach × sin of the turn from the middle, which is up. */
function tip(setting: number, reach: number, radius: number): string {
  const turn = Math.asin(Math.min(1, Math.max(-1, setting / reach)));
  return `${CENTER + radius * Math.sin(turn)},${CENTER - radius * Math.cos(turn)}`;
}

/** The head of an eccentric bolt: its mark as set, and dashed as bolted on; both ends and the middle ticked. */
function EccentricDial({ setting, asBolted, reach }: EccentricDialProps) {
  return (
    <svg className="eccentric-dial" viewBox="0 0 64 64" aria-hidden="true" focusable="false">
      <circle className="shim-a" cx={CENTER} cy={CENTER} r={RADIUS} />
      <path className="dial-tick" d={`M${CENTER},2 V8 M2,${CENTER} H8 M62,${CENTER} H56`} />
      <path className="shim-before" d={`M${CENTER},${CENTER} L${tip(asBolted, reach, RADIUS)}`} />
      <path className="dial-mark" d={`M${CENTER},${CENTER} L${tip(setting, reach, RADIUS)}`} />
      <circle className="shim-frame" cx={CENTER} cy={CENTER} r={5} />
    </svg>
  );
}

type LegGaugeProps = {
  /** Change of length, mm. */
  setting: number;
  least: number;
  most: number;
};

const WIDTH = 112;
const MARGIN = 8;

/** A threaded leg's room to be set, from shortest to longest: a tick where it was measured, a mark where it is set. */
function LegGauge({ setting, least, most }: LegGaugeProps) {
  const x = (mm: number) => MARGIN + ((mm - least) / (most - least)) * (WIDTH - 2 * MARGIN);
  return (
    <svg className="leg-gauge" viewBox={`0 0 ${WIDTH} 30`} aria-hidden="true" focusable="false">
      <path className="dial-tick" d={`M${x(least)},9 V21 M${x(most)},9 V21 M${x(least)},15 H${x(most)}`} />
      <path className="shim-before" d={`M${x(0)},3 V27`} />
      <circle className="leg-mark" cx={x(setting)} cy={15} r={5} />
    </svg>
  );
}

/** mm. Less is nothing to be set. */
const NOTHING = 0.005;

/** What is to be done to come from one length to another: `add 1/32 in`; "as it is" when there is nothing to do. */
export function changeWords(
  change: number,
  [more, less]: readonly [more: string, less: string],
  format: LengthFormat,
): string {
  if (Math.abs(change) < NOTHING) return "as it is";
  return `${change > 0 ? more : less} ${amountText(change, format)}`;
}

export type SettingFigureProps = {
  adjusters: AdjustersSetup;
  adjuster: AdjusterSetting;
  side: "left" | "right";
  /** Length of the leg as set, mm; for legs that are set each by itself or together. */
  legLength: number | null;
  /** Fine enough for shims. */
  format: LengthFormat;
};

/** One thing that is set, drawn, with what it is set to and what that changes. */
export function SettingFigure({ adjusters, adjuster, side, legLength, format }: SettingFigureProps) {
  const { name, setting, asBolted, least, most } = adjuster;
  const text = (mm: number) => lengthText(mm, format);
  const change = setting - asBolted;
  const words = ((): readonly [value: string, note: string] => {
    switch (adjusters.kind) {
      case "shims": {
        const pieces = shimPieces(setting, adjusters.step);
        const sum =
          pieces.length > 1
            ? `${pieces.map((piece) => text(piece).replace(/ (in|mm)$/, "")).join(" + ")}; `
            : "";
        return [
          setting === 0 ? "no shims" : text(setting),
          `${sum}${changeWords(change, ["add", "take out"], format)}`,
        ];
      }
      case "eccentric": {
        const way =
          setting === 0 ? "in the middle" : `${setting > 0 ? "+" : ""}${text(setting)} from its middle`;
        return [way, changeWords(change, ["move by +", "move by −"], format)];
      }
      case "adjustableUpperArm":
        return [
          legLength === null ? changeWords(setting, ["longer by", "shorter by"], format) : text(legLength),
          changeWords(setting, ["longer by", "shorter by"], format),
        ];
    }
  })();
  return (
    <figure className="setting">
      {adjusters.kind === "shims" && (
        <ShimStack stack={setting} asBolted={asBolted} most={most} step={adjusters.step} />
      )}
      {adjusters.kind === "eccentric" && (
        <EccentricDial setting={setting} asBolted={asBolted} reach={adjusters.throw} />
      )}
      {adjusters.kind === "adjustableUpperArm" && <LegGauge setting={setting} least={least} most={most} />}
      <figcaption>
        <span className="setting-note">
          {side} {name}
        </span>
        <strong>{keepTogether(words[0])}</strong>
        <small className="setting-note">{keepTogether(words[1])}</small>
      </figcaption>
    </figure>
  );
}
