import { exact } from './bounds.ts'

/**
 * How much longer a bolt gets under a force, mm: dl = F L / (E A), within its elastic range. Force in N, stretched
 * length in mm, stress area in mm², modulus of elasticity in MPa.
 */
export function boltStretch(bolt: {
  newtons: number
  lengthMm: number
  areaMm2: number
  modulusMPa: number
}): number {
  const { newtons, lengthMm, areaMm2, modulusMPa } = bolt
  return exact((newtons * lengthMm) / (modulusMPa * areaMm2))
}
