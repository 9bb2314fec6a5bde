import type { Container, Entry, EntryOf, EntryType } from '../journal/entry.ts'
import type { State } from '../journal/state.ts'
import type { Move, Opening } from '../ledger/account.ts'
import type { Piece } from '../ledger/piece.ts'
import type { Reason } from '../plan/reasons.ts'
import { durationWords } from './durations.ts'
import { counted, isAre, joined, litresText, numberRanges, stepNumbers } from './grammar.ts'
import { judgingTellers } from './judging/entry-words.ts'
import { readingsText } from './measurements/measure-text.ts'
import { mergingTellers } from './merging/entry-words.ts'
import { movesText, piecesText } from './move-text.ts'
import { fastenerName, overOrShort, passName, stepName } from './names.ts'
import { ownerName, pictureName } from './pictures.ts'
import { nameOf, pieceName, positionName } from './pieces.ts'
import { containerName, placeName, whereName } from './places.ts'
import { targetName } from './targets.ts'
import { waitingTellers } from './waiting/entry-words.ts'
import { arrivalText } from './waiting/order-entries.ts'

/**
 * One line of history, in the past tense: `came off: 8 × valve cover bolts M6x25, into bag 1`. For an entry since
 * undone the state may not know its pieces: then the entry's own facts are told.
 */
export function entryText(state: State, entry: Entry): string {
  const teller = tellers[entry.type] as (state: State, entry: Entry) => string
  return teller('opened' in entry ? knowing(state, entry.opened) : state, entry)
}

type EntryTellers = { [Type in EntryType]: (state: State, entry: EntryOf<Type>) => string }

