/** A plane across one vehicle axis, `at` mm along it. */
export interface SectionPlane {
  readonly axis: "x" | "y" | "z";
  readonly at: number;
}

/** Which vehicle axes lie across and up the sheet, and where one looks from. */
export interface SheetAxes {
  /** Places of the axis cut, of the one to the right of the sheet and of the one up it, in x, y, z. */
  readonly normal: 0 | 1 | 2;
  readonly right: 0 | 1 | 2;
  readonly up: 0 | 1 | 2;
  /** +1 where `right` × `up` is the positive axis, −1 where it is the negative one. */
  readonly facing: 1 | -1;
  readonly seenFrom: string;
}

/**
 * Sheet coordinates are the truck's own, so that a number on the drawing is a number in the setup file: an x
 * plane shows y to the right and z up, a y plane x and z, a z plane x and y. No view is mirrored.
 */
const SHEETS: Readonly<Record<SectionPlane["axis"], SheetAxes>> = {
  x: { normal: 0, right: 1, up: 2, facing: 1, seenFrom: "the front" },
  y: { normal: 1, right: 0, up: 2, facing: -1, seenFrom: "the right" },
  z: { normal: 2, right: 0, up: 1, facing: 1, seenFrom: "above" },
};

/** The sheet that a plane is drawn on. */
export function sheetAxes({ axis }: SectionPlane): SheetAxes {
  return SHEETS[axis];
}
