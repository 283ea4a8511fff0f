/** What a result does not say; printed under every table of gaps. */
export const CAUTIONS =
  "Measure twice before cutting or welding: these are distances worked out from the numbers in the setup, and\n" +
  "rubber, bushings and bodies differ. They are not a statement of safety. Knuckles, steering and brakes are for\n" +
  "licensed, qualified people, under the codes that hold where the truck is driven.\n";
