/** What a plot's numbers are: lengths in mm, angles in radians, a share of full lock. */
export type Measure = "length" | "angle" | "lock";

/** One curve. `y` null = the linkage cannot go there, or there is no such number: the curve has a hole. */
export interface Series {
  readonly name: string;
  readonly points: readonly { readonly x: number; readonly y: number | null }[];
  /** Broken like a drafter's second line: a curve of the other side, or of another variant. */
  readonly line: "solid" | "dashed" | "dotted";
  /** Drawn heavy, the others light. */
  readonly isMain: boolean;
}

export interface PlotSpec {
  readonly id: string;
  readonly title: string;
  /** What + means, or what the curve tells. */
  readonly note: string;
  readonly x: { readonly label: string; readonly measure: Measure };
  readonly y: { readonly label: string; readonly measure: Measure };
  readonly series: readonly Series[];
  /** Levels drawn across, with what they mean, such as touching. */
  readonly levels?: readonly { readonly at: number; readonly name: string }[];
}