const tellers: EntryTellers = {
  opened: (_, { job }) => `job opened: ${job.name}${job.machine ? `, ${job.machine}` : ''}`,
  described: (_, { name, machine, units }) => {
    const facts = [
      name === undefined ? '' : `name ${name}`,
      machine === undefined ? '' : `machine ${machine}`,
      units === undefined ? '' : `units ${units === 'us' ? 'US' : 'metric'}`,
    ]
    return `job described: ${facts.filter(Boolean).join(', ') || 'as before'}`
  },
  archived: (_, { archived }) => (archived ? 'job put in the archive' : 'job taken out of the archive'),

  'strip-began': (_, { step }) => {
    const hides = step.hides ? ', hides what is beneath' : ''
    return `step ${step.no} begun: ${step.title}${after(step.after)}${hides}`
  },
  'strip-ended': (state, { step }) => `all off in ${stepName(state, step)}`,
  'step-added': (_, { step, before }) => {
    const when = step.way === 'after-start' ? 'after the first start' : 'on the way back'
    const needs = step.needs.length > 0 ? `, once done: ${stepNumbers(step.needs)}` : ''
    const upper = before.length > 0 ? `, before ${stepNumbers(before)}` : ''
    const turns = step.turns === undefined ? '' : `, ${counted(step.turns, 'full turn')}`
    return `step ${step.no} added ${when}: ${step.title}${turns}${needs}${upper}${step.due ? `, due ${step.due}` : ''}`
  },
  'step-changed': (_, { step, title, after: earlier, needs, hides, minutes, critical }) => {
    const facts = [
      title === undefined ? '' : `title ${title}`,
      earlier === undefined ? '' : earlier.length === 0 ? 'came off first' : after(earlier).slice(2),
      needs === undefined ? '' : needs.length === 0 ? 'needs no step' : `needs ${stepNumbers(needs)}`,
      hides === undefined ? '' : hides ? 'hides what is beneath' : 'hides nothing',
      minutes === undefined ? '' : `takes ${minutes} min`,
      criticalText(critical),
    ]
    return `step ${step} changed: ${facts.filter(Boolean).join(', ') || 'as before'}`
  },
  noted: (state, { step, kind, text, minutes }) => {
    const where = step === null ? '' : ` for ${stepName(state, step)}`
    return kind === 'minutes'
      ? `worked ${minutes ?? 0} min${where}${text === `${minutes} min` ? '' : `: ${text}`}`
      : `${NOTES[kind]}${where}: ${text}`
  },

  'container-opened': (state, { container }) =>
    `opened ${container.kind} ${container.no}${container.slots ? ` with ${container.slots} slots` : ''}${container.name ? ` (${container.name})` : ''}${container.inside === null ? '' : `, ${whereName(state, `c${container.inside}`)}`}`,
  'container-put': (state, { container, inside }) =>
    inside === null
      ? `took out ${containerName(state, container)}`
      : `put ${containerName(state, container)} ${whereName(state, `c${inside}`)}`,
  'container-voided': (state, { container, insteadOf, reason }) => {
    const successor = insteadOf === undefined ? '' : `, ${placeName(state, `c${insteadOf}`)} in its place`
    const label = placeName(state, `c${container}`)
    return `${state.blanks.has(container) ? 'unused ' : 'label of '}${label} made void${successor}: ${reason}`
  },
  'labels-dealt': (_, { from, to }) =>
    from === to
      ? `label ${from} dealt to paper, unused yet`
      : `labels ${from} to ${to} dealt to paper, unused yet`,
  'labels-voided': (_, { labels, inUse = 0, reason }) => {
    const left = inUse === 0 ? '' : `, ${inUse} ${isAre(inUse)} in use and ${inUse === 1 ? 'stays' : 'stay'}`
    return `unused ${labels.length === 1 ? 'label' : 'labels'} ${numberRanges(labels)} made void${left}: ${reason}`
  },

  'came-off': cameOff,
  drained: (_, { fluid, began }) =>
    `drained: ${fluid.name} ${fluid.typed || litresText(fluid.litres)}${begun(began)}`,
  filled: (state, { fluid, litres, typed }) =>
    `filled: ${state.fluids.get(fluid)?.name ?? `fluid ${fluid}`} ${typed || litresText(litres)}`,
  marked: (state, { mark, began }) =>
    `mark ${mark.id}${mark.piece ? ` on ${pieceName(state, mark.piece)}` : ''}: ${mark.text}${begun(began)}`,
  'put-in': (state, { pieces, moves, began }) =>
    `${pieces[0]?.kind === 'tool' ? 'taken out of the toolbox' : 'put in'}: ${piecesText(state, moves, pieces)}${begun(began)}`,
  moved: (state, { moves, reason, opened }) =>
    `moved: ${movesText(state, moves)}${openedText(opened)}${because(reason)}`,
  supplied: (state, entry) => {
    const { pieces, openings, moves, retired, opened } = entry
    const arrival = arrivalText(state, entry)
    if (arrival !== '' && openings.length === 0) return `${arrival}${openedText(opened)}`
    const arrived =
      moves.length > 0
        ? movesText(state, moves, { pieces, from: false })
        : `${piecesText(state, openings, pieces)}, ordered`
    const instead = retired.length > 0 && !entry.kit ? ', in place of the old' : ''
    const { borrowed } = entry
    const lender = borrowed ? `, from job ${borrowed.job}, ${borrowed.name}` : ''
    return `${arrival || (borrowed ? 'borrowed' : 'new')}: ${arrived}${lender}${instead}${openedText(opened)}`
  },

  decided: (state, { piece, what, count, reason }) => {
    const pieces = piecesText(state, [{ piece, count }])
    return `${DECIDED[what]}: ${pieces}${because(reason)}`
  },
  rehomed: (state, { homes, reason }) => {
    const changes = homes.map(
      ({ piece, position }) =>
        `${state.ledger.accounts.get(piece)?.piece.name ?? 'piece'} ${piece} to ${positionName(position)}`,
    )
    return `homes changed: ${changes.join(', ')}${because(reason)}`
  },
  renamed: (state, { mates, name }) => {
    const at = mates.flatMap((id) => state.ledger.accounts.get(id)?.home.position ?? [])
    return `renamed: ${joined(mates)}${at.length > 0 ? `, at ${joined(at)}` : ''}, to ${name}`
  },
  settled: (_, { fault, how }) => `${fault} settled: ${how}`,

  'build-began': (state, { step }) => `took up ${stepName(state, step)}`,
  fitted: (state, { step, began, moves }) => {
    const home = moves.filter(({ to }) => to === 'machine')
    const worn = moves.filter(({ to }) => to !== 'machine')
    const left = worn.length > 0 ? `; used up: ${movesText(state, worn)}` : ''
    return `fitted: ${movesText(state, home, { to: false })}${began ? `, taking up ${stepName(state, step)}` : ''}${left}`
  },
  confirmed: (state, { mark }) => {
    const text = state.marks.get(mark)?.text
    return `mark ${mark} confirmed${text ? `: ${text}` : ''}`
  },
  'tightening-set': (_, { tightening: { id, name, passes, order, orderBy, condition, because: why } }) =>
    `${id} set, ${name}: ${passesText(passes)}${condition ? `, ${condition}` : ''}, in order ${order.join(', ')}${orderBy === 'manual' || orderBy === undefined ? '' : ` by the rule ${orderBy}`}${because(why)}`,
  'condition-said': (_, { tightening, condition }) => `${tightening}: threads ${condition}`,
  'wrench-chosen': (_, { tightening, wrench }) => `${tightening}: wrench ${wrench.typed}`,
  'torque-missed': (_, { tightening, fastener, fault, says }) =>
    `${tightening}: ${fastenerName(fastener)} never came to its torque (${fault.id}): ${says}`,
  'loosening-set': (_, { loosening: { id, name, passes, order }, began }) =>
    `${id} set, to ease ${name}: ${passesText(passes)}, in order ${order.join(', ')}${begun(began)}`,
  loosened: (state, { loosening: id, pass, fastener }) => {
    const loosening = state.loosenings.get(id)
    return `${id}: ${fastenerName(fastener)} eased in ${loosening ? passName(loosening, pass) : `pass ${pass + 1}`}`
  },
  'laid-out': (state, { of, shape, places }) => {
    const arrows = new Set(places.flatMap(({ arrow }) => arrow ?? []))
    const pointing = arrows.size === 0 ? '' : `, arrows ${[...arrows].join(' and ')}`
    const names = [...new Set(of.map((id) => pieceKind(state, id)))]
    return `drawn: ${joined(names)}, ${places.length} positions, ${SHAPES[shape]}${pointing}`
  },
  'turned-over': (state, { step, began }) =>
    `one full turn by hand, ${stepName(state, step)}${began ? ', taken up with it' : ''}`,
  measured: (_, { measure: { id, name, measurement } }) =>
    `${id} measured, ${name}: ${readingsText(measurement)}`,
  sized: (state, { sizes }) =>
    `sized: ${sizes.map(({ piece, size }) => `${unsized(state, piece)} is ${size}`).join(', ')}`,
  tightened: (state, { tightening: id, pass, fastener }) => {
    const tightening = state.tightenings.get(id)
    return `${id}: ${fastenerName(fastener)} through ${tightening ? passName(tightening, pass) : `pass ${pass + 1}`}`
  },
  'angle-settled': (_, { tightening, fastener, turned, reason }) =>
    `${tightening}: ${fastenerName(fastener)} taken as ${turned ? 'turned' : 'not turned'}${because(reason)}`,
  slackened: (_, { tightening, reason }) =>
    `${tightening} slackened, every pass to be done again${because(reason)}`,
  looked: (state, { step }) => `last look before ${stepName(state, step)}`,
  'build-done': (state, { step, result }) => `done: ${stepName(state, step)}${result ? `: ${result}` : ''}`,
  failed: (state, { step, result, steps, moves }) =>
    `failed: ${stepName(state, step)}: ${result}${steps.length > 0 ? `; reopened ${stepNumbers(steps)}` : ''}${cameBack(state, moves)}`,
  reopened: (state, { steps, moves, reason }) =>
    `reopened ${stepNumbers(steps)}${because(reason)}${cameBack(state, moves)}`,
  overridden: (state, { target, reason, gates }) => {
    const passed = gates.map((gate) =>
      gate === 'eased-on' ? 'eased and still on' : (GATES[gate as Reason['code']] ?? gate),
    )
    return `overrode ${targetName(state, target)}${passed.length > 0 ? ` (${joined(passed)})` : ''}${because(reason)}`
  },

  counted: (state, { container, lines }) => {
    const counts = lines.map(({ piece, expected, counted, difference }) => {
      if (piece === null && expected === 0)
        return difference
          ? `${counted} that the record does not have there (${difference})`
          : 'nothing, as in the record'
      const name = piece === null ? 'others' : pieceName(state, piece)
      if (!difference) return `${counted} of ${expected} ${name}`
      return `${counted} of ${expected} ${name}, ${overOrShort(expected, counted)} (${difference})`
    })
    return `counted ${placeName(state, `c${container}`)}: ${counts.join('; ')}`
  },
  explained: (state, { difference, how, pieces, moves, opened, reason }) => {
    const moved =
      moves.length > 0 ? `, ${movesText(state, moves, { pieces, from: how !== 'unknown-piece' })}` : ''
    return `${difference} explained: ${EXPLAINED[how]}${moved}${openedText(opened)}${because(reason)}`
  },

  'pictures-added': (state, { pictures }) => {
    const ids = pictures.length === 1 ? pictures[0]?.id : `${pictures[0]?.id} to ${pictures.at(-1)?.id}`
    const to = new Map<string, number>()
    for (const { belongs } of pictures) {
      const name = ownerName(state, belongs)
      to.set(name, (to.get(name) ?? 0) + 1)
    }
    const [only = ''] = to.keys()
    const where = to.size === 1 ? only : [...to].map(([name, count]) => `${count} ${name}`).join(', ')
    return `${counted(pictures.length, 'picture')} added, ${ids}: ${where}`
  },
  'picture-sorted': (state, { picture, belongs }) =>
    `sorted: ${pictureName(state, picture)}, ${ownerName(state, belongs)}`,

  ...judgingTellers,
  ...waitingTellers,
  ...mergingTellers,

  stopped: (state, { step, note, abrupt }) => {
    const where = step === null ? '' : ` in ${stepName(state, step)}`
    return `${abrupt ? 'work broke off' : 'stopped'}${where}${note ? `: ${note}` : ''}`
  },
  cleared: () => 'cleared for the first start: nothing left over',
  started: () => 'first start',
  closed: (_, { note }) => `job closed${note ? `: ${note}` : ''}`,
  undone: (_, { entry }) => `entry ${entry} taken back`,
  redone: (_, { entry }) => `entry ${entry} put back in force`,
}

