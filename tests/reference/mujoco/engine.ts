import loadMujoco, { type MainModule, type MjData, type MjModel } from "mujoco-js";
import type { Vec3 } from "../../../src/geometry/vec.ts";
import type { DrawnTruck } from "./drawnTruck.ts";

/** The engine works in meters; the rest of the house in millimeters. */
export const METERS_PER_MM = 1e-3;

let loading: Promise<MainModule> | undefined;

/**
 * A mechanism in the general-purpose rigid-body engine (mujoco-js 0.0.7), stepped through time. Drives are
 * the `joint` equalities of the model, read-outs its sites. mm and radians outside, meters inside.
 */
export class EngineMechanism {
  readonly #mujoco: MainModule;
  readonly #model: MjModel;
  readonly #data: MjData;
  readonly #sites = new Map<string, number>();

  private constructor(mujoco: MainModule, model: MjModel) {
    this.#mujoco = mujoco;
    this.#model = model;
    this.#data = new mujoco.MjData(model);
  }

  /** Loads the engine once and builds the model. @param xml a model in the engine's own format. */
  static async load(xml: string): Promise<EngineMechanism> {
    loading ??= loadMujoco();
    const mujoco = await loading;
    const path = "/mechanism.xml";
    mujoco.FS.writeFile(path, xml);
    const mechanism = new EngineMechanism(mujoco, mujoco.MjModel.loadFromXML(path));
    mujoco.mj_forward(mechanism.#model, mechanism.#data);
    return mechanism;
  }

  /** Sets where a drive holds its joint: radians for a hinge, meters for a slide. */
  drive(equality: string, target: number): void {
    const at = this.#id(this.#mujoco.mjtObj.mjOBJ_EQUALITY.value, equality);
    const data = this.#model.eq_data as Float64Array;
    data[at * (data.length / this.#model.neq)] = target;
  }

  /** Drives `drive.steer` to a steering input, −1 … +1, + = left turn. */
  driveSteering({ steering }: DrawnTruck, steer: number): void {
    const full = steering.type === "rack" ? steering.stroke * METERS_PER_MM : steering.swing;
    this.drive("drive.steer", steer * full);
  }

  step(count: number): void {
    for (let i = 0; i < count; i++) this.#mujoco.mj_step(this.#model, this.#data);
  }

  /** Where a site stands now, vehicle axes, mm. */
  site(name: string): Vec3 {
    const known = this.#sites.get(name);
    const id = known ?? this.#id(this.#mujoco.mjtObj.mjOBJ_SITE.value, name);
    this.#sites.set(name, id);
    const at = this.#data.site_xpos as Float64Array;
    return [at[3 * id]! / METERS_PER_MM, at[3 * id + 1]! / METERS_PER_MM, at[3 * id + 2]! / METERS_PER_MM];
  }

  /** Puts the model's one mocap body at a place, vehicle axes, mm, turned about X by `roll`, radians. */
  placeMocap(at: Vec3, roll: number): void {
    (this.#data.mocap_pos as Float64Array).set(at.map((c) => c * METERS_PER_MM));
    (this.#data.mocap_quat as Float64Array).set([Math.cos(roll / 2), Math.sin(roll / 2), 0, 0]);
    this.#mujoco.mj_forward(this.#model, this.#data);
  }

  /** What the engine's own collision detection finds of a geom: distances to what it meets and the places midway, mm. */
  contactsOf(geom: string): { readonly distance: number; readonly at: Vec3 }[] {
    const id = this.#id(this.#mujoco.mjtObj.mjOBJ_GEOM.value, geom);
    const found: { readonly distance: number; readonly at: Vec3 }[] = [];
    const contacts = this.#data.contact;
    for (let i = 0; i < contacts.size(); i++) {
      const contact = contacts.get(i);
      if (contact === undefined || (contact.geom1 !== id && contact.geom2 !== id)) continue;
      const [x, y, z] = Array.from(contact.pos as Float64Array, (c) => c / METERS_PER_MM);
      found.push({ distance: contact.dist / METERS_PER_MM, at: [x!, y!, z!] });
    }
    return found;
  }

  /** Holds a force, N, and a moment, N·mm, on a body at its origin, world axes; stays until set anew. */
  push(body: string, force: Vec3, moment: Vec3): void {
    const id = this.#id(this.#mujoco.mjtObj.mjOBJ_BODY.value, body);
    (this.#data.xfrc_applied as Float64Array).set(
      [...force, ...moment.map((m) => m * METERS_PER_MM)],
      6 * id,
    );
  }

  /** What an equality puts on its first body or joint now: N of a connection in world axes, N·m of a hinge's drive. */
  forcesOf(equality: string): readonly number[] {
    const id = this.#id(this.#mujoco.mjtObj.mjOBJ_EQUALITY.value, equality);
    const [ids, types] = [this.#data.efc_id as Int32Array, this.#data.efc_type as Int32Array];
    const isEquality = this.#mujoco.mjtConstraint.mjCNSTR_EQUALITY.value;
    return Array.from(this.#data.efc_force as Float64Array).filter(
      (_, row) => ids[row] === id && types[row] === isEquality,
    );
  }

  /** Largest speed of any joint, rad/s or m/s. */
  get speed(): number {
    return (this.#data.qvel as Float64Array).reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  }

  /** Largest violation of any equality, meters or radians. */
  get residual(): number {
    const violations = this.#data.efc_pos as Float64Array;
    return violations.reduce((most, v) => Math.max(most, Math.abs(v)), 0);
  }

  free(): void {
    this.#data.delete();
    this.#model.delete();
  }

  #id(kind: number, name: string): number {
    const id = this.#mujoco.mj_name2id(this.#model, kind, name);
    if (id < 0) throw new RangeError(`EngineMechanism: the model has nothing called "${name}"`);
    return id;
  }
}
