import type { State } from '../journal/state.ts'
import type { FoundHomeView, FoundView } from '../session/found-view.ts'
import { asideWords, say, sendWords, toolboxWords } from './cures.ts'
import { counted, joined, sentence, stepNumbers } from './grammar.ts'
import { liesIn } from './lookups.ts'
import { countedPiece, homeName, pieceName } from './pieces.ts'
import { containerPlace, placeName, whereName } from './places.ts'

/** A home that something found may belong to, as a person reads it. */
export interface FoundTold {
  /** Which piece, where it belongs, and what the record says of it. */
  what: string
  /** In what it agrees. */
  why: string
  /** What to do to find out or to record it, the cheapest first; the words to type in double quotes. */
  acts: string[]
}

/** What a home that something found may belong to is told as. */
export function foundHomeText(state: State, found: FoundView, home: FoundHomeView): FoundTold {
  const { piece } = home
  const step = state.ledger.accounts.get(piece)?.piece.step ?? 0
  return {
    what: `${piece}  ${pieceName(state, piece)}, belongs to ${homeName(state, piece)}, step ${step}: ${countText(state, home)}${matesText(state, home)}`,
    why: sentence(whyText(found, home)),
    acts: acts(state, found, home, step).map(sentence),
  }
}

/** Aids and tools that may be what was found, each with what puts it back. */
export function foundToolsText(state: State, { toolbox }: Pick<FoundView, 'toolbox'>): string[] {
  return toolbox.map(({ piece, place, count }) => {
    const named = `${piece}, ${countedPiece(state, piece, count)}`
    if (place === 'lost')
      return sentence(`${named}, is lost: ${say(`move ${count} ${piece} from lost to toolbox`)} if it is`)
    return sentence(
      `${named}, is out of the toolbox, ${whereName(state, place)}: ${toolboxWords(state, piece, { place, count })} when it is back`,
    )
  })
}

/** What to say where nothing in the record may be what was found. */
export function nothingFoundText({ words, toolbox }: Pick<FoundView, 'words' | 'toolbox'>): string[] {
  if (toolbox.length > 0) return []
  return [
    `Nothing in the record may be '${words}'.`,
    `What came off and was never told of: ${say('off ...')} records it. For an aid or a tool, ${say('where')} shows what is out.`,
  ]
}

/** `2 homes may be that of 'M6x25 bolt', the likeliest first.` */
export function foundHeading({ words, homes }: FoundView): string {
  return homes.length === 1
    ? `One home may be that of '${words}'.`
    : `${counted(homes.length, 'home')} may be that of '${words}', the likeliest first.`
}

/** `; the same goes for p10 cam cap I2 and p11 cam cap I3`. */
function matesText(state: State, { mates }: FoundHomeView): string {
  if (mates.length === 0) return ''
  const named = mates.map((id) => `${id} ${pieceName(state, id)}`)
  const shown = named.length > 3 ? [...named.slice(0, 2), `${named.length - 2} more of its set`] : named
  return `; the same goes for ${joined(shown)}`
}

/** What the record says of a home: what is missing first. */
function countText(state: State, { piece, count }: FoundHomeView): string {
  const { should, onMachine, lies, short, neverThere, lost, countedShort, leftOff, scrapped, used } = count
  const otherwise = short - neverThere - lost - scrapped
  const facts = [
    ...countedShort.map(
      (each) =>
        `${placeName(state, `c${each.container}`)} was counted ${each.count} short (${each.difference})`,
    ),
    lost > 0 ? `${lost} lost` : '',
    neverThere > 0 ? `${neverThere} missing when the job began` : '',
    otherwise > 0 ? `${otherwise} short` : '',
    scrapped > 0 ? `${scrapped} in scrap` : '',
    onMachine > 0 ? `${onMachine} of ${should} recorded as on the machine` : '',
    ...lies.map(({ place, count: number }) => liesText(state, place, number)),
    leftOff > 0 ? `${leftOff} left off on purpose` : '',
    count.replacedBy === undefined
      ? ''
      : `replaced by ${count.replacedBy} ${pieceName(state, count.replacedBy)}`,
    used ? 'single-use and used' : '',
  ].filter(Boolean)
  return facts.length === 0 ? `none of ${pieceName(state, piece)} was ever there` : joined(facts)
}

function liesText(
  state: State,
  place: FoundHomeView['count']['lies'][number]['place'],
  count: number,
): string {
  return containerPlace(place)
    ? `${placeName(state, place)} should hold ${count}`
    : `${count} should be ${whereName(state, place)}`
}

