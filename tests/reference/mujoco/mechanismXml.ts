import { cross, dot, mirrorY, normalize, sub, type Vec3 } from "../../../src/geometry/vec.ts";
import type { DrawnTruck, DrawnTurningArm } from "./drawnTruck.ts";
import { METERS_PER_MM } from "./engine.ts";

/** Stiff equalities without load settle onto the constraint itself. */
const STIFF = 'solref="0.004 1" solimp="0.9999 0.9999 0.001"';
/** Any mass will do: without gravity the poses at rest do not depend on it. */
const INERTIA = '<inertial pos="0 0 0" mass="1" diaginertia="0.02 0.02 0.02"/>';
/** The rotor inertia keeps two hinges on one line (the center link's) from being one too many. */
const DAMPING = 'damping="0.5" armature="0.02"';
const ORIGIN: Vec3 = [0, 0, 0];

const meters = (v: Vec3): string => v.map((c) => c * METERS_PER_MM).join(" ");
const numbers = (v: Vec3): string => v.join(" ");

/** Unit `axis` about which a positive turn first moves `point` (seen from `pivot`) along `toward`. */
function axisMoving(axis: Vec3, pivot: Vec3, point: Vec3, toward: Vec3): Vec3 {
  const unit = normalize(axis);
  return dot(cross(unit, sub(point, pivot)), toward) < 0 ? [-unit[0], -unit[1], -unit[2]] : unit;
}

interface Parts {
  readonly bodies: string;
  readonly equalities: string;
}

const site = (name: string, at: Vec3, origin: Vec3): string =>
  `<site name="${name}" pos="${meters(sub(at, origin))}"/>`;

/** Both control arms and the knuckle of one side; `at` maps left drawing points to this side. */
function wishbones(truck: DrawnTruck, side: string, at: (v: Vec3) => Vec3): Parts {
  const [lbj, ubj, outer, center] = [
    at(truck.lowerBallJoint),
    at(truck.upperBallJoint),
    at(truck.tieRodOuter),
    at(truck.wheelCenter),
  ];
  const spin = at(normalize(truck.spinAxis));
  const spinEnd: Vec3 = [center[0] + 1000 * spin[0], center[1] + 1000 * spin[1], center[2] + 1000 * spin[2]];
  const lowerPivot = at(truck.lowerArm.frontPivot);
  const upperPivot = at(truck.upperArm.frontPivot);
  const up: Vec3 = [0, 0, 1];
  const lowerAxis = axisMoving(sub(at(truck.lowerArm.rearPivot), lowerPivot), lowerPivot, lbj, up);
  const upperAxis = normalize(sub(at(truck.upperArm.rearPivot), upperPivot));
  return {
    bodies: `
    <body name="${side}.lowerArm" pos="${meters(lowerPivot)}">${INERTIA}
      <joint name="${side}.lowerArm" type="hinge" axis="${numbers(lowerAxis)}" ${DAMPING}/>
      <body name="${side}.knuckle" pos="${meters(sub(lbj, lowerPivot))}">${INERTIA}
        <joint type="ball" ${DAMPING}/>
        ${site(`${side}.lowerBallJoint`, lbj, lbj)}
        ${site(`${side}.knuckle.upperBallJoint`, ubj, lbj)}
        ${site(`${side}.knuckle.tieRodOuter`, outer, lbj)}
        ${site(`${side}.wheelCenter`, center, lbj)}
        ${site(`${side}.spinEnd`, spinEnd, lbj)}
      </body>
    </body>
    <body name="${side}.upperArm" pos="${meters(upperPivot)}">${INERTIA}
      <joint type="hinge" axis="${numbers(upperAxis)}" ${DAMPING}/>
      ${site(`${side}.upperBallJoint`, ubj, upperPivot)}
    </body>`,
    equalities: `
    <connect name="${side}.upperBallJoint" body1="${side}.knuckle" body2="${side}.upperArm" anchor="${meters(sub(ubj, lbj))}" ${STIFF}/>
    <joint name="drive.${side}.lowerArm" joint1="${side}.lowerArm" ${STIFF}/>`,
  };
}

/** A rigid tie rod on a ball joint of the body it hangs on, to be connected to the knuckle. */
function tieRod(side: string, inner: Vec3, outer: Vec3, carrierAt: Vec3): Parts {
  return {
    bodies: `
      <body name="${side}.tieRod" pos="${meters(sub(inner, carrierAt))}">${INERTIA}
        <joint type="ball" ${DAMPING}/>
        ${site(`${side}.tieRodInner`, inner, inner)}
        ${site(`${side}.tieRodOuter`, outer, inner)}
      </body>`,
    equalities: `
    <connect name="${side}.tieRod" body1="${side}.tieRod" body2="${side}.knuckle" anchor="${meters(sub(outer, inner))}" ${STIFF}/>`,
  };
}

