import type { State } from '../../journal/state.ts'
import type { PlanItem, PlanStep } from '../../label/printed-plan.ts'
import type { PaperStep } from '../../session/label-facts.ts'
import type { StepStanding } from '../../session/views.ts'
import { joined, litresText, stepNumbers } from '../grammar.ts'
import type { LabelCode } from '../leftovers.ts'
import { faultName, markName, onTheWayBack } from '../names.ts'
import { countedPiece } from '../pieces.ts'
import { fitItems } from './fit-items.ts'
import { oneLine, oneLines } from './one-line.ts'

/** A step of the way back as it stands on paper; `code` are its own nine digits, `container` those of containers in groups. */
export function planStep(
  state: State,
  paper: PaperStep,
  code: string | null,
  container: LabelCode,
): PlanStep {
  const { row, needs } = paper
  const { step, overrides } = row
  const notes = state.notes.filter((note) => note.step === step.no)
  return {
    no: step.no,
    code,
    title: oneLine(step.way === 'both' ? onTheWayBack(step.title) : step.title),
    standing: row.again && row.standing === 'blocked' ? STANDINGS.redo : STANDINGS[row.standing],
    isDone: row.standing === 'done' || row.standing === 'idle',
    afterStart: step.way === 'after-start',
    before: oneLine(beforeText(step.way === 'after-start', needs, step.due)),
    cautions: oneLines(notes.filter(({ kind }) => kind === 'caution').map(({ text }) => text)),
    items: [
      ...lookItems(paper),
      ...aidItems(state, paper),
      ...fitItems(state, paper.pieces, container),
      ...faultItems(state, paper),
      ...markItems(state, paper),
      ...tighteningItems(state, paper),
      ...fluidItems(state, paper),
      ...writeItems(paper),
    ].map(cleanItem),
    notes: oneLines([
      ...(paper.result === null ? [] : [`result: ${paper.result}`]),
      ...overrides.map((reason) => `overridden: ${reason}`),
      ...notes.flatMap(({ kind, text }) =>
        kind === 'caution' ? [] : [kind === 'note' ? text : `${SAID[kind]}: ${text}`],
      ),
    ]),
  }
}

/** How a step stands, in a word for paper. */
const STANDINGS: Record<StepStanding, string> = {
  stripping: 'COMING OFF',
  ready: 'READY',
  blocked: 'NOT YET',
  underway: 'UNDER WAY',
  done: 'DONE',
  redo: 'TO DO AGAIN',
  idle: 'NOTHING TO PUT BACK',
}

const SAID = { used: 'used', minutes: 'took' } as const

function beforeText(afterStart: boolean, needs: readonly number[], due: string | undefined): string {
  const when = afterStart ? ['after the first start'] : []
  const before = needs.length > 0 ? [`after ${stepNumbers(needs)}`] : []
  const first = when.length + before.length === 0 ? ['nothing comes before it'] : []
  return [...when, ...before, ...first, ...(due === undefined ? [] : [`due ${due}`])].join(', ')
}

function lookItems({ row: { step } }: PaperStep): PlanItem[] {
  if (!step.hides) return []
  const text = 'last look: all that it hides is in place, counted, clean, nothing left inside'
  return [tick(text, step.looked || step.built === 'done')]
}

function aidItems(state: State, { contents }: PaperStep): PlanItem[] {
  return contents.aids.flatMap(({ piece, at }) => {
    const count = at.get('machine') ?? 0
    return count > 0 ? [tick(`take out ${countedPiece(state, piece.id, count)}`, false)] : []
  })
}

function faultItems(state: State, { contents }: PaperStep): PlanItem[] {
  return contents.faults.map(({ id, settled }) =>
    tick(`put right: ${faultName(state, id)}`, settled !== null, settled === null ? [] : [settled]),
  )
}

function markItems(state: State, { contents }: PaperStep): PlanItem[] {
  return contents.marks.map(({ id, confirmed }) =>
    tick(`see ${markName(state, id)}`, confirmed, passedOver(state, id)),
  )
}

function tighteningItems(state: State, { contents }: PaperStep): PlanItem[] {
  return contents.tightenings.map(({ id, name, passes, order, done, suspect }) => ({
    kind: 'grid',
    text: [`tighten ${name} (${id})`, ...passedOver(state, id)].join(', '),
    caution:
      suspect === null
        ? 'Values as typed by the user; the service manual of the machine decides.'
        : `Fastener ${suspect.fastener} may be turned already. Values as typed by the user; the service manual of the machine decides.`,
    fasteners: [...order],
    passes: passes.map(({ typed }, pass) => ({
      text: `pass ${pass + 1}: ${typed}`,
      done: order.map((fastener) => done[pass]?.has(fastener) === true),
    })),
  }))
}

function fluidItems(state: State, { contents }: PaperStep): PlanItem[] {
  return contents.fluids.flatMap(({ id, name, typed, filledLitres }): PlanItem[] => {
    const isIn = filledLitres !== null
    return [
      tick(
        `fill ${name}: ${typed} came out${isIn ? `, ${litresText(filledLitres)} filled in` : ''}`,
        isIn,
        passedOver(state, id),
      ),
      ...(isIn ? [] : [{ kind: 'write' as const, text: `${name} filled in` }]),
    ]
  })
}

/** What is yet to be written down: results, and tightenings that nobody has typed. */
function writeItems({ row: { step }, contents }: PaperStep): PlanItem[] {
  if (step.built === 'done') return []
  if (step.way !== 'both') return [{ kind: 'write', text: 'result' }]
  const known = new Set(contents.tightenings.map(({ piece }) => piece))
  const open = contents.pieces.filter(({ piece }) => piece.kind === 'fastener' && !known.has(piece.id))
  if (open.length === 0) return []
  const which = known.size === 0 ? '' : ` of ${joined([...new Set(open.map(({ piece }) => piece.name))])}`
  return [{ kind: 'write', text: `torque and order${which}, from the service manual` }]
}

function passedOver(state: State, target: Parameters<State['overrides']['get']>[0]): string[] {
  const reason = state.overrides.get(target)
  return reason === undefined ? [] : [`overridden: ${reason}`]
}

function tick(text: string, done: boolean, notes: string[] = []): PlanItem {
  return { kind: 'tick', text, from: [], notes, boxes: [{ label: '', done }] }
}

function cleanItem(item: PlanItem): PlanItem {
  switch (item.kind) {
    case 'tick':
      return {
        ...item,
        text: oneLine(item.text),
        from: oneLines(item.from),
        notes: oneLines(item.notes),
        boxes: item.boxes.map(({ label, done }) => ({ label: oneLine(label), done })),
      }
    case 'grid':
      return {
        ...item,
        text: oneLine(item.text),
        caution: oneLine(item.caution),
        fasteners: item.fasteners.map(oneLine),
        passes: item.passes.map(({ text, done }) => ({ text: oneLine(text), done })),
      }
    case 'write':
      return { ...item, text: oneLine(item.text) }
    default:
      return item satisfies never
  }
}
