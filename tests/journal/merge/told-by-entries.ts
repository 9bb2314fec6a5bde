import type { Entry } from '../../../src/journal/entry.ts'
import { fold, takenBack } from '../../../src/journal/fold.ts'
import { referencesOf } from '../../../src/journal/merge/references.ts'
import type { State } from '../../../src/journal/state.ts'
import { placesOf } from '../../../src/ledger/ledger.ts'
import { buildNeeds } from '../../../src/plan/order.ts'

/**
 * What a journal comes to, told without its numbers: each thing is called by the entry that dealt its number, so that two
 * journals with the same entries in another order, and other numbers, come to the same lines.
 */
export function toldByEntries(entries: readonly Entry[]): string[] {
  const state = fold(entries)
  const name = namesOf(entries)
  return [
    ...pieces(state, name),
    ...steps(state, name),
    ...obligations(state, name),
    ...judged(state, name),
    ...waited(state, name),
    ...containers(state, name),
    `job ${JSON.stringify(state.job)} ${state.started} ${state.closed}`,
  ].sort()
}

type Name = (id: string) => string

/** Where each piece is, by the entry that it entered with. */
export function placesByEntry(entries: readonly Entry[]): Map<string, string> {
  const state = fold(entries)
  const name = namesOf(entries)
  return new Map(
    [...state.ledger.accounts.keys()].map((id) => [
      name(id),
      placesOf(state.ledger, id)
        .map((each) => `${each.count} ${inWords(each.place, name)}`)
        .sort()
        .join(', '),
    ]),
  )
}

/**
 * What no command would bring about, whatever a journal allows: a step that is done over one that is not, or over pieces
 * that are off; two pieces in one slot, or with one home.
 */
export function oddities(entries: readonly Entry[]): string[] {
  const state = fold(entries)
  const name = namesOf(entries)
  const needs = buildNeeds(state.steps)
  const isDone = (no: number) => state.steps.get(no)?.built === 'done'
  const found: string[] = []
  for (const [no, lower] of needs) {
    if (!isDone(no)) continue
    for (const each of lower)
      if (!isDone(each)) found.push(`${name(`step${no}`)} is done over ${name(`step${each}`)}`)
  }
  const taken = new Map<string, string>()
  const take = (what: string, id: string) => {
    const first = taken.get(what)
    if (first !== undefined) found.push(`${[first, id].map(name).sort().join(' and ')} share one place`)
    taken.set(what, id)
  }
  for (const { piece, home, should, at } of state.ledger.accounts.values()) {
    const off = should - (at.get('machine') ?? 0)
    if (off > 0 && isDone(piece.step)) found.push(`${name(piece.id)} is off, and its step is done`)
    for (const place of at.keys()) if (place.includes('/')) take(place, piece.id)
    if (should > 0 && home.position !== undefined) take(`${home.at} ${piece.name} ${home.position}`, piece.id)
  }
  return found
}

/** A thing by its number with its letter (steps: `step3`) is called by the entry that dealt it, and its place among what that dealt. */
export function namesOf(entries: readonly Entry[]): Name {
  const names = new Map<string, string>()
  const back = takenBack(entries)
  const letters = {
    piece: 'p',
    fluid: 'f',
    mark: 'm',
    tightening: 't',
    loosening: 'l',
    measure: 'q',
    fault: 'x',
    difference: 'd',
    picture: 'g',
    check: 'k',
    order: 'o',
    outing: 'b',
    consumable: 's',
    trigger: 'h',
    finding: 'y',
    container: 'c',
    step: 'step',
    leftOut: 'w',
    entry: 'n',
  }
  for (const entry of entries) {
    if (back.has(entry.n)) continue
    for (const [index, { kind, no, isNew }] of referencesOf(entry).entries())
      if (isNew) names.set(`${letters[kind]}${no}`, `${entry.id}.${index}`)
  }
  return (id) => names.get(id) ?? id
}

function inWords(place: string, name: Name): string {
  const [, thing = place, slot = ''] = /^([cp]\d+)(.*)$/.exec(place) ?? []
  return `${name(thing)}${slot}`
}

function pieces({ ledger, used, lostAccepted, partNotes, layouts, bonds }: State, name: Name): string[] {
  return [
    ...[...ledger.accounts.values()].map(({ piece, home, should, entered }) => {
      const places = placesOf(ledger, piece.id).map(({ place, count }) => `${count} ${inWords(place, name)}`)
      return `piece ${name(piece.id)} ${piece.name} ${piece.size} of ${name(`step${piece.step}`)} ${JSON.stringify(home)} ${should} of ${entered}: ${places.sort()} ${used.has(piece.id)} ${lostAccepted.get(piece.id)} ${JSON.stringify(partNotes.get(piece.id))}`
    }),
    ...layouts.map(({ pieces, places }) => `drawing ${pieces.map(name).sort()} ${JSON.stringify(places)}`),
    ...bonds.map(({ pieces }) => `bond ${pieces.map(name).sort()}`),
  ]
}

