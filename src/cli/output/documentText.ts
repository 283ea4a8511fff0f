import type { Truck } from "../asked/readTruck.ts";
import { jsonText } from "./jsonText.ts";
import { withStanding } from "./withStanding.ts";

/**
 * The document of a verb for `--json`, with what it was aligned to and with `unusual`: what of the setup is plausibly a slip
 * and not confirmed, each with what to write into `confirmed` if it is so; left out where there is nothing.
 */
export function documentText(document: object, { model, unusual }: Truck): string {
  const told = unusual.map(({ confirm, text }) => ({ ...confirm, text }));
  return jsonText({
    ...withStanding(document, model.setup),
    ...(told.length > 0 ? { unusual: told } : {}),
  });
}