/** `agrees in thread, pitch and length; another drive; its class is not known`. */
function whyText({ piece: found }: FoundView, { agrees }: FoundHomeView): string {
  const parts = [
    { name: 'thread', as: agrees.thread, isSaid: found.thread !== undefined },
    { name: 'pitch', as: agrees.pitch, isSaid: found.thread !== undefined && agrees.thread === 'yes' },
    {
      name: 'length',
      as: agrees.length,
      isSaid: found.lengthMm !== undefined || found.thread?.lengthMm !== undefined,
    },
    { name: 'class', as: agrees.fastenerClass, isSaid: found.fastenerClass !== undefined },
    { name: 'drive', as: agrees.drive, isSaid: found.drive !== undefined },
  ]
  const named = (as: string) => parts.filter((part) => part.as === as && part.isSaid).map(({ name }) => name)
  const alike = [...named('yes'), ...(agrees.name === 'yes' ? ['name'] : [])]
  const unknown = named('unknown')
  const facts = [
    alike.length > 0 ? `agrees in ${joined(alike)}` : '',
    agrees.name === 'partly' ? 'in part of the name' : '',
    named('no').length > 0 ? `another ${joined(named('no'))}` : '',
    agrees.name === 'no' ? 'another name' : '',
    unknown.length > 0 ? `the record does not say ${joined(unknown)}` : '',
  ].filter(Boolean)
  return facts.join('; ')
}

/** Recording what turned up comes first where the record misses one; else what is looked at is said, the nearest first. */
function acts(state: State, { count: found }: FoundView, home: FoundHomeView, step: number): string[] {
  const { piece, count, undo, standing } = home
  const { lost, countedShort, short, onMachine, lies } = count
  const number = (most: number) => Math.max(1, Math.min(found, most))
  const told: string[] = []
  if (lost > 0)
    told.push(`if it is: ${sendWords(state, 'move', piece, 'lost', { count: number(lost), to: 'bench' })}`)
  for (const { difference } of countedShort)
    told.push(`if it is: ${say(`explain ${difference} ${piece} to bench because ...`)}`)
  const others = short - lost
  if (others > 0 && lost === 0)
    told.push(`if it is: ${enterWords(state, piece, number(others))} brings it into the record`)
  if (standing === 'missing') return told
  for (const container of containersOf(lies))
    told.push(`count ${placeName(state, `c${container}`)}: ${countWords(state, container)}`)
  if (onMachine > 0) told.push(lookText(state, step, undo, onMachine))
  if (lies.some(({ place }) => place === 'bench')) told.push('see whether all of them lie on the bench')
  for (const { place, count: there } of lies) {
    if (place === 'spare' || state.ledger.accounts.has(place as `p${number}`))
      told.push(`see whether ${there === 1 ? 'it is' : `all ${there} are`} ${whereName(state, place)}`)
  }
  const old = standing === 'out-of-use' ? lies[0] : undefined
  if (old)
    told.push(`if it is: nothing waits for it, ${asideWords(state, piece, old.place, number(old.count))}`)
  return told.length === 0 ? ['nothing on the machine waits for it'] : told
}

/** What brings it into the record. No order is named, as for new ones: what turned up is not what was bought. */
function enterWords(state: State, piece: FoundHomeView['piece'], count: number): string {
  const isOnly = (state.ledger.accounts.get(piece)?.should ?? 1) === 1
  return say(isOnly ? `new ${piece}` : `new ${count} ${piece}`)
}

function lookText(state: State, step: number, undo: readonly number[], onMachine: number): string {
  const all = `see whether ${onMachine === 1 ? 'it is' : `all ${onMachine} are`} there`
  if (undo.length === 0 && state.steps.get(step)?.built === 'open') return all
  const opened = undo.length === 0 ? '' : ` opens ${stepNumbers(undo)}`
  const first = state.closed ? `${say('undo')} takes back the closing of the job, then ` : ''
  return `${all}; to reach ${onMachine === 1 ? 'it' : 'them'}, ${first}${say(`reopen ${step} because ...`)}${opened}`
}

function containersOf(lies: FoundHomeView['count']['lies']): number[] {
  const numbers = lies.flatMap(({ place }) => containerPlace(place)?.container ?? [])
  return [...new Set(numbers)]
}

/** What records a blind count of a container: a number for each kind in it. */
function countWords(state: State, container: number): string {
  const kinds = [...new Set(liesIn(state, container).map(({ piece }) => piece))]
  return say(
    kinds.length === 1
      ? `count ${container} = ...`
      : `count ${container}: ${kinds.map((piece) => `${piece}=...`).join(', ')}`,
  )
}
