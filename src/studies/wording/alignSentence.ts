import type { Setup } from "../../setup/types/types.ts";
import { formatAngle } from "../../units/angle.ts";
import type { LengthFormat } from "../../units/formatLength.ts";
import type { SideAlignment, TruckAlignment } from "../alignment/alignSide.ts";
import type { AdjusterSetting } from "../alignment/setSide.ts";
import { sleeveTurns } from "../alignment/straightAhead.ts";
import type { Model } from "../model/model.ts";
import { amountWords, angleText, lengthText, shimFormat } from "./lengths.ts";
import { heightWords } from "./poseWords.ts";

const NOTHING_ASKED =
  'No targets are set, so this is the truck as bolted on: give alignment.targets, such as { "camber": -0.5, "caster": 4 }.';

/** One sentence a builder can act on; one a side where the sides differ. */
export function alignSentence(alignment: TruckAlignment, model: Model): string {
  if (!alignment.asked) return NOTHING_ASKED;
  const format = shimFormat(model.setup);
  const height = heightWords(alignment.travel, model, format);
  const [left, right] = [alignment.left, alignment.right].map((side) => sideWords(side, model, format));
  if (left === right) return `Each side, ${height}: ${left}`;
  return `Left side, ${height}: ${left}\nRight side: ${right}`;
}

function sideWords(side: SideAlignment, model: Model, format: LengthFormat): string {
  const settings = side.settings.map((adjuster) => settingWords(adjuster, model, format));
  const change = side.tieRod.aligned - side.tieRod.asBolted;
  const turns = sleeveWords(change, model.setup);
  const tieRod =
    Math.abs(change) < 0.005
      ? "tie rod unchanged"
      : `tie rod ${amountWords(change, format)} ${change > 0 ? "longer" : "shorter"}${turns === "" ? "" : ` (${turns})`}`;
  const set = [...settings, tieRod].join(", ");
  const { camber, caster, toe } = side.aligned;
  const reads = `reads camber ${angleText(camber, 2)}, caster ${angleText(caster, 2)}, toe ${angleText(toe, 2)}`;
  if (side.reached) return `${set}; then it ${reads}${leftWords(side)}.`;
  return `the targets CANNOT be reached ${model.setup.adjusters === null ? "without adjusters" : "within the adjusters' range"}; the nearest is ${set}, which ${reads}${leftWords(side)}.`;
}

/** What one adjuster is set to. */
export function settingWords(
  { name, setting, asBolted }: AdjusterSetting,
  { setup }: Model,
  format: LengthFormat,
): string {
  const length = lengthText(setting, format);
  switch (setup.adjusters?.kind) {
    case "eccentric":
      return `${name} ${setup.adjusters.arm} eccentric at ${length}`;
    case "adjustableUpperArm": {
      const legs = name === "both legs" ? "both upper arm legs" : `${name} upper arm leg`;
      if (setting === 0) return `${legs} as measured`;
      return `${legs} ${amountWords(setting, format)} ${setting > 0 ? "longer" : "shorter"}`;
    }
    case "shims":
    case undefined:
      return `${length} of shims at the ${name}${setting === asBolted ? " as now" : ""}`;
  }
}

/** What reads 0.00° is on the target. */
function leftWords({ leftOver: { camber, caster } }: SideAlignment): string {
  const asked = [
    { what: "camber", off: camber },
    { what: "caster", off: caster },
  ].flatMap(({ what, off }) => (off === null ? [] : [{ what, amount: formatAngle(Math.abs(off), 2) }]));
  const off = asked.filter(({ amount }) => Number.parseFloat(amount) !== 0);
  if (asked.length === 0) return "";
  if (off.length === 0) return ", on target";
  return `, ${off.map(({ what, amount }) => `${amount} of ${what}`).join(" and ")} off the target`;
}

const QUARTERS = ["", "1/4", "1/2", "3/4"] as const;

/** How far a tie rod's sleeve is turned for a change, to the nearest quarter: `1 3/4 turns of the sleeve`; "" = its thread is not given. */
export function sleeveWords(
  change: number,
  { alignment: { sleeveThread } }: Pick<Setup, "alignment">,
): string {
  if (sleeveThread === undefined) return "";
  const quarters = Math.round(4 * Math.abs(sleeveTurns(change, sleeveThread)));
  if (quarters === 0) return "less than an eighth of a turn of the sleeve";
  const [whole, part] = [Math.floor(quarters / 4), QUARTERS[quarters % 4]!];
  const number = [whole === 0 ? "" : String(whole), part].filter((text) => text !== "").join(" ");
  return `${number} ${quarters <= 4 ? "turn" : "turns"} of the sleeve`;
}
