import { useEffect, useState } from "react";
import { flushSync } from "react-dom";

/** Whether the page is being printed: what follows the pose only where it is seen must then be as the pose is. */
export function usePrinting(): boolean {
  const [isPrinting, setPrinting] = useState(false);
  useEffect(() => {
    // The page is laid out for the paper as soon as the event is over.
    const before = () => flushSync(() => setPrinting(true));
    const after = () => setPrinting(false);
    addEventListener("beforeprint", before);
    addEventListener("afterprint", after);
    return () => {
      removeEventListener("beforeprint", before);
      removeEventListener("afterprint", after);
    };
  }, []);
  return isPrinting;
}
