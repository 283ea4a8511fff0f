import type { Series } from "../../parts/plotNumbers.ts";
import { crosses, heightsOver, nameBox, type Room } from "./labelSpots.ts";
import type { PlotFrame } from "./plotFrame.ts";

/** The name of a level where it is drawn, px. */
interface LevelName {
  readonly name: string;
  readonly box: Room;
  readonly base: number;
}

/** px. The height that the name of a level takes. */
const NAMED = 15;

/** px between a line and the base of what stands above it, and below it. */
const OVER = 4;
const UNDER = 12;

/**
 * Where the names of levels stand: above their line, at the left, or at the right where a curve is in the way. Two lines too close for
 * a name between them have one under the lower, which says both.
 */
export function levelNames(
  levels: readonly { readonly at: number; readonly name: string }[],
  series: readonly Series[],
  { box: { width, height, left, right, bottom }, x, y }: PlotFrame,
): LevelName[] {
  const down = [...levels].sort((a, b) => a.at - b.at);
  return down.flatMap(({ at, name }, i) => {
    const [under, over] = [down[i - 1], down[i + 1]];
    const isPair = over !== undefined && y(at) - y(over.at) < NAMED;
    if (under !== undefined && y(under.at) - y(at) < NAMED) return [];
    const text = isPair ? `${name}; ${over.name} above` : name;
    const isUnder = isPair && y(at) + UNDER < height - bottom;
    const base = isUnder ? y(at) + UNDER : y(isPair ? over.at : at) - OVER;
    const atLeft = nameBox(text, left + 3, base);
    const atRight = nameBox(text, width - right - 3 - (atLeft.right - atLeft.left), base);
    const isFree = (box: Room) => series.every((one) => !crosses(heightsOver(one, box, x, y), box));
    return [{ name: text, box: isFree(atLeft) || !isFree(atRight) ? atLeft : atRight, base }];
  });
}
