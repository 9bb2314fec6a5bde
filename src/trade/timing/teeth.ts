/** A pair of sprockets, pulleys or gears: the driver is nearer to the crank, the driven one nearer to the cam. */
export interface Stage {
  driver: number
  driven: number
}

/** A pair, and what one tooth on either of its sprockets is worth. */
export interface ToothAngle extends Stage {
  crankDegrees: number
  camDegrees: number
}

/** What one tooth is at the crank and at the cam, or why these teeth drive no cam of a four-stroke engine. */
export type ToothAngles =
  /** The stages from the crank to the cam. */
  | { code: 'tooth-angles'; stages: ToothAngle[] }
  | { code: 'no-stages' }
  | { code: 'too-many-stages'; most: number }
  /** No whole number, or one that no timing sprocket has. */
  | { code: 'teeth'; teeth: number }
  /** The cam would turn twice as fast as the crank: the numbers stand the other way round. */
  | { code: 'swapped' }
  /** `turnsOfCrank`: for one turn of the cam. `driven`: what the last sprocket would need, where that is whole. */
  | { code: 'not-two-to-one'; turnsOfCrank: number; driven: number | null }

const fewestTeeth = 6
const mostTeeth = 300
const mostStages = 2

/**
 * What one tooth is worth, in degrees of the crank and of the cam, of a four-stroke engine: the cam turns once while the
 * crank turns twice, directly or through one intermediate shaft. One tooth at a sprocket of z teeth is 360/z degrees of
 * its own shaft.
 */
export function toothAngles(stages: readonly Stage[]): ToothAngles {
  const last = stages.at(-1)
  if (last === undefined) return { code: 'no-stages' }
  if (stages.length > mostStages) return { code: 'too-many-stages', most: mostStages }
  const wrong = stages.flatMap(({ driver, driven }) => [driver, driven]).find((teeth) => !isTeeth(teeth))
  if (wrong !== undefined) return { code: 'teeth', teeth: wrong }
  const drivers = product(stages.map(({ driver }) => driver))
  const drivens = product(stages.map(({ driven }) => driven))
  if (drivers === 2 * drivens) return { code: 'swapped' }
  if (drivens !== 2 * drivers) {
    const driven = (2 * drivers * last.driven) / drivens
    return {
      code: 'not-two-to-one',
      turnsOfCrank: drivens / drivers,
      driven: isTeeth(driven) ? driven : null,
    }
  }
  return { code: 'tooth-angles', stages: stages.map((stage, i) => angleOf(stage, stages.slice(0, i))) }
}

function angleOf(stage: Stage, before: readonly Stage[]): ToothAngle {
  const crankTurns = product(before.map(({ driver, driven }) => driven / driver))
  const crankDegrees = (360 / stage.driver) * crankTurns
  return { ...stage, crankDegrees, camDegrees: crankDegrees / 2 }
}

function isTeeth(teeth: number): boolean {
  return Number.isInteger(teeth) && teeth >= fewestTeeth && teeth <= mostTeeth
}

function product(numbers: readonly number[]): number {
  return numbers.reduce((so, number) => so * number, 1)
}
