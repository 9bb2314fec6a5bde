import type { WorkedOut } from '../../session/work-out.ts'
import { joined } from '../grammar.ts'
import { figure, NOT_A_SPECIFICATION } from './figures.ts'

type Preload = Extract<WorkedOut, { sum: 'preload' }>
type Known = Extract<Preload['worked'], { isKnown: true }>
type Share = Known['shares'][number]

const newtonsPerPound = 4.4482216152605

/** What a torque clamps with, as a range, against what the fastener bears. */
export function preloadText(sum: Preload): string[] {
  const { thread, torque, worked } = sum
  if (!worked.isKnown) {
    return worked.code === 'taper-pipe'
      ? [`${thread.typed} seals on its taper: its torque makes no preload.`]
      : [`${thread.size} has no coarse pitch: write its pitch behind it.`]
  }
  const [only] = worked.shares.length === 1 ? worked.shares : []
  const proof = only ? `, ${percents(only)} of proof` : ''
  return [
    `${figure(torque.number, 6)} ${torque.unit.name} on ${threadName(sum)} clamps with ${forces(worked)}${proof}.`,
    ...poundsText(sum, worked),
    ...(thread.pitchAssumed ? [`No pitch was said: ${thread.size} is taken with its coarse one.`] : []),
    frictionText(sum),
    ...quotients(sum, worked),
    ...sharesText(sum, worked),
    ...slipsText(worked),
    NOT_A_SPECIFICATION,
  ]
}

/** `M8x1.25`, `3/8-16`. */
function threadName({ thread: { system, size, pitchMm = 0 } }: Preload): string {
  return system === 'metric' ? `${size}x${figure(pitchMm)}` : `${size}-${Math.round(50.8 / pitchMm) / 2}`
}

function forces({ preload: { leastN, mostN } }: Known): string {
  return `${range(kilonewtons(leastN), kilonewtons(mostN))} kN`
}

function poundsText({ thread }: Preload, { preload: { leastN, mostN } }: Known): string[] {
  if (thread.system === 'metric') return []
  return [`That is ${range(...([leastN, mostN].map(pounds) as [string, string]))} lbf.`]
}

function frictionText({ friction, frictionBy }: Preload): string {
  const values = range(friction.least.toFixed(2), friction.most.toFixed(2))
  switch (frictionBy) {
    case 'typed':
      return `Friction ${values}, as you gave it.`
    case 'dry':
    case 'oiled':
      return `Friction ${values}, common for ${frictionBy} steel threads.`
    case 'assumed':
      return `Friction ${values}, oiled to dry, common practice: say dry or oiled.`
    default:
      return frictionBy satisfies never
  }
}

/** F = T/(K d): `25 N·m / (0.209 × 8 mm) = 15 kN with friction 0.16`. */
function quotients({ torque, thread, friction }: Preload, { preload }: Known): string[] {
  const row = (nutFactor: number, newtons: number, by: number) =>
    `${figure(torque.base)} N·m / (${figure(nutFactor, 3)} × ${figure(thread.diameterMm)} mm) = ${kilonewtons(newtons)} kN with friction ${by.toFixed(2)}`
  const least = row(preload.mostNutFactor, preload.leastN, friction.most)
  const most = row(preload.leastNutFactor, preload.mostN, friction.least)
  return least === most ? [least] : [least, most]
}

function sharesText({ thread, fastenerClass }: Preload, { shares }: Known): string[] {
  if (shares.length === 0) {
    return fastenerClass === undefined
      ? []
      : [`${className(fastenerClass)} says nothing of ${thread.size}: no proof load to compare with.`]
  }
  const rows = shares.map((each) => {
    const { areaMm2, proofMpa, proofLoadN } = each.share
    return `${className(each.fastenerClass)}: proof load ${figure(areaMm2, 3)} mm² × ${figure(proofMpa, 3)} MPa = ${kilonewtons(proofLoadN)} kN: ${percents(each)}`
  })
  const said = fastenerClass === undefined ? ['No class was said; against the common ones:'] : []
  return [...said, ...rows, ...verdict(shares)]
}

/** What is outside, by the strongest class that may be meant. */
function verdict(shares: readonly Share[]): string[] {
  const strongest = shares.at(-1)
  if (!strongest) return []
  const { least, most } = strongest.share
  const bears = `what ${className(strongest.fastenerClass)} bears`
  if (least > 1) return [`With the most friction, even so past ${bears}: look at the unit.`]
  if (most > 1) return [`With the least friction past ${bears}: dry or oiled decides.`]
  const [weakest] = shares
  return weakest && weakest.share.most < 0.1 ? ['Hardly any of what it bears: look at the unit.'] : []
}

function slipsText({ question }: Known): string[] {
  if (!question || question.slips.length === 0) return []
  const units = question.slips.map(({ text, newtonMetres }) => `${text} (${figure(newtonMetres, 3)} N·m)`)
  return [`A slip of the unit? ${joined(units, 'or')} would be usual.`]
}

function percents({ share: { least, most } }: Share): string {
  const whole = (share: number) => String(Math.round(share * 100))
  return `${range(whole(least), whole(most))} %`
}

/** `15 to 22.4`, or one of them where they are the same. */
function range(least: string, most: string): string {
  return least === most ? least : `${least} to ${most}`
}

function className({ standard, name }: Share['fastenerClass']): string {
  return standard === 'ISO 898-1' ? name : `grade ${name}`
}

function kilonewtons(newtons: number): string {
  return figure(newtons / 1000, 3)
}

function pounds(newtons: number): string {
  return figure(newtons / newtonsPerPound, 3)
}
