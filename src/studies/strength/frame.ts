import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { cross, dot, length, normalize, scale, sub, type Vec3 } from "../../geometry/vec.ts";
import type { SectionForces } from "./roundSection.ts";

/** A straight beam between two nodes, of a section alike about all its diameters. N, mm, MPa. */
export interface Beam {
  readonly from: number;
  readonly to: number;
  readonly area: number;
  readonly inertia: number;
  readonly polar: number;
  /** Area that shear deflects; null = shear does not deflect it. */
  readonly shearArea: number | null;
  readonly elasticity: number;
  readonly shearModulus: number;
}

/** Beams joined rigidly at nodes, some of whose six freedoms (x, y, z, turn about each) are held. */
export interface Frame {
  readonly nodes: readonly Vec3[];
  readonly beams: readonly Beam[];
  readonly held: readonly { readonly node: number; readonly freedom: number }[];
}

/** A force and a moment on a node. N, N·mm. */
export interface NodeLoad {
  readonly node: number;
  readonly force: Vec3;
  readonly moment?: Vec3;
}

/** Motions of nodes, six numbers each, mm and rad; and what the ends of each beam carry. */
export interface FrameAnswer {
  readonly motion: Float64Array;
  /** Twelve numbers a beam: force and moment on it at `from`, then at `to`, in its own axes, x along. */
  readonly ends: readonly Float64Array[];
}

/**
 * A frame with its stiffness factored once, by the direct stiffness method: 12 × 12 beams (Przemieniecki, Theory of Matrix
 * Structural Analysis; shear by Timoshenko's φ = 12 E I / (G A_s L²)), Cholesky's decomposition from ml-matrix.
 */
export class SolvedFrame {
  readonly #frame: Frame;
  readonly #free: readonly number[];
  readonly #factor: CholeskyDecomposition;
  readonly #beams: readonly { readonly axes: readonly [Vec3, Vec3, Vec3]; readonly stiffness: Matrix }[];

  private constructor(
    frame: Frame,
    free: readonly number[],
    factor: CholeskyDecomposition,
    beams: readonly { readonly axes: readonly [Vec3, Vec3, Vec3]; readonly stiffness: Matrix }[],
  ) {
    this.#frame = frame;
    this.#free = free;
    this.#factor = factor;
    this.#beams = beams;
  }

  /** null where the frame can move without bending: nothing holds some part of it. */
  static of(frame: Frame): SolvedFrame | null {
    const size = 6 * frame.nodes.length;
    const held = new Set(frame.held.map(({ node, freedom }) => 6 * node + freedom));
    const free = Array.from({ length: size }, (_, i) => i).filter((i) => !held.has(i));
    const whole = Matrix.zeros(size, size);
    const beams = frame.beams.map((beam) => {
      const axes = beamAxes(frame.nodes[beam.from]!, frame.nodes[beam.to]!);
      const own = beamStiffness(beam, length(sub(frame.nodes[beam.to]!, frame.nodes[beam.from]!)));
      const turn = turnOf(axes);
      const inFrame = turn.transpose().mmul(own).mmul(turn);
      const at = [...sixOf(beam.from), ...sixOf(beam.to)];
      // Half of it, and the other half as its mirror: turned, the two halves differ by rounding.
      for (const [i, row] of at.entries())
        for (const [j, column] of at.entries()) {
          if (j < i) continue;
          const sum = whole.get(row, column) + inFrame.get(i, j);
          whole.set(row, column, sum);
          whole.set(column, row, sum);
        }
      return { axes, stiffness: own };
    });
    const factor = new CholeskyDecomposition(whole.selection([...free], [...free]));
    return factor.isPositiveDefinite() ? new SolvedFrame(frame, free, factor, beams) : null;
  }

