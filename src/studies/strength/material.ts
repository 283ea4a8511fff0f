import type { Material } from "../../setup/catalogs/readMaterials.ts";
import type { BuildSetup } from "../../setup/types/buildTypes.ts";
import type { SetupIssue } from "../../setup/types/types.ts";
import { mmFromInches } from "../../units/lengthUnits.ts";
import { GRAVITY, MPA_PER_PSI, NEWTONS_PER_POUND } from "../../units/quantity.ts";
import { nearestWord } from "../../units/words.ts";

/** Of all steels here: Young's modulus 30 × 10⁶ psi and Poisson's ratio 0.29 (Shigley, from memory), MPa. */
export const STEEL_ELASTICITY = 30e6 * MPA_PER_PSI;
export const STEEL_SHEAR_MODULUS = STEEL_ELASTICITY / (2 * 1.29);

/** Of all steels here: 0.2836 lb/in³ (published with the weight formulas of bars and tubes), kg/mm³. */
export const STEEL_DENSITY = (0.2836 * NEWTONS_PER_POUND) / GRAVITY / mmFromInches(1) ** 3;

/** Finds materials by name: the setup's own first, then the catalog's. */
export class Materials {
  readonly #build: BuildSetup;
  readonly #catalog: readonly Material[];

  constructor(build: BuildSetup, catalog: readonly Material[]) {
    this.#build = build;
    this.#catalog = catalog;
  }

  /** @param name null = the build's. @throws RangeError for a name that `unknownMaterial` would have told of */
  named(name: string | null): Material {
    const wanted = name ?? this.#build.material;
    const found = this.#find(wanted);
    if (found === null) throw new RangeError(`Materials: no material called ${JSON.stringify(wanted)}`);
    return found;
  }

  /** The first name of a build that is no material, as an issue; null = all are known. */
  unknownMaterial(file: string): SetupIssue | null {
    const { material, pin, members, plates, studs, rodEnds } = this.#build;
    const listed = { members, plates, studs, rodEnds } as const;
    const named: (readonly [key: string, name: string | null])[] = [
      ["build.material", material],
      ["build.pin.material", pin?.material ?? null],
      ...Object.entries(listed).flatMap(([key, entries]) =>
        entries.map((one, i) => [`build.${key}[${i}].material`, materialOf(one)] as const),
      ),
    ];
    for (const [key, name] of named) {
      if (name === null || this.#find(name) !== null) continue;
      const names = [...this.#build.materials, ...this.#catalog].map((one) => one.name);
      const near = nearestWord(name.slice(0, 200), names);
      const mend =
        near === null
          ? "no such material in build.materials or the catalog; write it into build.materials with its yield and ultimate strength"
          : `no such material; did you mean ${JSON.stringify(near)}?`;
      return { file, key, value: JSON.stringify(name), mend };
    }
    return null;
  }

  #find(name: string): Material | null {
    const own = this.#build.materials.find((one) => one.name === name);
    if (own) return { ...own, source: own.source ?? "the setup" };
    return this.#catalog.find((one) => one.name === name) ?? null;
  }
}

function materialOf(one: object): string | null {
  return (one as { readonly material?: string | null }).material ?? null;
}
