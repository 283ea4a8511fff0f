import { useThree } from "@react-three/fiber";
import { createContext, type ReactNode, useContext, useEffect, useMemo, useState } from "react";
import { Vector2 } from "three";
import { useWorkbench } from "../state/useWorkbench.ts";
import { type Ink, mixInk } from "./ink.ts";

const InkContext = createContext<Ink | null>(null);

export type InkProviderProps = {
  children: ReactNode;
};

/** Gives the stage its materials, and mixes new ones when the page turns dark or light. */
export function InkProvider({ children }: InkProviderProps) {
  const canvas = useThree((s) => s.gl.domElement);
  const size = useThree((s) => s.size);
  const invalidate = useThree((s) => s.invalidate);
  const [viewSize] = useState(() => new Vector2(1, 1));
  const [scheme, setScheme] = useState(0);
  const theme = useWorkbench((s) => s.preferences.theme);
  const picture = useWorkbench((s) => s.preferences.picture);
  // biome-ignore lint/correctness/useExhaustiveDependencies: scheme and theme are read from the page's styles
  const ink = useMemo(() => mixInk(canvas, viewSize, picture), [canvas, viewSize, scheme, theme, picture]);
  viewSize.set(size.width, size.height);

  useEffect(() => {
    const dark = matchMedia("(prefers-color-scheme: dark)");
    const turn = () => setScheme((count) => count + 1);
    dark.addEventListener("change", turn);
    // A theme that the person chose is written on the page's root, and so is that nothing is to be green.
    const chosen = new MutationObserver(turn);
    chosen.observe(document.documentElement, { attributeFilter: ["data-theme", "data-doubted"] });
    return () => {
      dark.removeEventListener("change", turn);
      chosen.disconnect();
    };
  }, []);
  useEffect(() => {
    invalidate();
    return () => ink.dispose();
  }, [ink, invalidate]);
  return <InkContext value={ink}>{children}</InkContext>;
}

/** The stage's materials. @throws Error outside an InkProvider */
export function useInk(): Ink {
  const ink = useContext(InkContext);
  if (!ink) throw new Error("useInk: needs an InkProvider around it");
  return ink;
}