function passesText(passes: readonly { typed: string }[]): string {
  return passes.map(({ typed }) => typed).join(', ')
}

function pieceKind(state: State, id: Piece['id']): string {
  return state.ledger.accounts.get(id)?.piece.name ?? `piece ${id}`
}

/** A piece without the size that it has by now. */
function unsized({ ledger }: State, id: Piece['id']): string {
  const account = ledger.accounts.get(id)
  if (!account) return `piece ${id}`
  const { size: _, ...piece } = account.piece
  const { should, entered, home } = account
  return nameOf(piece, home, Math.max(should, entered))
}

const SHAPES = { row: 'in a row', grid: 'in a grid', circle: 'on a circle', free: 'as they lie' }

const NOTES = { note: 'note', caution: 'caution', used: 'used' }

const DECIDED = {
  'left-off': 'left off',
  'lost-accepted': 'accepted as lost',
  'use-again': 'to be used again',
}

const EXPLAINED = {
  missing: 'missing',
  moved: 'moved',
  'unknown-piece': 'a piece that nobody knows',
}

const GATES: Record<Reason['code'], string> = {
  'still-stripping': 'still coming off',
  'step-before': 'a step before it',
  'not-cleared': 'the first start not cleared',
  'piece-short': 'pieces short',
  'piece-away': 'pieces away',
  'piece-used': 'used single-use pieces',
  'left-on-old': 'pieces still on the old one',
  'fault-open': 'a fault not put right',
  'count-open': 'a count not explained',
  'aid-in': 'an aid left in',
  'not-home': 'pieces not home',
  'look-due': 'the last look',
  'mark-open': 'a mark not confirmed',
  'tighten-open': 'a tightening not through',
  'fluid-open': 'a fluid not filled',
  'turns-open': 'turns by hand not made',
  'check-open': 'the check not done',
  'check-due': 'a piece not checked',
  'piece-judged': 'a piece not accepted',
  'compare-due': 'a new piece not compared',
  'compare-wrong': 'a wrong piece',
  'out-unanswered': 'what the shop took out',
  'second-due': 'a second look',
  'consumable-due': 'something not put on',
  'worked-late': 'a joint together too late',
  curing: 'something that sets',
}

