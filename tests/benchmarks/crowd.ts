/** Invented sites of any size with a fixed seed: one or more pools among posts, fences, devices, equipment and pavings. */
import type { Site } from "../../rules/site/site.ts";

/** A number stream from a seed (mulberry32, public domain, T. Ettinger). */
export function numbers(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/** A lobed outline of `vertices` corners round the origin, inches. */
export function lobed(vertices: number, radius: number, lobes: number, depth: number): [number, number][] {
  return Array.from({ length: vertices }, (_, i) => {
    const angle = (i / vertices) * 2 * Math.PI;
    const r = radius * (1 + depth * Math.cos(lobes * angle));
    return [r * 1.4 * Math.cos(angle), r * Math.sin(angle)];
  });
}

/** `count` elements beside one pool of `vertices` corners, six walls and a house. */
export function crowdedSite(count: number, vertices: number, seed = 680): Site {
  const next = numbers(seed);
  const spread = 160 + Math.sqrt(count) * 60;
  const place = (): [number, number] => {
    for (;;) {
      const x = (next() * 2 - 1) * spread;
      const y = (next() * 2 - 1) * spread;
      if (Math.hypot(x / 1.4, y) > 150) return [Math.round(x * 16) / 16, Math.round(y * 16) / 16];
    }
  };
  const elements: object[] = [
    {
      id: "pool-1",
      kind: "pool",
      outline: { vertices: lobed(vertices, 120, 3, 0.12), closed: true },
      body: "pool",
      shell: "sprayed-concrete",
      steel: "bare",
      finish: "plaster",
      waterLevel: 0,
      depth: 60,
    },
    {
      id: "deck-1",
      kind: "surface",
      material: "concrete",
      steel: "none",
      level: 0,
      support: "grade",
      outline: {
        vertices: [
          [-320, -240],
          [320, -240],
          [320, 240],
          [-320, 240],
        ],
        closed: true,
      },
    },
    {
      id: "house-1",
      kind: "building",
      top: 120,
      outline: {
        vertices: [
          [-320, 250],
          [320, 250],
          [320, 500],
          [-320, 500],
        ],
        closed: true,
      },
    },
  ];
  for (let i = 0; i < 6; i++) {
    const angle = (i / 6) * 2 * Math.PI;
    const at = (turn: number): [number, number] => [260 * Math.cos(angle + turn), 170 * Math.sin(angle + turn)];
    elements.push({
      id: `wall-${i + 1}`,
      kind: "wall",
      path: { vertices: [at(-0.12), at(0.12)], closed: false },
      thickness: 6,
      top: 72,
      permanent: true,
      reinforced: false,
    });
  }
  for (let i = elements.length; i < count; i++) {
    const [x, y] = place();
    const pick = next();
    if (pick < 0.5)
      elements.push({ id: `post-${i}`, kind: "metal", part: "post", shape: { point: [x, y] }, z: [0, 60] });
    else if (pick < 0.7) {
      const path = {
        vertices: [
          [x, y],
          [x + next() * 60, y + next() * 60],
        ],
        closed: false,
      };
      elements.push({ id: `fence-${i}`, kind: "fence", path, top: 60, metal: next() < 0.7 });
    } else if (pick < 0.85)
      elements.push({ id: `device-${i}`, kind: "device", device: "receptacle", at: [x, y], z: 24, gfci: true });
    else if (pick < 0.95)
      elements.push({ id: `light-${i}`, kind: "device", device: "luminaire", at: [x, y], z: 150, gfci: true });
    else
      elements.push({
        id: `unit-${i}`,
        kind: "equipment",
        unit: "filter",
        at: [x, y],
        metalParts: false,
        electric: false,
      });
  }
  return {
    format: "copperband-site",
    version: 1,
    name: "Invented crowd",
    edition: "nec-2020",
    elements,
  } as unknown as Site;
}
