import "./buildSteps.css";
import { type ReactNode, useMemo } from "react";
import type { AsBuiltSide } from "../../studies/jig/asBuiltReport.ts";
import { asBuiltSides } from "../../studies/jig/asBuiltReport.ts";
import { knucklesSentence, NOTHING_READ } from "../../studies/wording/asBuiltWords.ts";
import { orderStandsBriefly } from "../../studies/wording/orderOnPage.ts";
import { jumpTo } from "../parts/JumpBar.tsx";
import { StateMark } from "../parts/StateMark.tsx";
import type { Truck } from "../state/truck.ts";
import { useOrderSheet } from "./order/orderStands.tsx";

/** The way from an order to the knuckle checked, each step with how it stands: whether the knuckles pass is read without opening it. */
export function BuildSteps({ truck }: { truck: Truck }) {
  const { setup } = truck.bolted;
  const sheet = useOrderSheet(truck);
  const sides = useMemo(() => asBuiltSides(setup), [setup]);
  const read = sides === null ? [] : [sides.left, sides.right].filter((side) => side !== null);
  return (
    <ol className="build-steps" aria-label="From the order to the knuckle checked">
      <Step fold="order" title="Order" stands={sheet === null ? "none yet" : orderStandsBriefly(sheet)} />
      <Step
        fold="drawings"
        title="Drawings"
        stands={
          setup.build === null
            ? "and cut list: nothing to draw yet, begin with a usual knuckle"
            : "and cut list, to print or save"
        }
      />
      <Step fold="jig" title="Jig sheet" stands="what the tape must read" />
      <Step
        fold="asBuilt"
        title="As built"
        stands={read.length === 0 ? NOTHING_READ : <Passing read={read} />}
      />
    </ol>
  );
}

function Passing({ read }: { read: readonly AsBuiltSide[] }) {
  const passes = read.every(({ allPass }) => allPass);
  return (
    <b data-passes={passes}>
      <StateMark word={passes ? "clear" : "rubs"} /> {knucklesSentence(read)}
    </b>
  );
}

function Step({ fold, title, stands }: { fold: string; title: string; stands: ReactNode }) {
  return (
    <li>
      <button type="button" onClick={() => jumpTo("build", `[data-fold='${fold}'] > summary`)}>
        <span className="build-step">{title}</span> <span className="build-stands">{stands}</span>
      </button>
    </li>
  );
}
