/** Under a picture in which the side of a fender is drawn over its lip. */
export const FENDER_SIDE_LEGEND = "Fender side: drawn only, not measured";

/** While the picture is not there yet. */
export const STAGE_LOADING = "Drawing the truck…";
