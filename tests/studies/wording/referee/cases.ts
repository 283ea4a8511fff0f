import { readdirSync, readFileSync } from "node:fs";
import { boltedTruck, type Truck, truckOf } from "../../../../src/app/state/truck.ts";
import type { Setup } from "../../../../src/setup/types/types.ts";

const FOLDER = new URL("../../../../shared/", import.meta.url);

/** Every example that needs no mesh file, with each of its variants. */
export function exampleTrucks(): { readonly who: string; readonly truck: Truck }[] {
  const files = readdirSync(FOLDER).filter(
    (file) => file.endsWith(".json") && !/^(tire-sizes|scanned-fender)/.test(file),
  );
  return files.flatMap((file) => {
    const base = exampleTruck(file, null);
    return [null, ...base.setup.variantNames].map((variant) => ({
      who: `${file}, ${variant ?? "as it stands"}`,
      truck: variant === null ? base : exampleTruck(file, variant),
    }));
  });
}

export function exampleTruck(file: string, variant: string | null): Truck {
  const made = truckOf(readFileSync(new URL(file, FOLDER), "utf8"), file, variant);
  if (!made.ok) throw new Error(JSON.stringify(made.issues));
  return made.value;
}

/** A generator of the numbers 0 to 1, the same for a seed (Park and Miller's, from memory). */
function numbersFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Trucks like the examples with other knuckles, wheels, travel and stops, all drawn at random; those that go together. */
export function randomTrucks(count: number, seed: number): { readonly who: string; readonly truck: Truck }[] {
  const next = numbersFrom(seed);
  const about = (half: number) => (2 * next() - 1) * half;
  const examples = exampleTrucks();
  const found: { who: string; truck: Truck }[] = [];
  for (let tries = 0; found.length < count; tries++) {
    if (tries > 5 * count) throw new Error(`only ${found.length} of ${count} trucks go together`);
    const { who, truck } = examples[Math.floor(next() * examples.length)]!;
    const { setup } = truck;
    const [x, y, z] = setup.knuckle.steeringArm;
    const drawn: Setup = {
      ...setup,
      knuckle: {
        ...setup.knuckle,
        hubFace: setup.knuckle.hubFace + about(20),
        steeringArm: [x + about(12), y + about(12), z + about(12)],
      },
      wheel: { ...setup.wheel, offset: setup.wheel.offset + about(15) },
      travel: { droop: setup.travel.droop + about(15), bump: setup.travel.bump + about(15) },
      limits: setup.limits && {
        ...setup.limits,
        steeringStop: next() < 0.5 ? setup.limits.steeringStop : (20 + 20 * next()) * (Math.PI / 180),
      },
    } as Setup;
    const built = boltedTruck(drawn, "random");
    if (built.ok) found.push({ who: `seed ${seed}, try ${tries}, of ${who}`, truck: built.value });
  }
  return found;
}

/** Poses all over the range, as a share of the travel and a steer; the corners first. */
export function spread(count: number, seed: number): (readonly [travelShare: number, steer: number])[] {
  const next = numbersFrom(seed);
  const corners = [0, 1].flatMap((share) => [-1, 1].map((steer) => [share, steer] as const));
  return [
    ...corners,
    ...Array.from({ length: count - corners.length }, () => [next(), 2 * next() - 1] as const),
  ];
}