function turningArm(name: string, arm: DrawnTurningArm, axis: Vec3): string {
  return `
    <body name="${name}" pos="${meters(arm.pivot)}">${INERTIA}
      <joint name="${name}" type="hinge" axis="${numbers(axis)}" ${DAMPING}/>
      ${site(`${name}.end`, arm.end, arm.pivot)}
    </body>`;
}

/**
 * The center link hangs on the body by three slides and three hinges u, v, u whose outer two are geared
 * 1 : 1. Such a chain of turns reads the same backward, so it has no twist about the link's line at rest:
 * the link turns by the least rotation, as a constant-velocity coupling turns.
 */
function centerLink(truck: DrawnTruck, rods: Parts): Parts {
  const { steering } = truck;
  if (steering.type !== "pitman") throw new RangeError("centerLink: needs pitman-arm steering");
  const from = steering.pitman.end;
  const line = normalize(sub(steering.idler.end, from));
  const u = normalize(cross(line, [1, 0, 0]));
  const v = cross(line, u);
  const slide = (axis: string) => `<joint type="slide" axis="${axis}" ${DAMPING}/>`;
  const hinge = (name: string, axis: Vec3) =>
    `<joint name="${name}" type="hinge" axis="${numbers(axis)}" ${DAMPING}/>`;
  return {
    bodies: `
    <body name="centerLink" pos="${meters(from)}">${INERTIA}
      ${slide("1 0 0")}${slide("0 1 0")}${slide("0 0 1")}
      ${hinge("link.first", u)}${hinge("link.middle", v)}${hinge("link.last", u)}
      ${rods.bodies}
    </body>`,
    equalities: `
    <joint joint1="link.last" joint2="link.first" polycoef="0 1 0 0 0" ${STIFF}/>
    <connect body1="centerLink" body2="pitman" anchor="0 0 0" ${STIFF}/>
    <connect body1="centerLink" body2="idler" anchor="${meters(sub(steering.idler.end, from))}" ${STIFF}/>
    ${rods.equalities}`,
  };
}

function steering(truck: DrawnTruck): Parts {
  const { steering } = truck;
  const left = steering.innerEnd;
  const right = steering.type === "rack" ? mirrorY(left) : steering.innerEndRight;
  const origin = steering.type === "rack" ? ORIGIN : steering.pitman.end;
  const rods = [
    tieRod("left", left, truck.tieRodOuter, origin),
    tieRod("right", right, mirrorY(truck.tieRodOuter), origin),
  ];
  const both = {
    bodies: rods.map((r) => r.bodies).join(""),
    equalities: rods.map((r) => r.equalities).join(""),
  };
  // A left turn moves the inner ends left with the steering arm ahead of the axis, right with it behind.
  const toward: Vec3 = [0, truck.armAhead ? 1 : -1, 0];
  if (steering.type === "rack") {
    return {
      bodies: `
    <body name="rack" pos="0 0 0">${INERTIA}
      <joint name="steer" type="slide" axis="${numbers(toward)}" ${DAMPING}/>${both.bodies}
    </body>`,
      equalities: `${both.equalities}\n    <joint name="drive.steer" joint1="steer" ${STIFF}/>`,
    };
  }
  const { pitman, idler } = steering;
  const link = centerLink(truck, both);
  return {
    bodies: `${turningArm("pitman", pitman, axisMoving(pitman.axis, pitman.pivot, pitman.end, toward))}
    ${turningArm("idler", idler, normalize(idler.axis))}${link.bodies}`,
    equalities: `${link.equalities}\n    <joint name="drive.steer" joint1="pitman" ${STIFF}/>`,
  };
}

/**
 * Both sides' linkage of a drawn truck as an engine model: arms hinged on their pivot lines, ball joints as
 * point connections, tie rods as rigid bodies, a rack on a slide or a pitman arm, idler and center link.
 * Drives `drive.left.lowerArm`, `drive.right.lowerArm` (rad, + = ball joint rises) and `drive.steer`
 * (rack: meters, pitman: rad; + = left turn).
 */
export function mechanismXml(truck: DrawnTruck): string {
  const parts = [wishbones(truck, "left", (v) => v), wishbones(truck, "right", mirrorY), steering(truck)];
  return `<mujoco>
  <compiler autolimits="true"/>
  <option timestep="0.002" gravity="0 0 0" integrator="implicitfast" iterations="100" tolerance="0"/>
  <worldbody>${parts.map((p) => p.bodies).join("")}
  </worldbody>
  <equality>${parts.map((p) => p.equalities).join("")}
  </equality>
</mujoco>`;
}