/** The state with a container that the entry opened, which an undo may have taken back. */
function knowing(state: State, opened: Container | undefined): State {
  if (!opened || state.containers.has(opened.no)) return state
  return { ...state, containers: new Map([...state.containers, [opened.no, { ...opened, voided: null }]]) }
}

function cameOff(
  state: State,
  { began, opened, pieces, openings, moves, faults }: EntryOf<'came-off'>,
): string {
  const [first] = pieces
  const whole = moves.filter(({ to }) => to !== 'scrap')
  const scrapped = moves.filter(({ to }) => to === 'scrap')
  const left = openings.filter(({ piece, count }) => count > 0 && !moves.some((move) => move.piece === piece))
  const facts = [
    whole.length > 0 ? movesText(state, whole, { pieces, from: false }) : '',
    left.length > 0 ? `${piecesText(state, left, pieces)}, left on the machine` : '',
    brokenText(pieces, scrapped, faults, whole.length > 0),
    missingText(pieces, openings),
  ]
  const none = openings.every(({ count }) => count === 0) ? `none of ${named(first)}` : ''
  return `came off: ${[none, ...facts].filter(Boolean).join(', ')}${openedText(opened)}${begun(began)}`
}

/** `2 snapped, to scrap (x1)`; of a set, which: `I2 and I3 snapped`. */
function brokenText(
  pieces: readonly Piece[],
  scrapped: readonly Move[],
  faults: EntryOf<'came-off'>['faults'],
  isNamed: boolean,
): string {
  if (scrapped.length === 0) return ''
  const count = scrapped.reduce((sum, move) => sum + move.count, 0)
  const positions = positionsOf(pieces, ({ id }) => scrapped.some(({ piece }) => piece === id))
  const common = isNamed ? `${count}` : `${count} × ${named(pieces[0])}`
  const ids = faults ? ` (${faults.map(({ id }) => id).join(', ')})` : ''
  return `${positions || common} ${faults?.[0]?.kind ?? 'broken'}, to scrap${ids}`
}

