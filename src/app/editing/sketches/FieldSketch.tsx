export type FieldSketchProps = { pattern: readonly string[]; label: string };
export function FieldSketch(_: FieldSketchProps) {
  return null;
}