function steps({ steps, secondLooks }: State, name: Name): string[] {
  const names = (list: readonly number[]) => list.map((no) => name(`step${no}`)).sort()
  return [...steps.values()].map(
    ({ no, title, way, kind, after, needs, hides, built, turns, minutes, critical }) => {
      const seen = (secondLooks.get(no) ?? []).map(({ line, says }) => `${name(line)} ${says}`)
      return `step ${name(`step${no}`)} ${title} ${way} ${kind} after ${names(after)} needs ${names(needs)} ${hides} ${built} ${turns} ${minutes} ${JSON.stringify(critical)} seen ${seen.sort()}`
    },
  )
}

function obligations(state: State, name: Name): string[] {
  const { marks, tightenings, loosenings, fluids, faults, differences, overrides } = state
  const ticked = (done: readonly ReadonlySet<string>[]) =>
    done.map((through) => [...through].sort().join(' ')).join(' | ')
  return [
    ...[...marks.values()].map(({ id, text, confirmed }) => `mark ${name(id)} ${text} ${confirmed}`),
    ...[...tightenings.values()].map(
      ({ id, piece, done, suspect, condition, wrench }) =>
        `tightening ${name(id)} of ${name(piece)} ${ticked(done)} ${JSON.stringify(suspect)} ${condition} ${wrench?.typed}`,
    ),
    ...[...loosenings.values()].map(({ id, done }) => `loosening ${name(id)} ${ticked(done)}`),
    ...[...fluids.values()].map(
      ({ id, litresOut, filledLitres }) => `fluid ${name(id)} ${litresOut} ${filledLitres}`,
    ),
    ...[...faults.values()].map(
      ({ id, kind, piece, count, settled }) => `fault ${name(id)} ${kind} ${name(piece)} ${count} ${settled}`,
    ),
    ...[...differences.values()].map(
      ({ id, container, expected, counted, settled }) =>
        `difference ${name(id)} in ${name(`c${container}`)} ${expected} ${counted} ${settled}`,
    ),
    ...[...overrides].map(
      ([target, reason]) =>
        `over ${name(target.replace(/^(\w+) (\d+)$/, 'step$2'))} ${/^\w+ /.exec(target)?.[0] ?? ''} ${reason}`,
    ),
  ]
}

function judged(state: State, name: Name): string[] {
  const { checks, verdicts, comparisons, triggers, findings, measures, pictures } = state
  return [
    ...[...checks.values()].map(
      ({ id, piece, kind, done }) => `check ${name(id)} ${name(piece)} ${kind} ${done !== null}`,
    ),
    ...[...verdicts].map(([piece, { verdict, reason }]) => `verdict ${name(piece)} ${verdict} ${reason}`),
    ...[...comparisons.values()].map(
      ({ piece, old, verdict, features }) =>
        `compared ${name(piece)} ${name(old)} ${verdict} ${JSON.stringify(features)}`,
    ),
    ...[...triggers.values()].map(({ id, when }) => `list ${name(id)} ${when}`),
    ...[...findings.values()].map(({ id, text }) => `finding ${name(id)} ${text}`),
    ...[...measures.values()].map(
      ({ id, name: what, measurement, shims }) =>
        `measure ${name(id)} ${what} ${JSON.stringify(measurement.readings)} ${(shims ?? []).map(({ piece }) => name(piece)).sort()}`,
    ),
    ...[...pictures.values()].map(
      ({ id, file, belongs }) =>
        `picture ${name(id)} ${file} ${belongs !== null && typeof belongs === 'object' ? ('step' in belongs ? name(`step${belongs.step}`) : name(`c${belongs.container}`)) : belongs}`,
    ),
  ]
}

function waited({ orders, outings, consumables }: State, name: Name): string[] {
  return [
    ...[...orders.values()].map(
      ({ id, ...line }) =>
        `order ${name(id)} ${JSON.stringify({ ...line, piece: line.piece && name(line.piece) }, Object.keys(line).sort())}`,
    ),
    ...[...outings.values()].map(
      ({ id, pieces, tookOut }) =>
        `out ${name(id)} ${pieces.map(({ piece, away }) => `${away} ${name(piece)}`).sort()} ${tookOut?.text}`,
    ),
    ...[...consumables.values()].map(
      ({ id, name: what, step, applied }) =>
        `put on ${name(id)} ${what} in ${name(`step${step}`)} ${applied?.at}`,
    ),
  ]
}

function containers({ containers, blanks }: State, name: Name): string[] {
  return [
    ...[...containers.values()].map(
      ({ no, kind, inside, voided }) =>
        `container ${name(`c${no}`)} ${kind} in ${inside === null ? null : name(`c${inside}`)} ${voided?.reason}`,
    ),
    ...[...blanks].map(([no, { voided }]) => `label ${name(`c${no}`)} ${voided?.reason}`),
  ]
}