/** `1 of 8 missing as found`; of a set, which: `I3 missing as found`. */
function missingText(pieces: readonly Piece[], openings: readonly Opening[]): string {
  const found = openings.reduce((sum, { count }) => sum + count, 0)
  const should = pieces.reduce((sum, piece) => sum + piece.should, 0)
  if (found >= should) return ''
  const isMissing = ({ id }: Piece) => openings.some(({ piece, count }) => piece === id && count === 0)
  return `${positionsOf(pieces, isMissing) || `${should - found} of ${should}`} missing as found`
}

function positionsOf(pieces: readonly Piece[], wanted: (piece: Piece) => boolean): string {
  if (pieces.length < 2) return ''
  return joined(pieces.filter(wanted).map(({ home }) => positionName(home.position ?? '')))
}

function named(piece: Piece | undefined): string {
  return piece ? [piece.name, piece.size].filter(Boolean).join(' ') : 'a piece'
}

function after(steps: readonly number[]): string {
  return steps.length === 0 ? '' : `, after ${stepNumbers(steps)}`
}

function begun(step: { no: number; title: string } | undefined): string {
  return step ? `, beginning step ${step.no}, ${step.title}` : ''
}

function openedText(container: { no: number; kind: string } | undefined): string {
  return container ? ' (new)' : ''
}

function because(reason: string | undefined): string {
  return reason ? `, because ${reason}` : ''
}

function cameBack(state: State, moves: readonly Move[]): string {
  return moves.length > 0 ? `; off again: ${movesText(state, moves, { from: false })}` : ''
}

function criticalText(critical: EntryOf<'step-changed'>['critical']): string {
  if (critical === undefined) return ''
  if (critical === null) return 'not critical'
  return `critical, seen again by somebody else or ${durationWords(critical.afterMinutes)} later`
}
