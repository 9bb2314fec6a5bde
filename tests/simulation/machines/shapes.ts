/** What a kind of machine has, by number; the generator spreads it over its steps. */
export interface Shape {
  name: string
  fasteners: number
  sets: number
  steps: number
  hoses: number
  aids: number
  tools: number
  fluids: number
  /** Lots of two lengths that look alike. */
  mixed: number
  gaskets: number
  /** Parts that are no cover and no gasket. */
  parts: number
  marks: number
  putOns: number
  /** Steps that somebody sees a second time. */
  critical: number
  /** Of ten lots, how many have a tightening in the manual, and so in the record. */
  tightened: number
}

// Invented, from a small engine to a large gearbox: 60 to 600 fasteners, 5 to 40 matched sets.
export const SHAPES: readonly Shape[] = [
  shape('mower engine', 60, 5, 8, { tightened: 6 }),
  shape('single-cylinder top end', 72, 6, 9, { fluids: 1 }),
  shape('two-stroke twin', 84, 6, 10, { hoses: 2, fluids: 1 }),
  shape('outboard leg', 90, 8, 11, { hoses: 1, gaskets: 10 }),
  shape('parallel twin', 106, 8, 14, { critical: 2 }),
  shape('hand-cranked compressor', 110, 7, 9, { fluids: 1, hoses: 0 }),
  shape('flat twin', 120, 10, 14, {}),
  shape('water pump with its drive', 64, 5, 6, { gaskets: 6, mixed: 3 }),
  shape('axle with brakes', 140, 12, 12, { hoses: 6, fluids: 3 }),
  shape('steering gear', 96, 9, 10, { marks: 8 }),
  shape('three-cylinder', 170, 14, 16, {}),
  shape('gearbox of five speeds', 150, 16, 12, { marks: 10, aids: 1 }),
  shape('straight four', 220, 18, 20, { critical: 3 }),
  shape('straight four, overhead valves', 200, 22, 18, { tightened: 9 }),
  shape('diesel four with injectors', 260, 24, 22, { hoses: 10, putOns: 6 }),
  shape('flat four', 240, 20, 20, { aids: 8, tools: 5 }),
  shape('tractor clutch and gearbox', 300, 20, 18, { tightened: 5 }),
  shape('straight six', 330, 28, 24, { gaskets: 16 }),
  shape('vee six', 380, 30, 26, { hoses: 12, mixed: 6 }),
  shape('hydraulic press', 280, 12, 15, { hoses: 14, fluids: 2, aids: 9 }),
  shape('vee eight', 450, 36, 28, { critical: 4 }),
  shape('boat diesel', 520, 34, 28, { fluids: 4, putOns: 8 }),
  shape('large gearbox', 560, 40, 22, { marks: 14, tightened: 10 }),
  shape('vee twelve', 600, 40, 30, { gaskets: 20, hoses: 12 }),
]

function shape(
  name: string,
  fasteners: number,
  sets: number,
  steps: number,
  own: Partial<Omit<Shape, 'name' | 'fasteners' | 'sets' | 'steps'>>,
): Shape {
  return {
    name,
    fasteners,
    sets,
    steps,
    hoses: 4,
    aids: 4,
    tools: 2,
    fluids: 2,
    mixed: 2,
    gaskets: Math.ceil(steps / 2),
    parts: Math.ceil(steps / 2),
    marks: 4,
    putOns: 3,
    critical: 1,
    tightened: 8,
    ...own,
  }
}
