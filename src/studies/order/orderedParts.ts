import type { CatalogItem, Catalogs } from "../../setup/catalogs/readCatalog.ts";
import type {
  Chosen,
  OrderedBrake,
  OrderedHub,
  OrderedJoint,
  OrderSetup,
} from "../../setup/types/orderTypes.ts";

/** A ball joint as ordered: what the catalog says of it, but for what the order itself says. */
export type JointAsOrdered = Chosen<OrderedJoint> & {
  /** Taper reamed into the knuckle: the order's, or the stud's. rad */
  readonly seat: number | null;
  /** Whether the order gives the seat itself. */
  readonly seatGiven: boolean;
};

/** What an order takes out of catalogs, with its own numbers before theirs. */
export interface OrderedParts {
  readonly upperBallJoint: JointAsOrdered;
  readonly lowerBallJoint: JointAsOrdered;
  readonly brake: Chosen<OrderedBrake>;
  readonly hub: Chosen<OrderedHub>;
  /** Names that no catalog has. */
  readonly unknown: readonly UnknownItem[];
}

/** A name that a catalog does not have. */
export interface UnknownItem {
  readonly block: "upperBallJoint" | "lowerBallJoint" | "brake" | "hub";
  readonly item: string;
  /** Names that it has. */
  readonly names: readonly string[];
}

/** Looks up what an order names. */
export function orderedParts(order: OrderSetup, catalogs: Catalogs): OrderedParts {
  const unknown: UnknownItem[] = [];
  const chosen = <Part extends object>(
    block: UnknownItem["block"],
    own: Chosen<Part>,
    items: readonly CatalogItem<Part>[],
  ): Chosen<Part> => {
    if (own.item === null) return own;
    const found = items.find(({ name }) => name === own.item);
    if (!found) unknown.push({ block, item: own.item, names: items.map(({ name }) => name) });
    return found ? { ...merged(found.part, own), item: own.item } : own;
  };
  const joint = (block: "upperBallJoint" | "lowerBallJoint"): JointAsOrdered => {
    const { seat, ...own } = order[block];
    const one = chosen<OrderedJoint>(block, own, catalogs.ballJoints);
    return { ...one, seat: seat ?? one.taper, seatGiven: seat !== null };
  };
  return {
    upperBallJoint: joint("upperBallJoint"),
    lowerBallJoint: joint("lowerBallJoint"),
    brake: chosen<OrderedBrake>("brake", order.brake, catalogs.brakes),
    hub: chosen<OrderedHub>("hub", order.hub, catalogs.hubs),
    unknown,
  };
}

/** What is not given (null) is the catalog's; a bearing is merged number by number. */
function merged<Part extends object>(catalog: Part, own: Part): Part {
  const entries = Object.entries(catalog).map(([key, value]) => {
    const mine: unknown = own[key as keyof Part];
    if (mine === null || mine === undefined) return [key, value];
    return [key, isRecord(mine) && isRecord(value) ? merged(value, mine) : mine];
  });
  return Object.fromEntries(entries) as Part;
}

/** A bearing or box: no list of points. */
function isRecord(value: unknown): value is object {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}
