import { notUnderstood, type Reading, understood } from '../reading.ts'
import type { Thread } from '../thread.ts'

/** How strong a fastener is: a property class of ISO 898-1, or a grade of SAE J429. */
export type FastenerClass =
  | { standard: 'ISO 898-1'; name: PropertyClass }
  | { standard: 'SAE J429'; name: SaeGrade }

export type PropertyClass = keyof typeof proofMpa
export type SaeGrade = keyof typeof proofKsi

/** Why a class was not understood: nothing there, no form of a class, or a class or grade that the standard lacks. */
export type FastenerClassFault = 'empty' | 'form' | 'class' | 'grade'

/** Proof stresses up to a nominal diameter, the smallest diameter first. */
type Proof = readonly { toMm: number; stress: number }[]

const inch = 25.4
const mpaPerKsi = (0.45359237 * 9.80665 * 1000) / inch ** 2
const mostMetricMm = 39

/**
 * Proof stress Sp in MPa, ISO 898-1, for M1.6 to M39. Class 8.8 above M16, 10.9 and 12.9 were read in reprints; 8.8 up to
 * M16 is from memory and gives the printed proof loads; the rest is from memory. Class 9.8 ends at M16.
 */
const proofMpa = {
  '4.6': [{ toMm: mostMetricMm, stress: 225 }],
  '4.8': [{ toMm: mostMetricMm, stress: 310 }],
  '5.6': [{ toMm: mostMetricMm, stress: 280 }],
  '5.8': [{ toMm: mostMetricMm, stress: 380 }],
  '6.8': [{ toMm: mostMetricMm, stress: 440 }],
  '8.8': [
    { toMm: 16, stress: 580 },
    { toMm: mostMetricMm, stress: 600 },
  ],
  '9.8': [{ toMm: 16, stress: 650 }],
  '10.9': [{ toMm: mostMetricMm, stress: 830 }],
  '12.9': [{ toMm: mostMetricMm, stress: 970 }],
} as const satisfies Record<string, Proof>

/**
 * Proof stress in ksi, SAE J429, read in a textbook's reprint (Shigley and Mischke, Mechanical Engineering Design, 5th
 * edition). The standard begins at 1/4 inch; numbered sizes are taken as of the same steel, by common practice.
 */
const proofKsi = {
  '2': [
    { toMm: 0.75 * inch, stress: 55 },
    { toMm: 1.5 * inch, stress: 33 },
  ],
  '5': [
    { toMm: inch, stress: 85 },
    { toMm: 1.5 * inch, stress: 74 },
  ],
  '8': [{ toMm: 1.5 * inch, stress: 120 }],
} as const satisfies Record<string, Proof>

/** Reads a class as it stands on the head or in the manual: `10.9`, `class 8.8`, `grade 10.9`, `grade 5`, `gr 8`, `SAE 5`. */
export function readFastenerClass(text: string): Reading<FastenerClass, FastenerClassFault> {
  const typed = text.trim()
  if (typed === '') return notUnderstood('empty', '', '8.8')
  const form = typed.toLowerCase().replace(/\s+/g, ' ')
  const property = /^(?:(?:property )?(?:class|cl|grade|gr)\.? ?)?(\d{1,2})[.,](\d)$/.exec(form)
  if (property) {
    const name = `${property[1]}.${property[2]}`
    if (isPropertyClass(name)) return understood({ standard: 'ISO 898-1', name })
    return notUnderstood('class', typed, nearestClass(Number(name)))
  }
  const grade = /^(?:sae )?(?:grade|gr)\.? ?(\d{1,2})$|^sae ?(\d{1,2})$/.exec(form)
  if (!grade) return notUnderstood('form', typed, /gr|sae/.test(form) ? 'grade 5' : '8.8')
  const name = grade[1] ?? grade[2] ?? ''
  if (isSaeGrade(name)) return understood({ standard: 'SAE J429', name })
  return notUnderstood('grade', typed, `grade ${nearest(Object.keys(proofKsi), Number(name))}`)
}

/** A class as the trade writes it: `8.8`, `grade 5`. `readFastenerClass` reads it back. */
export function classText({ standard, name }: FastenerClass): string {
  return standard === 'ISO 898-1' ? name : `grade ${name}`
}

/** The classes that bolts of a thread commonly have, the weakest first: 8.8, 10.9 and 12.9, or grade 5 and 8. */
export function commonClasses({ system }: Thread): FastenerClass[] {
  if (system === 'metric') {
    return (['8.8', '10.9', '12.9'] as const).map((name) => ({ standard: 'ISO 898-1', name }))
  }
  return (['5', '8'] as const).map((name) => ({ standard: 'SAE J429', name }))
}

/** Proof stress in MPa of a class at a nominal diameter; null where the standard does not go so far. */
export function proofStressMpa(fastenerClass: FastenerClass, diameterMm: number): number | null {
  const steps: Proof =
    fastenerClass.standard === 'ISO 898-1' ? proofMpa[fastenerClass.name] : proofKsi[fastenerClass.name]
  // An inch size in millimetres need not come out to the last bit.
  const step = steps.find(({ toMm }) => diameterMm <= toMm + 1e-6)
  if (step === undefined) return null
  return fastenerClass.standard === 'ISO 898-1' ? step.stress : step.stress * mpaPerKsi
}

function isPropertyClass(name: string): name is PropertyClass {
  return Object.hasOwn(proofMpa, name)
}

function isSaeGrade(name: string): name is SaeGrade {
  return Object.hasOwn(proofKsi, name)
}

function nearestClass(number: number): string {
  return nearest(Object.keys(proofMpa), number)
}

function nearest(names: readonly string[], number: number): string {
  const distance = (name: string) => Math.abs(Number(name) - number)
  return names.reduce((near, name) => (distance(name) < distance(near) ? name : near))
}
