import { inchesToMillimetres, withoutNoise } from '../number.ts'
import { imperialLitres, litreUnits, millimetreUnits, torqueUnits, usLitres } from '../unit-factors.ts'

export type Kind = 'torque' | 'length' | 'volume' | 'pressure' | 'temperature'

/** A unit of one kind: `number` of it is `number` x scale + offset in the first unit of its kind. */
export interface Unit {
  name: string
  scale: number
  offset?: number
}

// Exact by definition; NIST SP 811, appendix B.
const kilopascalsPerPsi = (0.45359237 * 9.80665) / 0.0254 ** 2 / 1000

/** The units in which an amount of a kind is shown; the first is that of the record. */
export const unitsOf: Readonly<Record<Kind, readonly Unit[]>> = {
  torque: [
    { name: 'N·m', scale: 1 },
    { name: 'lbf·ft', scale: factor(torqueUnits, 'lbfft') },
    { name: 'lbf·in', scale: factor(torqueUnits, 'lbfin') },
    { name: 'kgf·m', scale: factor(torqueUnits, 'kgfm') },
    { name: 'kgf·cm', scale: factor(torqueUnits, 'kgfcm') },
  ],
  length: [
    { name: 'mm', scale: 1 },
    { name: 'in', scale: inchesToMillimetres(1) },
    { name: 'thou', scale: inchesToMillimetres(0.001) },
    { name: 'µm', scale: factor(millimetreUnits, 'um') },
  ],
  volume: [
    { name: 'L', scale: 1 },
    { name: 'US qt', scale: usLitres.qt },
    { name: 'imp qt', scale: imperialLitres.qt },
    { name: 'US gal', scale: usLitres.gal },
    { name: 'imp gal', scale: imperialLitres.gal },
    { name: 'mL', scale: factor(litreUnits, 'ml') },
  ],
  pressure: [
    { name: 'kPa', scale: 1 },
    { name: 'bar', scale: 100 },
    { name: 'psi', scale: kilopascalsPerPsi },
    { name: 'kgf/cm²', scale: 98.0665 },
  ],
  temperature: [
    { name: '°C', scale: 1 },
    { name: '°F', scale: 5 / 9, offset: -160 / 9 },
  ],
}

/** An amount of the first unit of a kind in another of its units. */
export function inUnit(base: number, { scale, offset = 0 }: Unit): number {
  return withoutNoise((base - offset) / scale)
}

/** A number of a unit in the first unit of its kind. */
export function fromUnit(number: number, { scale, offset = 0 }: Unit): number {
  return withoutNoise(number * scale + offset)
}

function factor(units: ReadonlyMap<string, number>, name: string): number {
  const value = units.get(name)
  if (value === undefined) throw new Error(`no unit ${name}`)
  return value
}
