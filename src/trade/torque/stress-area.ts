import { type Thread, threadsPerInch } from '../thread.ts'

const millimetresPerInch = 25.4

/**
 * Tensile stress area of a thread in mm²: the section that carries the load. Null for a taper pipe thread, which
 * carries none, and where the pitch is not known. ISO 898-1 (As,nom) for metric, ASME B1.1 for unified threads.
 */
export function stressAreaMm2(thread: Thread): number | null {
  const { diameterMm, pitchMm } = thread
  if (pitchMm === undefined) return null
  if (thread.system === 'metric') return metricArea(diameterMm, pitchMm)
  const perInch = threadsPerInch(thread)
  if (thread.system === 'npt' || perInch === undefined) return null
  const diameter = diameterMm / millimetresPerInch - 0.9743 / perInch
  return (Math.PI / 4) * (diameter * millimetresPerInch) ** 2
}

/** As,nom = pi/4 ((d2 + d3)/2)², with d2 = d - 3/4 H and d3 = d - 5/4 H - H/6 of the basic profile, ISO 68-1. */
function metricArea(diameterMm: number, pitchMm: number): number {
  const height = (Math.sqrt(3) / 2) * pitchMm
  const pitchDiameter = diameterMm - 0.75 * height
  const minorDiameter = diameterMm - 1.25 * height - height / 6
  return (Math.PI / 4) * ((pitchDiameter + minorDiameter) / 2) ** 2
}
