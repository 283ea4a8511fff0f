import type { NamedMesh } from "../geometry/drawnFile.ts";
import { plainAscii } from "./plainAscii.ts";

/** Decimals of a coordinate in mm: a thousandth of a micrometer. */
const DECIMALS = 6;

/** What every file of one part begins with: product, units (mm, rad), how exact. `#13` is the context of its shape. */
const START = [
  "APPLICATION_CONTEXT('core data for automotive mechanical design processes')",
  "APPLICATION_PROTOCOL_DEFINITION('international standard','automotive_design',2000,#1)",
  "PRODUCT_CONTEXT('',#1,'mechanical')",
  "PRODUCT('part','part','',(#3))",
  "PRODUCT_DEFINITION_FORMATION('','',#4)",
  "PRODUCT_DEFINITION_CONTEXT('part definition',#1,'design')",
  "PRODUCT_DEFINITION('design','',#5,#6)",
  "PRODUCT_DEFINITION_SHAPE('','',#7)",
  "(LENGTH_UNIT()NAMED_UNIT(*)SI_UNIT(.MILLI.,.METRE.))",
  "(NAMED_UNIT(*)PLANE_ANGLE_UNIT()SI_UNIT($,.RADIAN.))",
  "(NAMED_UNIT(*)SI_UNIT($,.STERADIAN.)SOLID_ANGLE_UNIT())",
  "UNCERTAINTY_MEASURE_WITH_UNIT(LENGTH_MEASURE(1.E-3),#9,'distance_accuracy_value','')",
  "(GEOMETRIC_REPRESENTATION_CONTEXT(3)GLOBAL_UNCERTAINTY_ASSIGNED_CONTEXT((#12))GLOBAL_UNIT_ASSIGNED_CONTEXT((#9,#10,#11))REPRESENTATION_CONTEXT('',''))",
  "CARTESIAN_POINT('',(0.,0.,0.))",
  "AXIS2_PLACEMENT_3D('',#14,$,$)",
  "PRODUCT_RELATED_PRODUCT_CATEGORY('part',$,(#4))",
] as const;

/** A corner as it was written. */
interface Corner {
  readonly id: string;
  readonly at: readonly number[];
}

/**
 * Closed surfaces as faceted solids in the text form of ISO 10303-21 (STEP), schema of ISO 10303-214 (both from memory): a
 * `FACETED_BREP` each, every triangle a flat face. Round parts are as flat-sided as their meshes. mm.
 * @param about put in front as a comment
 * @throws RangeError for a coordinate that is not finite
 */
export function stepText(meshes: readonly NamedMesh[], about: string): string {
  const lines: string[] = [...START];
  const add = (entity: string) => `#${lines.push(entity)}`;
  const solids = meshes.map(({ name, mesh: { positions, triangles } }) => {
    const corners = new Map<string, Corner>();
    const cornerOf = (index: number): Corner => {
      const at = [0, 1, 2].map((axis) => positions[3 * index + axis]!);
      const text = at.map(real).join(",");
      const known = corners.get(text);
      if (known) return known;
      const made = { id: add(`CARTESIAN_POINT('',(${text}))`), at };
      corners.set(text, made);
      return made;
    };
    const faces: string[] = [];
    for (let t = 0; t < triangles.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((i) => cornerOf(triangles[t + i]!)) as [Corner, Corner, Corner];
      const normal = normalOf(a.at, b.at, c.at);
      if (normal === null) continue;
      const up = add(`DIRECTION('',(${normal.map(real).join(",")}))`);
      const plane = add(`PLANE('',${add(`AXIS2_PLACEMENT_3D('',${a.id},${up},$)`)})`);
      const bound = add(`FACE_OUTER_BOUND('',${add(`POLY_LOOP('',(${a.id},${b.id},${c.id}))`)},.T.)`);
      faces.push(add(`FACE_SURFACE('',(${bound}),${plane},.T.)`));
    }
    return add(`FACETED_BREP('${plain(name)}',${add(`CLOSED_SHELL('',(${faces.join(",")}))`)})`);
  });
  const shape = add(`FACETED_BREP_SHAPE_REPRESENTATION('',(#15,${solids.join(",")}),#13)`);
  add(`SHAPE_DEFINITION_REPRESENTATION(#8,${shape})`);
  return [
    "ISO-10303-21;",
    `/* Wellsweep drawing, ${plain(about).replace(/\*\//g, "* /")} */`,
    "HEADER;",
    "FILE_DESCRIPTION(('faceted solids, mm'),'2;1');",
    "FILE_NAME('','',(''),(''),'Wellsweep','Wellsweep','');",
    "FILE_SCHEMA(('AUTOMOTIVE_DESIGN { 1 0 10303 214 1 1 1 1 }'));",
    "ENDSEC;",
    "DATA;",
    ...lines.map((entity, i) => `#${i + 1}=${entity};`),
    "ENDSEC;",
    "END-ISO-10303-21;",
    "",
  ].join("\n");
}

/** A real number as the form has it: with a point always. @throws RangeError where it is not finite */
function real(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`stepText: a coordinate is ${value}`);
  const text = (value + 0).toFixed(DECIMALS).replace(/0+$/, "");
  return text === "-0." ? "0." : text;
}

/** Unit, outward by the corners' order; null = they span no area. */
function normalOf(
  a: readonly number[],
  b: readonly number[],
  c: readonly number[],
): readonly number[] | null {
  const [u, v] = [b, c].map((to) => to.map((value, axis) => value - a[axis]!)) as [number[], number[]];
  const normal = [0, 1, 2].map((i) => {
    const [j, k] = [(i + 1) % 3, (i + 2) % 3];
    return u[j]! * v[k]! - u[k]! * v[j]!;
  });
  const size = Math.hypot(...normal);
  return size > 0 ? normal.map((value) => value / size) : null;
}

/** As the form's strings may be: printable ASCII; an apostrophe and a backslash, which begins a code, doubled. */
function plain(text: string): string {
  return plainAscii(text).replace(/['\\]/g, "$&$&");
}
