import type { AdjustersSetup } from "../../../setup/types/types.ts";
import type { AdjusterSetting } from "../../../studies/alignment/setSide.ts";
import { lengthText } from "../../../studies/wording/lengths.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { keepTogether } from "../../words/keepTogether.ts";
import { changeWords } from "./changeWords.ts";
import { EccentricDial } from "./EccentricDial.tsx";
import { LegGauge } from "./LegGauge.tsx";
import { ShimStack } from "./ShimStack.tsx";
import { shimPieces } from "./shimPieces.ts";

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
