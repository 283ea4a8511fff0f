import { length, sub, type Vec3 } from "../../geometry/vec.ts";
import type { BuildSetup, Member } from "../../setup/types/buildTypes.ts";
import { jointPlaces, pointOnPin, shareAlong } from "../../setup/types/jointPlaces.ts";
import type { KnuckleSetup } from "../../setup/types/types.ts";
import { type Beam, type Frame, type FrameAnswer, type NodeLoad, SolvedFrame } from "./frame.ts";
import type { KnuckleLoads } from "./knuckleLoads.ts";
import { STEEL_ELASTICITY, STEEL_SHEAR_MODULUS } from "./material.ts";
import { NO_RISE, type RoundSection, roundSection, type StressRise } from "./roundSection.ts";
import { shoulderRise } from "./stressRise.ts";

/** A stretch of a tube, a bar, or the pin inside the knuckle, between two nodes of the frame. */
export interface Piece {
  readonly kind: "member" | "pin";
  /** The member's; "pin" of the pin. */
  readonly name: string;
  /** Number of its beam. */
  readonly beam: number;
  /** The joint it starts and ends at; else how far along the member, 0 … 1, or along the pin, mm from the steering axis. */
  readonly from: string | number;
  readonly to: string | number;
  readonly section: RoundSection;
  /** What a shoulder at its start raises there. */
  readonly rise: StressRise;
  /** null = as the build's. */
  readonly material: string | null;
}

/** A knuckle as a frame: its members, welded rigidly where they meet, and its pin. */
export interface KnuckleFrame {
  readonly pieces: readonly Piece[];
  /** Motion and beam ends under the loads of a knuckle. */
  readonly under: (loads: KnuckleLoads) => FrameAnswer;
  readonly innerBearing: number;
  readonly outerBearing: number;
}

/** How far along the pin, mm from the steering axis, the knuckle holds it: the outermost joint of members on it, or its root. */
export function pinHeldTo(build: BuildSetup, knuckle: KnuckleSetup): number {
  const steps = build.pin?.steps ?? [];
  const [root, tip] = [steps[0]?.from ?? 0, steps.at(-1)?.to ?? 0];
  const places = jointPlaces(build, knuckle);
  const used = build.members.flatMap(({ from, to }) => [from, to]);
  const along = used.flatMap((name) => alongPin(knuckle, root, tip, places.get(name)!) ?? []);
  return Math.max(root, ...along.filter((at) => at < tip));
}

/** How far along the pin a place on its axis is, mm from the steering axis; null = it is not on it. */
function alongPin(knuckle: KnuckleSetup, root: number, tip: number, place: Vec3): number | null {
  const share = shareAlong(place, pointOnPin(knuckle, root), pointOnPin(knuckle, tip));
  return share === null ? null : root + share * (tip - root);
}

export type KnuckleFrameResult =
  | { readonly ok: true; readonly frame: KnuckleFrame }
  /** Why there is none, a part of a sentence. */
  | { readonly ok: false; readonly why: "no pin" | "no bearings" | "no members" | readonly string[] };

/** How many times as stiff as the stiffest member a link is: what it gives is less than a thousandth of what they do. */
const STIFFER = 1000;

/** mm. Nodes nearer than this are one: as near as a joint counts as on a member's line. */
const SAME_NODE = 0.4;

/** What has to be met by a member, so that its force has a way in. */
const ENTRIES = ["lowerBallJoint", "upperBallJoint", "tieRodOuter", "pinRoot"] as const;

/**
 * The frame of a build, or what is missing for one. Members that run through a joint of others are divided there. It is held
 * at the lower ball joint, square to the steering axis at the upper one, and sideways at the tie rod: since the loads are in
 * equilibrium those hold nothing, and motions are told from that line.
 */
