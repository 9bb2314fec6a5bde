import type { State } from '../../journal/state.ts'
import type { PlanItem } from '../../label/printed-plan.ts'
import type { Account } from '../../ledger/account.ts'
import type { Place } from '../../ledger/place.ts'
import type { LabelCode } from '../leftovers.ts'
import { onTheWayBack } from '../names.ts'
import { containerPlace, placeName, whereName } from '../places.ts'
import { beforePositions, connectionText, countedNoun } from './lots.ts'
import { rangesText, slottedText } from './position-ranges.ts'
import { statusOf } from './status.ts'
import { shortageOf } from './warnings.ts'

/** What goes back in a step, a set in one item with a box for each position; from which container, by its code. */
export function fitItems(state: State, pieces: readonly Account[], code: LabelCode): PlanItem[] {
  return setsOf(pieces).map((accounts): PlanItem => {
    const [first] = accounts as [Account]
    return {
      kind: 'tick',
      text: `${nameOf(accounts)}${homeIfOther(state, first)}`,
      from: fromTexts(state, accounts, code),
      notes: notesOf(state, accounts),
      boxes:
        accounts.length > 1
          ? accounts.map((account) => ({ label: account.home.position ?? '', done: isHome(account) }))
          : [{ label: '', done: isHome(first) }],
    }
  })
}

/** Accounts that are told in one item: the members of a set at one home. */
function setsOf(pieces: readonly Account[]): Account[][] {
  const sets = new Map<string, Account[]>()
  for (const account of pieces) {
    const { piece, home } = account
    const isOne = piece.set === undefined || home.position === undefined
    const key = isOne ? piece.id : [piece.set, piece.name, home.at, piece.size ?? ''].join('\n')
    const set = sets.get(key)
    if (set) set.push(account)
    else sets.set(key, [account])
  }
  return [...sets.values()]
}

function nameOf(accounts: readonly Account[]): string {
  const [first] = accounts as [Account]
  const { piece, home, should } = first
  if (home.position === undefined) {
    return `${countedNoun(first, should)}${home.alikeAt ? ` @${rangesText(home.alikeAt, '..', ',')}` : ''}`
  }
  const positions = accounts.map((account) => account.home.position ?? '')
  if (piece.kind === 'connection') return connectionText(first, positions)
  return `${countedNoun(first, accounts.length)}${beforePositions(first, positions)}${rangesText(positions)}`
}

/** A home is most often named after its step; where it is not, it has to be said. */
function homeIfOther(state: State, { piece, home }: Account): string {
  const title = onTheWayBack(state.steps.get(piece.step)?.title ?? '')
  return title.toLowerCase() === home.at.toLowerCase() ? '' : `, ${home.at}`
}

function isHome({ should, at }: Account): boolean {
  return should > 0 && (at.get('machine') ?? 0) >= should
}

/** Where they lie: one text for each container or other place. */
function fromTexts(state: State, accounts: readonly Account[], code: LabelCode): string[] {
  const places = new Map<string, { account: Account; place: Place; count: number }[]>()
  for (const account of accounts) {
    for (const [place, count] of account.at) {
      if (place === 'scrap' || place === 'lost') continue
      const inside = containerPlace(place)
      const key = inside ? `c${inside.container}` : place
      places.set(key, [...(places.get(key) ?? []), { account, place, count }])
    }
  }
  const total = accounts.reduce((sum, { should }) => sum + should, 0)
  return [...places.values()].map((lying) => {
    const count = lying.reduce((sum, each) => sum + each.count, 0)
    return placeText(state, lying, { code, isAll: count === total, isSet: accounts.length > 1 })
  })
}

interface FromTelling {
  code: LabelCode
  isAll: boolean
  isSet: boolean
}

function placeText(
  state: State,
  lying: readonly { account: Account; place: Place; count: number }[],
  { code, isAll, isSet }: FromTelling,
): string {
  const [first] = lying
  if (!first) return ''
  const inside = containerPlace(first.place)
  if (!inside) return `${isAll ? '' : `${partText(lying, isSet)} `}${whereName(state, first.place)}`
  const container = `${placeName(state, `c${inside.container}`)} (${code(inside.container)})`
  if (inside.slot !== undefined && isSet) {
    const slots = slottedText(
      lying.map(({ account, place }) => ({
        position: account.home.position ?? '',
        slot: containerPlace(place)?.slot,
      })),
    )
    return `${container}: ${slots}`
  }
  const slot = inside.slot === undefined ? '' : `, slot ${inside.slot}`
  return isAll ? `${container}${slot}` : `${container}${slot}: ${partText(lying, isSet)}`
}

function partText(lying: readonly { account: Account; count: number }[], isSet: boolean): string {
  if (isSet) return rangesText(lying.map(({ account }) => account.home.position ?? ''))
  return `${lying.reduce((sum, { count }) => sum + count, 0)}`
}

function notesOf(state: State, accounts: readonly Account[]): string[] {
  const statuses = new Set(accounts.map((account) => statusOf(state, account, 'machine')))
  const said = [...statuses].flatMap((status) => {
    if (status === 'USED, DO NOT FIT')
      return [`${status}: ${isOne(accounts) ? 'a new one goes' : 'new ones go'} in`]
    return status === 'FIT AGAIN' ? [] : [status]
  })
  return [...said, ...accounts.flatMap((account) => shortageOf(state, account))]
}

function isOne(accounts: readonly Account[]): boolean {
  return accounts.length === 1 && accounts[0]?.should === 1
}
