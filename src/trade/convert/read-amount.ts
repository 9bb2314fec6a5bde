import { withoutNoise } from '../number.ts'
import {
  numberAndUnit,
  type QuantityFault,
  readLength,
  readTorque,
  readVolume,
  type UnitSystem,
} from '../quantity.ts'
import { notUnderstood, type Reading, understood } from '../reading.ts'
import { fromUnit, type Kind, type Unit, unitsOf } from './units.ts'

/** A number of a unit, as typed, and what it is in the first unit of its kind. */
export interface Amount {
  kind: Kind
  number: number
  unit: Unit
  /** In the first unit of the kind: N·m, mm, L, kPa, °C. */
  base: number
  /** One in the last place typed, in the typed unit; 0 where it was typed as a fraction, which is exact. */
  step: number
  typed: string
}

/** As of any quantity, or a `kind` that is another than the one asked for. */
export type AmountFault = QuantityFault | 'kind'

const pressureNames: Readonly<Record<string, string>> = {
  kpa: 'kPa',
  bar: 'bar',
  psi: 'psi',
  'lbf/in²': 'psi',
  'lbf/in2': 'psi',
  'kgf/cm²': 'kgf/cm²',
  'kgf/cm2': 'kgf/cm²',
  'kg/cm²': 'kgf/cm²',
  'kg/cm2': 'kgf/cm²',
}
const temperatureNames: Readonly<Record<string, string>> = {
  '°c': '°C',
  degc: '°C',
  c: '°C',
  celsius: '°C',
  '°f': '°F',
  degf: '°F',
  f: '°F',
  fahrenheit: '°F',
}
const mostKilopascals = 500_000
const coldestCelsius = -273.15
const hottestCelsius = 3000

/**
 * Reads an amount of any kind a mechanic has to do with: torque, length, volume, pressure, temperature. The faults are
 * those of the kind that its unit belongs to.
 */
export function readAmount(text: string, options: { units: UnitSystem }): Reading<Amount, AmountFault> {
  // Manuals print `in.` and `lb-ft.`
  const plain = text.trim().replace(/(?<=\D)\.$/, '')
  const parts = numberAndUnit(plain, '22 Nm')
  if (!parts.understood) {
    // Of `1,000 buckets` the comma is the first fault, and not the only one.
    const isNear = parts.nearest !== '' && readAmount(parts.nearest, options).understood
    return isNear ? parts : { ...parts, nearest: '22 Nm' }
  }
  const { number, numberText, unit, typed } = parts.value
  const step = stepOf(numberText)
  const other = readOther(unit.replace(/(?<=\d|°|deg) /g, ''))
  if (other) {
    const base = fromUnit(number, other.unit)
    const code = limitFault(other.kind, base)
    if (code !== null) return notUnderstood(code, typed, other.kind === 'pressure' ? '2.2 bar' : '88 °C')
    return understood({ ...other, number, base, step, typed })
  }
  const torque = readTorque(plain)
  if (torque.understood) return measured('torque', torque.value.newtonMetres)
  const length = readLength(plain)
  if (length.understood) return measured('length', length.value.millimetres)
  const volume = readVolume(plain, options)
  if (volume.understood) return measured('volume', volume.value.litres)
  const ofItsKind = [torque, length, volume].find(({ code }) => code !== 'unit')
  return ofItsKind ?? torque

  function measured(kind: Kind, base: number): Reading<Amount, AmountFault> {
    return understood({ kind, number, unit: unitFor(kind, number, base, unit), base, step, typed })
  }
}

/** Reads an amount of one kind; one of another is a fault, and so is a number without a unit. */
export function readAmountOf(
  kind: 'torque' | 'length',
  text: string,
  options: { units: UnitSystem },
): Reading<Amount, AmountFault> {
  const amount = readAmount(text, options)
  if (amount.understood && amount.value.kind === kind) return amount
  const ofKind = kind === 'torque' ? readTorque(text) : readLength(text)
  const example = kind === 'torque' ? '22 Nm' : '400 mm'
  const near = ofKind.understood ? example : ofKind.nearest
  const isNear = (kind === 'torque' ? readTorque(near) : readLength(near)).understood
  const nearest = isNear ? near : example
  return notUnderstood(amount.understood ? 'kind' : amount.code, text.trim(), nearest)
}

function readOther(name: string): { kind: Kind; unit: Unit } | undefined {
  for (const [kind, names] of [
    ['pressure', pressureNames],
    ['temperature', temperatureNames],
  ] as const) {
    const unit = unitsOf[kind].find((each) => Object.hasOwn(names, name) && each.name === names[name])
    if (unit) return { kind, unit }
  }
  return undefined
}

function limitFault(kind: Kind, base: number): AmountFault | null {
  if (kind === 'pressure') return base < 0 ? 'not-positive' : base > mostKilopascals ? 'too-large' : null
  return base < coldestCelsius ? 'number' : base > hottestCelsius ? 'too-large' : null
}

/** The unit of the table that was typed, whatever its spelling, or one of its own, such as cl or N·cm. */
function unitFor(kind: Kind, number: number, base: number, typedName: string): Unit {
  if (number === 0) {
    const one = readLength(`1 ${typedName}`)
    return unitFor(kind, 1, one.understood ? one.value.millimetres : 1, typedName)
  }
  const scale = withoutNoise(base / number)
  const known = unitsOf[kind].find((unit) => Math.abs(unit.scale - scale) < 1e-9 * scale)
  return known ?? { name: typedName, scale }
}

function stepOf(numberText: string): number {
  if (numberText.includes('/')) return 0
  const decimals = /[.,](\d+)$/.exec(numberText)?.[1]?.length ?? 0
  return Number((10 ** -decimals).toPrecision(6))
}