export function knuckleFrameOf(build: BuildSetup, knuckle: KnuckleSetup): KnuckleFrameResult {
  const { pin, members } = build;
  if (pin === null) return { ok: false, why: "no pin" };
  if (pin.bearings === null) return { ok: false, why: "no bearings" };
  if (members.length === 0) return { ok: false, why: "no members" };
  const places = jointPlaces(build, knuckle);
  const used = new Set(members.flatMap(({ from, to }) => [from, to]));
  const caliper = build.caliperAt;
  const nodes = new Nodes();
  const needed = [...ENTRIES, ...(caliper === null ? [] : [caliper])];
  const missed = needed.filter((name) => !used.has(name) && !isOnMember(places.get(name)!, members, places));
  if (missed.length > 0) return { ok: false, why: missed };
  const ends = [...new Set([...used, ...needed])];
  for (const name of ends) nodes.at(places.get(name)!);
  const beams: Beam[] = [];
  const pieces: Piece[] = [];
  const stiffest = Math.max(...members.map(sectionOf).map((section) => section?.inertia ?? 0), 1);
  const largest = Math.max(...members.map(sectionOf).map((section) => section?.area ?? 0), 1);
  for (const member of members) {
    const section = sectionOf(member);
    const [from, to] = [places.get(member.from)!, places.get(member.to)!];
    const along = ends
      .flatMap((name) => {
        const share = shareAlong(places.get(name)!, from, to);
        return share === null ? [] : [{ share, node: nodes.at(places.get(name)!) }];
      })
      .sort((a, b) => a.share - b.share);
    along.forEach(({ share, node }, i) => {
      const next = along[i + 1];
      if (next === undefined || next.node === node) return;
      const beam = beams.length;
      if (section === null || member.kind === "link") {
        beams.push(linkOf(node, next.node, STIFFER * largest, STIFFER * stiffest));
        return;
      }
      beams.push(beamOf(node, next.node, section));
      const { name, material } = member;
      const label = (at: number) => (at === 0 ? member.from : at === 1 ? member.to : at);
      pieces.push({
        kind: "member",
        name,
        beam,
        from: label(share),
        to: label(next.share),
        section,
        rise: NO_RISE,
        material,
      });
    });
  }
  const { innerBearing, outerBearing } = addPin(
    build,
    knuckle,
    ends.map((name) => places.get(name)!),
    nodes,
    beams,
    pieces,
  );
  const [lower, upper, rod] = ENTRIES.map((name) => nodes.at(places.get(name)!)) as [number, number, number];
  const held: Frame["held"] = [
    ...[0, 1, 2].map((freedom) => ({ node: lower, freedom })),
    ...[0, 1].map((freedom) => ({ node: upper, freedom })),
    { node: rod, freedom: 1 },
  ];
  const solved = SolvedFrame.of({ nodes: nodes.all, beams, held });
  if (solved === null) return { ok: false, why: loose(members) };
  const root = nodes.at(places.get("pinRoot")!);
  const braked = caliper === null ? root : nodes.at(places.get(caliper)!);
  const under = (loads: KnuckleLoads) => {
    const pushes: readonly NodeLoad[] = [
      { node: lower, force: loads.lowerBallJoint },
      { node: upper, force: loads.upperBallJoint },
      { node: rod, force: loads.tieRodOuter },
      { node: innerBearing, force: loads.innerBearing },
      { node: outerBearing, force: loads.outerBearing },
      { node: braked, force: loads.caliper },
      { node: root, force: [0, 0, 0], moment: loads.rootMoment },
    ];
    return solved.under(pushes);
  };
  return { ok: true, frame: { pieces, under, innerBearing, outerBearing } };
}

/** null = a stiff connection. */
function sectionOf(member: Member): RoundSection | null {
  if (member.kind === "link") return null;
  return roundSection(member.diameter, member.kind === "tube" ? member.wall : null);
}

function isOnMember(place: Vec3, members: readonly Member[], places: ReadonlyMap<string, Vec3>): boolean {
  return members.some(({ from, to }) => shareAlong(place, places.get(from)!, places.get(to)!) !== null);
}

function loose(members: readonly Member[]): readonly string[] {
  return [members[0]!.name];
}

const STEEL = { elasticity: STEEL_ELASTICITY, shearModulus: STEEL_SHEAR_MODULUS } as const;

function beamOf(from: number, to: number, { area, inertia, polar, shearShape }: RoundSection): Beam {
  return { from, to, area, inertia, polar, shearArea: area / shearShape, ...STEEL };
}

function linkOf(from: number, to: number, area: number, inertia: number): Beam {
  return { from, to, area, inertia, polar: 2 * inertia, shearArea: null, ...STEEL };
}

/** The pin's steps as beams out of its root, divided where the bearings carry and where members hold it. */
function addPin(
  build: BuildSetup,
  knuckle: KnuckleSetup,
  joints: readonly Vec3[],
  nodes: Nodes,
  beams: Beam[],
  pieces: Piece[],
) {
  const { steps, bearings, material } = build.pin!;
  const [root, tip] = [steps[0]!.from, steps.at(-1)!.to];
  const heldTo = pinHeldTo(build, knuckle);
  const cuts = [
    ...steps.flatMap(({ from, to }) => [from, to]),
    ...[bearings!.inner, bearings!.outer],
    ...joints.flatMap((place) => alongPin(knuckle, root, tip, place) ?? []),
  ].sort((a, b) => a - b);
  cuts.forEach((from, cut) => {
    const to = cuts[cut + 1];
    if (to === undefined) return;
    const [a, b] = [nodes.at(pointOnPin(knuckle, from)), nodes.at(pointOnPin(knuckle, to))];
    const middle = (from + to) / 2;
    const i = steps.findIndex((one) => one.from <= middle && middle <= one.to);
    const step = steps[i];
    if (a === b || !step) return;
    const section = roundSection(step.diameter, null);
    const inboard = from === step.from ? steps[i - 1] : undefined;
    const rise = inboard ? shoulderRise(inboard.diameter, step.diameter, step.fillet) : NO_RISE;
    if (to <= heldTo)
      pieces.push({ kind: "pin", name: "pin", beam: beams.length, from, to, section, rise, material });
    beams.push(beamOf(a, b, section));
  });
  const [inner, outer] = [bearings!.inner, bearings!.outer].map((at) => nodes.at(pointOnPin(knuckle, at)));
  return { innerBearing: inner!, outerBearing: outer! };
}

/** Numbers places; those in one spot are one node. */
class Nodes {
  readonly #places: Vec3[] = [];

  at(place: Vec3): number {
    const known = this.#places.findIndex((one) => length(sub(one, place)) < SAME_NODE);
    if (known >= 0) return known;
    this.#places.push(place);
    return this.#places.length - 1;
  }

  get all(): readonly Vec3[] {
    return this.#places;
  }
}
