import type { WorkedOut } from '../../session/work-out.ts'
import type { CoolantQuestion } from '../../trade/coolant/read-coolant.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'
import { freezesLine, MAKERS_TABLE, WEAK, WEAK_UNDER } from './freezing-text.ts'

type Coolant = Extract<WorkedOut, { sum: 'coolant' }>
type Asked<A extends CoolantQuestion['ask']> = Extract<CoolantQuestion, { ask: A }>
type Result<C extends Coolant['worked']['result']['code']> = Extract<Coolant['worked']['result'], { code: C }>

/** How much coolant comes out and goes in, with the arithmetic and where it freezes then. */
export function coolantText({ question, worked }: Coolant): string[] {
  const { freezes, percent } = worked
  const isDone = percent !== null
  return [
    ...resultText(question, worked),
    ...(freezes === null || percent === null ? [] : [freezesLine(question.glycol, percent, freezes)]),
    ...(isDone && percent > 0 && percent < WEAK_UNDER ? [WEAK] : []),
    ...(isDone ? [MAKERS_TABLE, NOT_A_SPECIFICATION] : []),
    ...(worked.result.code === 'nothing-to-do' || !isDone ? [] : cautionText(question)),
  ]
}

function resultText(question: CoolantQuestion, worked: Coolant['worked']): string[] {
  const { result } = worked
  switch (result.code) {
    case 'drain-and-refill':
      return question.ask === 'change' ? changeText(question, result, worked) : []
    case 'nothing-to-do':
      return question.ask === 'change'
        ? [`It is ${figure(question.wantedPercent)} % as it is: nothing to do.`]
        : []
    case 'blend':
      return blendText(question, result, worked)
    case 'strength':
      return question.ask === 'after' ? afterText(question, result.percent) : []
    case 'too-little-drained':
      return tooLittleText(question, result, worked)
    case 'refill-too-weak':
      return [
        `${into(question)} is weaker than the ${figure(result.wantedPercent)} % wanted: no amount of it is enough.`,
      ]
    case 'refill-too-strong':
      return [
        `${into(question)} is stronger than the ${figure(result.wantedPercent)} % wanted: no amount of it thins it.`,
        'Refill with water, or with a weaker mixture.',
      ]
    case 'drained-over-capacity':
      return [
        `${figure(result.drainedLitres)} L cannot have come out of ${figure(result.capacityLitres)} L: one of the two is mistyped.`,
      ]
    case 'percent':
      return [`${figure(result.percent)} % is no strength: from 0 to 100 %.`]
    case 'not-positive':
      return [`${figure(result.litres)} L is no amount of coolant.`]
    default:
      return result satisfies never
  }
}

function changeText(
  { capacity, nowPercent, wantedPercent, refill }: Asked<'change'>,
  { litres, isAll }: Result<'drain-and-refill'>,
  { unit }: Coolant['worked'],
): string[] {
  const amount = volume(litres, unit)
  const [now, wanted, goesIn] = [nowPercent, wantedPercent, refill.percent].map((percent) => figure(percent))
  return [
    isAll
      ? `Drain all, ${amount}, refill with ${filler(refill)}: ${now} % becomes ${wanted} %.`
      : `Drain ${amount}, refill with ${filler(refill)}: ${now} % becomes ${wanted} %.`,
    `${capacity.typed} × (${wanted} - ${now}) / (${goesIn} - ${now}) = ${volumeIn(litres, unit)}`,
  ]
}

function blendText(
  question: CoolantQuestion,
  { sourceLitres, waterLitres, blendPercent }: Result<'blend'>,
  { unit }: Coolant['worked'],
): string[] {
  if (question.ask !== 'mix' && question.ask !== 'refill') return []
  const { refill, wantedPercent } = question
  const goesIn = question.ask === 'mix' ? question.volume : question.drained
  const parts = [
    ...(sourceLitres > 0 ? [`${volumeIn(sourceLitres, unit)} ${filler(refill)}`] : []),
    ...(waterLitres > 1e-9 ? [`${volumeIn(waterLitres, unit)} water`] : []),
  ].join(' and ')
  const of =
    refill.percent === 0
      ? []
      : [
          `${volumeIn(goesIn.litres, unit, 6)} × ${figure(blendPercent)} / ${figure(refill.percent)} = ${volume(sourceLitres, unit)}`,
        ]
  if (question.ask === 'mix') {
    if (sourceLitres === 0)
      return [`${figure(wantedPercent)} % is water alone: ${volume(waterLitres, unit)} of it.`]
    const drained = question.asDrained ? `, as much as was drained (${goesIn.typed})` : ''
    return [`Mix ${parts} for ${figure(wantedPercent)} %${drained}.`, ...of]
  }
  const { capacity, drained, nowPercent } = question
  const [now, wanted] = [figure(nowPercent), figure(wantedPercent)]
  return [
    `Refill with ${parts}: ${now} % becomes ${wanted} %.`,
    `What goes in must have ${now} + (${wanted} - ${now}) × ${capacity.typed} / ${drained.typed} = ${figure(blendPercent)} %.`,
    ...of,
  ]
}

function afterText({ capacity, drained, nowPercent, refill }: Asked<'after'>, percent: number): string[] {
  const [now, goesIn] = [figure(nowPercent), figure(refill.percent)]
  return [
    `It comes to ${figure(percent, 3)} %, once it has mixed.`,
    `${now} + (${goesIn} - ${now}) × ${drained.typed} / ${capacity.typed} = ${figure(percent)} %`,
  ]
}

function tooLittleText(
  question: CoolantQuestion,
  { toward, reachablePercent, neededLitres }: Result<'too-little-drained'>,
  { unit }: Coolant['worked'],
): string[] {
  if (question.ask !== 'refill') return []
  const goesIn = toward === 'stronger' ? filler(question.refill) : 'water'
  return [
    `Too little came out: ${goesIn} alone brings it to ${figure(reachablePercent, 3)} %, not ${figure(question.wantedPercent)} %.`,
    `${volume(neededLitres, unit)} have to come out in all; or drain and refill once more.`,
  ]
}

function cautionText({ ask, glycol }: CoolantQuestion): string[] {
  const isPoison = glycol === 'ethylene'
  if (ask === 'mix') return isPoison ? ['Ethylene glycol is poisonous: leave none of it standing open.'] : []
  return [
    `Open it cold: hot it is under pressure. Collect it${isPoison ? ': it is poisonous' : ', all of it'}.`,
  ]
}

/** What goes in, in the words of the trade. */
function filler({ kind, percent }: CoolantQuestion['refill']): string {
  if (kind === 'water') return 'water'
  if (kind === 'mixture') return `${figure(percent)} % mixture`
  return kind === 'concentrate' && percent === 100 ? 'concentrate' : `${figure(percent)} % ${kind}`
}

function into({ refill }: CoolantQuestion): string {
  const words = filler(refill)
  return words.charAt(0).toUpperCase() + words.slice(1)
}

type Unit = Coolant['worked']['unit']

/** In the unit that was typed, and in litres where that is another. */
function volume(litres: number, unit: Unit): string {
  const typed = volumeIn(litres, unit)
  return unit.name === 'L' ? typed : `${typed} (${figure(litres, 3)} L)`
}

function volumeIn(litres: number, unit: Unit, figures = 3): string {
  return `${figure(litres / unit.litres, figures)} ${unit.name}`
}
