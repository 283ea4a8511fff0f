import { Fragment } from "react";
import type { CatalogKind } from "../../../setup/catalogs/catalogDocument.ts";
import type { Catalogs } from "../../../setup/catalogs/readCatalog.ts";
import { DEFAULT_PIN_LEAD } from "../../../setup/types/defaults.ts";
import { isWithin, type KeyPath, valueAt } from "../../../setup/types/keyPath.ts";
import type { Misfit } from "../../../studies/order/misfit.ts";
import type { OrderSheet } from "../../../studies/order/orderSheet.ts";
import { catalogChoice, catalogFacts } from "../../../studies/wording/catalogChoice.ts";
import { orderMisfitSentence } from "../../../studies/wording/orderMends.ts";
import { CHOOSE_PARTS, NONE_CHOSEN, picksNote } from "../../../studies/wording/orderPicks.ts";
import { BASE_NAME_HINT, partText, WRITTEN_SO } from "../../../studies/wording/orderTexts.ts";
import type { LengthFormat } from "../../../units/formatLength.ts";
import { FieldGroup } from "../../measure/FieldGroup.tsx";
import { FieldRow } from "../../measure/fields/FieldRow.tsx";
import { AnyField } from "../../measure/groups/AnyFields.tsx";
import { useCatalogs } from "../../parts/catalogs/shippedCatalogs.ts";
import { shownDocument } from "../../state/selectors.ts";
import { useWorkbench } from "../../state/useWorkbench.ts";
import { workbench } from "../../state/workbench.ts";
import { keyWords } from "../../words/keyWords.ts";
import { CaliperBox } from "./CaliperBox.tsx";
import { ORDER_FORM, type OrderFormGroup, type OrderLine } from "./orderFields.ts";
import { PickRow } from "./PickRow.tsx";

export type OrderFormProps = {
  /** null = the order on the board has not been sound yet. */
  sheet: OrderSheet | null;
  format: LengthFormat;
};

/** All fields of the order, grouped as a shop fills them in; what does not go together stands beside its field. */
export function OrderForm({ sheet, format }: OrderFormProps) {
  const order = useWorkbench((s) => valueAt(shownDocument(s), ["order"]));
  const firstParts = ORDER_FORM.findIndex(({ parts }) => parts !== undefined);
  return ORDER_FORM.map(({ title, of, lines, parts }, i) => {
    const misfits = sheet?.misfits.filter(({ at }) => of.some((path) => isWithin(at, path))) ?? [];
    return (
      <Fragment key={title}>
        {i === firstParts && <p className="order-parts">{CHOOSE_PARTS}</p>}
        <FieldGroup
          title={title}
          of={of}
          isFirst={i <= 1}
          alsoToMend={misfits.length}
          note={parts ? noteOf(parts, order) : ""}
        >
          {lines.map((line) => (
            <Line
              key={line.kind === "heading" ? line.text : line.path.join(".")}
              line={line}
              sheet={sheet}
              misfits={misfits}
              format={format}
            />
          ))}
        </FieldGroup>
      </Fragment>
    );
  });
}

/** What of a group's parts is ordered, as the order is typed. */
function noteOf(parts: NonNullable<OrderFormGroup["parts"]>, order: unknown): string {
  return picksNote(
    parts.map(({ block, of, isInCatalog }) => {
      const typed = valueAt(order, [block]);
      const item = valueAt(typed, ["item"]);
      return {
        of,
        item: isInCatalog ? (typeof item === "string" ? item : null) : undefined,
        isTyped: Object.keys((typed as object | undefined) ?? {}).length > 0,
      };
    }),
  );
}

type LineProps = {
  line: OrderLine;
  sheet: OrderSheet | null;
  misfits: readonly Misfit[];
  format: LengthFormat;
};

function Line({ line, sheet, misfits, format }: LineProps) {
  const catalogs = useCatalogs();
  if (line.kind === "heading") return <h4 className="order-heading">{line.text}</h4>;
  const { path } = line;
  const found = misfits.filter(({ at }) => isWithin(at, path));
  return (
    <>
      {line.kind === "item" && (
        <PickRow
          path={path}
          label="From the catalog"
          isWide
          none={NONE_CHOSEN}
          choices={catalogs[line.of].map(({ name }) => name)}
          texts={partTexts(catalogs, line.of, (item) => catalogChoice(item, format))}
          told={partTexts(catalogs, line.of, (item) => catalogFacts(item, format))}
          onPick={(name) => pickItem(path.slice(0, -1), name)}
        />
      )}
      {line.kind === "stance" && <PickRow path={path} none="any" choices={sheet ? stanceNames(sheet) : []} />}
      {line.kind === "field" && <FieldRow path={path} placeholder={heldText(path, sheet, format)} />}
      {line.kind === "caliper" && <CaliperBox path={path} />}
      {(line.kind === "point" || line.kind === "any") && <AnyField path={path} />}
      {found.map((misfit) => (
        <div key={misfit.kind} className="fault">
          <p>
            <span aria-hidden="true">✕ </span>
            {keyWords(orderMisfitSentence(misfit, format, false))}
          </p>
        </div>
      ))}
    </>
  );
}

/** What is told of each part of a catalog; of stock and materials nothing is ordered. */
function partTexts(
  catalogs: Catalogs,
  of: CatalogKind,
  textOf: (item: Parameters<typeof catalogChoice>[0]) => string,
): Readonly<Record<string, string>> {
  if (of === "tubes" || of === "materials") return {};
  return Object.fromEntries(catalogs[of].map((item) => [item.name, textOf(item)]));
}

function stanceNames({ setup }: OrderSheet): readonly string[] {
  return [...setup.stances, ...setup.measuredStances].map(({ name }) => name);
}

/** What stands in an empty field: the catalog's number or the base knuckle's, which holds; undefined = the field's own default. */
function heldText(path: KeyPath, sheet: OrderSheet | null, format: LengthFormat): string | undefined {
  const [, block, key] = path;
  if (block === "base" && key === "name") return BASE_NAME_HINT;
  return (sheet && partOf(path, sheet, format)) ?? WRITTEN_SO[String(path.at(-1))];
}

function partOf(path: KeyPath, sheet: OrderSheet, format: LengthFormat): string | undefined {
  const [, block, key] = path;
  const { base, steeringArm } = sheet.order;
  if (block === "pinAngle") return partText(block, base.pinAngle, format);
  if (block === "pinLead") return partText(block, base.pinLead ?? DEFAULT_PIN_LEAD, format);
  if (block === "steeringArm" && key === "rodEndThread") return partText(key, steeringArm.thread, format);
  return partText(String(path.at(-1)), valueAt(sheet.parts, path.slice(1)), format);
}

/** The part becomes the catalog's: numbers typed before it would go before its own. The knuckle's own seat stays. */
function pickItem(block: KeyPath, item: string): void {
  const state = workbench.getState();
  const seat = valueAt(shownDocument(state), [...block, "seat"]);
  state.applySuggestion({
    path: block,
    value: seat === undefined ? { item } : { item, seat },
    kind: "nearest",
  });
}
