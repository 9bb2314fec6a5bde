import type { State } from '../../journal/state.ts'
import type { ContainerLabel } from '../../label/label-content.ts'
import type { Account } from '../../ledger/account.ts'
import { liesIn } from '../lookups.ts'
import { onTheWayBack } from '../names.ts'
import { containerName, placeName } from '../places.ts'
import { jobLine } from './job-line.ts'
import { type Lot, lotsOf, lotText } from './lots.ts'
import { oneLine, oneLines } from './one-line.ts'
import { partOf } from './part.ts'
import { commonStatus } from './status.ts'
import { warningsOf } from './warnings.ts'

/**
 * What the label of a container says, from the record as it stands.
 * @param at the date as it is shown
 * @param code the nine digits of its label code
 */
export function containerLabel(state: State, no: number, at: string, code: string): ContainerLabel {
  const container = state.containers.get(no)
  const lots = lotsOf(state, liesIn(state, no))
  const inside = [...state.containers.values()].filter(
    (other) => other.inside === no && other.voided === null,
  )
  const homes = homesOf(lots)
  const isVoid = container?.voided != null
  const status = commonStatus(
    lots.map((lot) => lot.status),
    inside.length > 0 ? 'HOLDS OTHERS' : 'EMPTY',
  )
  const steps = [...new Set(homes.map(({ step }) => step))]
  const [onlyStep] = steps
  return {
    kind: 'container',
    name: placeName(state, `c${no}`),
    code,
    heading: oneLine(`${placeName(state, `c${no}`).toUpperCase()} ${container?.name ?? ''}`),
    part: steps.length === 1 && onlyStep !== undefined ? partOf(state, no, onlyStep) : null,
    what: oneLines([
      ...lots.map((lot) => whatText(state, lot, { container: no, homes, isMixed: status === 'MIXED' })),
      ...inside.map((other) => containerName(state, other.no)),
    ]),
    // Where they differ, each lot says its own.
    where: oneLines(homes.length > 1 ? [] : homes.map((home) => homeText(state, home))),
    status: isVoid ? 'VOID' : status,
    warnings: oneLines([...voidText(state, no), ...warningsOf(state, lots)]),
    job: jobLine(state),
    date: oneLine(at),
  }
}

/** Where the pieces of a lot go back: `valve cover, step 1`. */
export function homeText(state: State, { at, step }: HomeOfLot): string {
  const title = state.steps.get(step)?.title
  // The step where it is another matter than the home: a home is most often named after its step.
  const named = title === undefined || sameWords(onTheWayBack(title), at) ? '' : ` (${onTheWayBack(title)})`
  return `${at}, step ${step}${named}`
}

export interface HomeOfLot {
  at: string
  step: number
}

/** The home of a lot, or null where nothing on the machine waits for it. */
export function homeOfLot({ members, status }: Lot): HomeOfLot | null {
  const [first] = members
  if (!first || status === 'TOOL') return null
  return homeOf(first.account)
}

function homeOf({ piece, home }: Account): HomeOfLot {
  return { at: home.at, step: piece.step }
}

function homesOf(lots: readonly Lot[]): HomeOfLot[] {
  const homes = new Map<string, HomeOfLot>()
  for (const lot of lots) {
    const home = homeOfLot(lot)
    if (home) homes.set(`${home.step} ${home.at}`, home)
  }
  return [...homes.values()]
}

interface Telling {
  container: number
  homes: readonly HomeOfLot[]
  isMixed: boolean
}

/** A lot with its status where they differ, and with its home where these differ. */
function whatText(state: State, lot: Lot, { container, homes, isMixed }: Telling): string {
  const says = isMixed && lot.status !== 'FIT AGAIN' ? `${lot.status}: ` : ''
  const home = homeOfLot(lot)
  const goes = home !== null && homes.length > 1 ? ` → ${homeText(state, home)}` : ''
  return `${says}${lotText(state, lot, container)}${goes}`
}

function voidText(state: State, no: number): string[] {
  const voided = state.containers.get(no)?.voided
  if (!voided) return []
  const { reason, insteadOf } = voided
  return [`void: ${reason}${insteadOf === undefined ? '' : `, now ${placeName(state, `c${insteadOf}`)}`}`]
}

function sameWords(one: string, other: string): boolean {
  return one.toLowerCase() === other.toLowerCase()
}