  /** The frame under loads on its nodes. */
  under(loads: readonly NodeLoad[]): FrameAnswer {
    const size = 6 * this.#frame.nodes.length;
    const pushed = new Float64Array(size);
    for (const { node, force, moment } of loads) {
      for (let i = 0; i < 3; i++) {
        pushed[6 * node + i]! += force[i]!;
        pushed[6 * node + 3 + i]! += moment?.[i] ?? 0;
      }
    }
    const solved = this.#factor.solve(Matrix.columnVector(this.#free.map((i) => pushed[i]!)));
    const motion = new Float64Array(size);
    this.#free.forEach((i, row) => {
      motion[i] = solved.get(row, 0);
    });
    const ends = this.#beams.map(({ axes, stiffness }, i) => {
      const { from, to } = this.#frame.beams[i]!;
      const local = [...sixOf(from), ...sixOf(to)].map((_, j, at) => {
        const group = Math.floor(j / 3) * 3;
        const vector = [motion[at[group]!]!, motion[at[group + 1]!]!, motion[at[group + 2]!]!] as const;
        return dot(axes[j % 3]!, vector);
      });
      return Float64Array.from(stiffness.mmul(Matrix.columnVector(local)).to1DArray());
    });
    return { motion, ends };
  }
}

/** What a beam's section carries at one of its ends, from the end's twelve numbers. */
export function sectionForces(ends: ArrayLike<number>, end: "from" | "to"): SectionForces {
  const at = end === "from" ? 0 : 6;
  const size = (a: number, b: number) => Math.sqrt(ends[at + a]! ** 2 + ends[at + b]! ** 2);
  // At `from` a pull is a force against x.
  const pull = end === "from" ? -ends[at]! : ends[at]!;
  return { pull, shear: size(1, 2), bending: size(4, 5), torque: Math.abs(ends[at + 3]!) };
}

function sixOf(node: number): number[] {
  return [0, 1, 2, 3, 4, 5].map((i) => 6 * node + i);
}

/** x along the beam; y and z anyhow, since its section is alike all round. */
function beamAxes(from: Vec3, to: Vec3): readonly [Vec3, Vec3, Vec3] {
  const x = normalize(sub(to, from));
  const least = [0, 1, 2].reduce((a, b) => (Math.abs(x[b]!) < Math.abs(x[a]!) ? b : a), 0);
  const off: Vec3 = [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0];
  const y = normalize(sub(off, scale(x, dot(off, x))));
  return [x, y, cross(x, y)];
}

function turnOf(axes: readonly [Vec3, Vec3, Vec3]): Matrix {
  const turn = Matrix.zeros(12, 12);
  for (let group = 0; group < 12; group += 3)
    for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) turn.set(group + i, group + j, axes[i]![j]!);
  return turn;
}

function beamStiffness(beam: Beam, span: number): Matrix {
  const { area, inertia, polar, shearArea, elasticity, shearModulus } = beam;
  const k = Matrix.zeros(12, 12);
  const pair = (a: number, b: number, value: number) => {
    k.set(a, a, value);
    k.set(b, b, value);
    k.set(a, b, -value);
    k.set(b, a, -value);
  };
  pair(0, 6, (elasticity * area) / span);
  pair(3, 9, (shearModulus * polar) / span);
  const soft =
    shearArea === null ? 0 : (12 * elasticity * inertia) / (shearModulus * shearArea * span * span);
  const bend = (elasticity * inertia) / (1 + soft);
  // Bending in x–y turns about z, in x–z about y with the other sign.
  for (const [slide, turn, sign] of [
    [1, 5, 1],
    [2, 4, -1],
  ] as const) {
    const [a, b, c, d] = [slide, turn, slide + 6, turn + 6];
    pair(a, c, (12 * bend) / span ** 3);
    k.set(b, b, ((4 + soft) * bend) / span);
    k.set(d, d, ((4 + soft) * bend) / span);
    const put = (i: number, j: number, value: number) => {
      k.set(i, j, value);
      k.set(j, i, value);
    };
    put(b, d, ((2 - soft) * bend) / span);
    const six = (sign * 6 * bend) / span ** 2;
    put(a, b, six);
    put(a, d, six);
    put(c, b, -six);
    put(c, d, -six);
  }
  return k;
}
