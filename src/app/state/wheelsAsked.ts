import { goToStation } from "./address.ts";

let isAsked = false;

/** Goes to where other wheels are tried on the truck, with the form for one open. */
export function askForWheels(): void {
  isAsked = true;
  goToStation("show");
}

/** Whether somebody came to try wheels who has not been shown the form yet. */
export function areWheelsAsked(): boolean {
  return isAsked;
}

/** The form is shown. */
export function wheelsShown(): void {
  isAsked = false;
}
