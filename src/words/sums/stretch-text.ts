import type { WorkedOut } from '../../session/work-out.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'

type Stretch = Extract<WorkedOut, { sum: 'stretch' }>

/** How much longer a bolt gets, with the arithmetic. */
export function stretchText({ question, stretchMm }: Stretch): string[] {
  const { newtons, lengthMm, areaMm2, modulusMPa, typed, thread } = question
  const force = `${figure(newtons / 1000, 5)} kN`
  const modulus = `${figure(modulusMPa / 1000, 4)} kN/mm²`
  return [
    `${typed.force} over ${typed.length} of ${typed.area} stretches it by ${figure(stretchMm)} mm (${figure(stretchMm / 25.4)} in).`,
    `${force} × ${figure(lengthMm, 5)} mm / (${modulus} × ${figure(areaMm2)} mm²) = ${figure(stretchMm)} mm`,
    ...(thread
      ? [`${figure(areaMm2)} mm² is the stress area of its thread; a shank that is thicker stretches less.`]
      : []),
    ...(typed.modulus === null
      ? [`${modulus}: steel, common practice. Write modulus and its value for another.`]
      : []),
    'It holds while the bolt is elastic: not for one tightened to yield.',
    NOT_A_SPECIFICATION,
  ]
}
