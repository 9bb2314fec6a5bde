import { exact } from './bounds.ts'

/** A bolt under a force: force in N, stretched length in mm, stress area in mm², modulus of elasticity in MPa. */
export interface StretchedBolt {
  newtons: number
  lengthMm: number
  areaMm2: number
  modulusMPa: number
}

/** How much longer a bolt gets under a force, mm: dl = F L / (E A), within its elastic range. */
export function boltStretch({ newtons, lengthMm, areaMm2, modulusMPa }: StretchedBolt): number {
  return exact((newtons * lengthMm) / (modulusMPa * areaMm2))
}
