import type { LengthFormat } from "../../units/formatLength.ts";
import type { SpanEffect } from "../plausibility/spanEffect.ts";
import { amountWords, finestLength } from "./amountWords.ts";
import { angleText } from "./angleText.ts";

/** What it does that the knuckle's span is not the distance of the arms' ball joints; "" where the two are the same. */
export function spanSentence(effect: SpanEffect, format: LengthFormat): string {
  const { span, apart, withSpan, asMeasured } = effect;
  const off = span - apart;
  if (Math.abs(off) < 0.5 * finestLength(format)) return "";
  const amount = `${amountWords(off, format)} ${off > 0 ? "taller" : "shorter"}`;
  const more = (
    [
      ["the upper arm leans from level by", withSpan.upperArm, asMeasured.upperArm],
      ["camber is", withSpan.camber, asMeasured.camber],
      ["caster is", withSpan.caster, asMeasured.caster],
    ] as const
  ).map(([what, now, before]) => {
    const [is, was] = [angleText(now), angleText(before)];
    return is === was ? `${what} ${is} as before` : `${what} ${is} instead of ${was}`;
  });
  return `The knuckle is ${amount} than the arms' ball joints are apart; with it, as measured, ${more.join(", ")}.`;
}
