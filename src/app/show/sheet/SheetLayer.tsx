import { lazy, Suspense } from "react";
import { useLayer } from "../../state/address.ts";

const CustomerSheet = lazy(async () => ({ default: (await import("./CustomerSheet.tsx")).CustomerSheet }));

/** The customer's sheet while it is asked for; loaded only then. */
export function SheetLayer() {
  if (useLayer() !== "sheet") return null;
  return (
    <Suspense>
      <CustomerSheet />
    </Suspense>
  );
}
