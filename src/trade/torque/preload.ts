import type { Thread } from '../thread.ts'
import { type FastenerClass, proofStressMpa } from './fastener-class.ts'
import { stressAreaMm2 } from './stress-area.ts'

/** Coefficients of friction, in thread and under the head alike, between which the truth lies. */
export interface FrictionRange {
  least: number
  most: number
}

/** The clamping force that a torque makes: least with most friction, and the other way round. */
export interface PreloadRange {
  leastN: number
  mostN: number
  /** K in T = K d F with the least and with the most friction. */
  leastNutFactor: number
  mostNutFactor: number
}

/** A preload against what the fastener bears without taking a set. */
export interface ProofShare {
  areaMm2: number
  proofMpa: number
  proofLoadN: number
  /** Shares of the proof load: 0.75 is three quarters. */
  least: number
  most: number
}

/** Mean diameter of the bearing face under the head, in nominal diameters: between d and 1.5 d. Common practice. */
const usualBearingFactor = 1.25

const halfFlank = Math.PI / 6

/**
 * The preload that a torque implies, by the full formula for a 60 degree thread with collar friction:
 * T = F d [dm/2d (tan l + f sec a)/(1 - f tan l sec a) + b f/2], a = 30°, tan l = p/(pi dm) (Shigley, Mechanical
 * Engineering Design, chapter on screws and fasteners). Null for a taper pipe thread and an unknown pitch.
 * @param bearingFactor mean diameter of the bearing face in nominal diameters
 */
export function impliedPreload(
  thread: Thread,
  newtonMetres: number,
  friction: FrictionRange,
  bearingFactor = usualBearingFactor,
): PreloadRange | null {
  const leastNutFactor = nutFactor(thread, friction.least, bearingFactor)
  const mostNutFactor = nutFactor(thread, friction.most, bearingFactor)
  if (leastNutFactor === null || mostNutFactor === null) return null
  return {
    leastN: shortFormPreload(mostNutFactor, thread.diameterMm, newtonMetres),
    mostN: shortFormPreload(leastNutFactor, thread.diameterMm, newtonMetres),
    leastNutFactor,
    mostNutFactor,
  }
}

/** A preload as a share of the proof load of a class; null where the standard has none for the size. */
export function shareOfProof(
  thread: Thread,
  fastenerClass: FastenerClass,
  { leastN, mostN }: PreloadRange,
): ProofShare | null {
  const areaMm2 = stressAreaMm2(thread)
  const proofMpa = proofStressMpa(fastenerClass, thread.diameterMm)
  if (areaMm2 === null || proofMpa === null) return null
  const proofLoadN = areaMm2 * proofMpa
  return { areaMm2, proofMpa, proofLoadN, least: leastN / proofLoadN, most: mostN / proofLoadN }
}

/** K in T = K d F for a friction; null for a taper pipe thread and an unknown pitch. */
export function nutFactor(
  { system, diameterMm, pitchMm }: Thread,
  friction: number,
  bearingFactor = usualBearingFactor,
): number | null {
  if (system === 'npt' || pitchMm === undefined) return null
  const meanMm = diameterMm - 0.75 * (Math.sqrt(3) / 2) * pitchMm
  const tanLead = pitchMm / (Math.PI * meanMm)
  const flank = friction / Math.cos(halfFlank)
  const thread = ((meanMm / (2 * diameterMm)) * (tanLead + flank)) / (1 - flank * tanLead)
  return thread + (bearingFactor * friction) / 2
}

/** Torque in N·m for a preload by the short form T = K d F. */
export function shortFormTorque(factor: number, diameterMm: number, preloadN: number): number {
  return (factor * diameterMm * preloadN) / 1000
}

function shortFormPreload(factor: number, diameterMm: number, newtonMetres: number): number {
  return (newtonMetres * 1000) / (factor * diameterMm)
}
