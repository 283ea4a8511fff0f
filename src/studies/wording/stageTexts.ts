/** Under a picture in which the side of a fender is drawn over its lip. */
export const FENDER_SIDE_LEGEND = "Fender side: drawn only, not measured";
