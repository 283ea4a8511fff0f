import { DEFAULT_READING_WITHIN } from "../../setup/types/readingDefaults.ts";
import type {
  AngleReading,
  BetweenReading,
  PlaceReading,
  PlumbReading,
  Reading,
  SizeReading,
  StationsReading,
} from "../../setup/types/readingTypes.ts";

type Unread<R> = Omit<R, "index" | "is" | "within">;

/** What a reading would be of, before it is read. */
export type Ask =
  | Unread<BetweenReading>
  | Unread<PlaceReading>
  | Unread<AngleReading>
  | Unread<SizeReading>
  | Unread<PlumbReading>
  | Unread<StationsReading>;

/** A reading of what was asked. @param is mm or radians */
export function readingOf(ask: Ask, is: number): Reading {
  const within = ask.kind === "size" ? DEFAULT_READING_WITHIN.size[ask.of] : DEFAULT_READING_WITHIN[ask.kind];
  return { ...ask, index: -1, within, is } as Reading;
}

/** What was asked as the setup file writes it, without `is`. */
export function askDocument(ask: Ask): Readonly<Record<string, unknown>> {
  const side = ask.side === "left" ? {} : { side: ask.side };
  switch (ask.kind) {
    case "between":
      return { between: ask.points, ...side };
    case "height":
    case "ahead":
      return { [ask.kind]: ask.point, ...side };
    case "offset":
      return { offset: ask.point, ...(ask.from === "frame" ? { from: "frame" } : {}), ...side };
    case "angle":
      return { angle: ask.arm, ...side };
    case "size":
      return { size: ask.of };
    case "plumb":
      return { plumb: ask.point, mark: ask.mark, ...side };
    case "stations":
      return { stations: ask.stations, part: ask.part, stick: ask.stick, ...side };
  }
}
