import { describe, expect, test } from 'vitest'
import type { Entry, EntryType } from '../../src/journal/entry.ts'
import { balance } from '../../src/ledger/ledger.ts'
import { belongsInToolbox } from '../../src/ledger/piece.ts'
import type { Session } from '../../src/session/session.ts'
import { isTakenBack } from '../../src/session/views.ts'
import { countedPiece, pieceName } from '../../src/words/pieces.ts'
import { entriesTold, factOf, partOf, recordOf, sectionOf, stepOf } from './support/record-of.ts'
import { scenario, scenarios } from './support/scenarios.ts'

// Whole jobs, told from their files as tests/scenarios does: what the record says of each is held against the journal.

describe.each(scenarios)('the record of $name', ({ path }) => {
  test('begins with who decides, and ends with its last entry', () => {
    const session = scenario(path)
    const rows = recordOf(session)
    expect(rows[1]).toBe('Values are as typed by the user; the service manual of the machine decides.')
    expect(rows.at(-1)).toBe(
      `End of the as-built record of job ${session.state.job.no}, to entry ${session.entries().length}.`,
    )
    expect(rows.find((row) => row.startsWith('Journal:'))).toContain(session.entries().at(-1)?.id)
  })

  test('has every piece that is home once, with its count', () => {
    const session = scenario(path)
    const rows = recordOf(session)
    const { ledger, steps } = session.state
    let told = 0
    for (const { piece } of ledger.accounts.values()) {
      if (belongsInToolbox(piece)) continue
      const count = balance(ledger, piece.id, 'machine')
      const home = partOf(stepOf(rows, piece.step), 'on the machine').map(factOf)
      const own = home.filter((row) => isOf(session, row, piece.id))
      expect([pieceName(session.state, piece.id), countsIn(own)]).toEqual([
        pieceName(session.state, piece.id),
        // Two of the name in one step share their rows.
        namesakes(session, piece.id),
      ])
      told += count
    }
    const all = [...steps.keys()].flatMap((no) => partOf(stepOf(rows, no), 'on the machine').map(factOf))
    expect(countsIn(all)).toBe(told)
    expect(told).toBeGreaterThanOrEqual(5)
  })

  test('has every failure, reopening, override and decision with its reason', () => {
    const session = scenario(path)
    const rows = recordOf(session)
    for (const entry of ofTypes(session, 'failed', 'reopened', 'overridden', 'decided', 'rehomed')) {
      const reason = 'reason' in entry ? entry.reason : 'result' in entry ? entry.result : undefined
      const own = rows.filter((row) => entriesTold([row]).has(entry.n))
      expect(own.filter((row) => row.includes(reason ?? '?')).length).toBeGreaterThan(0)
    }
  })

  test('has every pass of every tightening, with each fastener in the order of turning', () => {
    const session = scenario(path)
    const rows = recordOf(session)
    for (const { id, step, passes, order, done } of session.state.tightenings.values()) {
      const part = partOf(stepOf(rows, step), 'tightened')
      const own = part.slice(part.findIndex((row) => row.includes(`tightening ${id} (`)))
      for (const [index, { typed }] of passes.entries()) {
        const at = own.indexOf(`      pass ${index + 1} of ${passes.length}: ${typed}`)
        expect(at).toBeGreaterThan(0)
        const turned = factOf(own[at + 1] ?? '').split(', ')
        // In a set as they came: one that failed and was brought up to the others is the last.
        expect(turned).toEqual([...(done[index] ?? [])])
        expect(turned.toSorted()).toEqual(order.filter((name) => done[index]?.has(name)).toSorted())
      }
    }
  })

  test('names every entry in force but those that a later one made void', () => {
    const session = scenario(path)
    const told = entriesTold(recordOf(session))
    const untold = inForce(session).filter(({ n }) => !told.has(n))
    expect(untold.filter(({ type }) => !SUPERSEDED.has(type))).toEqual([])
  })

  test('has nothing of what was undone, but its number', () => {
    const session = scenario(path)
    const rows = recordOf(session)
    const numbers = new Set(session.state.inForce)
    const undone = session.entries().filter((entry) => isTakenBack(numbers, entry))
    const told = entriesTold(rows)
    expect(undone.filter(({ n }) => told.has(n))).toEqual([])
    const said =
      undone.length === 0
        ? 'Undone: no entry'
        : `Undone: ${undone.length} ${undone.length === 1 ? 'entry' : 'entries'}, left out here`
    expect(rows).toContain(said)
  })

  test('keeps to the width of the paper', () => {
    const rows = recordOf(scenario(path), 100)
    expect(rows.filter((row) => row.length > 100)).toEqual([])
    expect(rows.filter((row) => /undefined|null|NaN|\[object|\p{C}/u.test(row))).toEqual([])
  })
})

describe('the record of the demo', () => {
  const demo = () => {
    const session = scenario('jobs/demo/blue-twin.txt')
    return { session, rows: recordOf(session) }
  }

  test('tells what was missing and broken on arrival, and how the stump came out', () => {
    const arrival = sectionOf(demo().rows, 'CONDITION ON ARRIVAL').map(factOf)
    expect(arrival[0]).toMatch(/^missing as found: 1 of 8, valve cover bolts M6x25/)
    expect(arrival[1]).toMatch(/^snapped as found: 1 × exhaust stud M8x35, to scrap/)
    expect(arrival.at(-1)).toBe('x1 settled: stump drilled out by the shop, thread insert fitted')
  })

  test('tells both interruptions of the head bolts, and how the doubt was settled', () => {
    const { session, rows } = demo()
    const [supper, telephone] = ofTypes(session, 'stopped').slice(-2)
    const part = partOf(stepOf(rows, 12), 'tightened')
    expect(part).toContainEqual(
      expect.stringMatching(new RegExp(`^ +${supper?.n} .* no longer counted: A2, B3, B2 in pass 2$`)),
    )
    expect(part).toContainEqual(
      expect.stringMatching(
        new RegExp(`^ +${telephone?.n} .* in doubt, perhaps turned already: fastener A3 in pass 3$`),
      ),
    )
    expect(part.at(-1)).not.toContain('still in doubt')
    expect(part.map(factOf)).toContainEqual(
      expect.stringMatching(/^t2: fastener A3 taken as not turned, because its paint mark/),
    )
  })

  test('tells which new piece took the place of which old one, and where the old ones went', () => {
    const { session, rows } = demo()
    const fresh = sectionOf(rows, 'NEW PIECES').map(factOf)
    const supplied = fresh.filter((row) => row.startsWith('new: '))
    expect(supplied).toHaveLength(ofTypes(session, 'supplied').flatMap(({ openings }) => openings).length)
    expect(fresh).toContainEqual(
      expect.stringMatching(
        /^new: 8 × head bolts .* in place of head bolts .*; the new: on the machine; the old: in scrap$/,
      ),
    )
    expect(fresh).toContainEqual(expect.stringMatching(/^new: 1 × exhaust stud .* for a home that was short/))
  })

  test('tells the recount that did not agree and what explained it', () => {
    const recounts = sectionOf(demo().rows, 'RECOUNTS').map(factOf)
    expect(recounts).toContainEqual(
      expect.stringMatching(/^counted bag 11: 1 that the record does not have there \(d1\)$/),
    )
    expect(recounts).toContainEqual(
      expect.stringMatching(
        /^d1 explained: moved, .* because both were recorded as fitted and only one was$/,
      ),
    )
  })

  test('has both chain guide bolts once, after one was recorded twice', () => {
    const home = partOf(stepOf(demo().rows, 8), 'on the machine').map(factOf)
    const bolts = home.filter((row) => row.includes('chain guide bolt'))
    expect(countsIn(bolts)).toBe(2)
    expect(bolts).toContainEqual(expect.stringMatching(/from bag 11$/))
  })

  test('tells every aid and tool with its way out and back', () => {
    const { session, rows } = demo()
    const own = [...session.state.ledger.accounts.values()].filter(({ piece }) => belongsInToolbox(piece))
    const section = sectionOf(rows, 'AIDS AND TOOLS')
    expect(section.filter((row) => /: in the toolbox$/.test(row))).toHaveLength(own.length)
    expect(section.filter((row) => /from the toolbox on/.test(row))).toHaveLength(own.length)
    expect(section.filter((row) => /into the toolbox$/.test(row))).toHaveLength(own.length)
  })

  test('has the result of every check', () => {
    const { session, rows } = demo()
    for (const entry of ofTypes(session, 'build-done')) {
      if (entry.result === undefined) continue
      const back = partOf(stepOf(rows, entry.step), 'on the way back')
      expect(back.filter((row) => row.endsWith(`: ${entry.result}`))).not.toEqual([])
    }
  })

  test('adds the minutes up', () => {
    expect(demo().rows).toContain('Time noted: 115 min')
  })
})

/** What a later entry may take back without a trace of its own in the record: fits, ticks, confirmations, fillings. */
const SUPERSEDED = new Set<EntryType>(['fitted', 'tightened', 'loosened', 'confirmed', 'filled'])

function inForce(session: Session): Entry[] {
  const numbers = new Set(session.state.inForce)
  return session.entries().filter(({ n }) => numbers.has(n))
}

function ofTypes<Type extends EntryType>(session: Session, ...types: Type[]) {
  return inForce(session).filter((entry): entry is Extract<Entry, { type: Type }> =>
    (types as EntryType[]).includes(entry.type),
  )
}

type Piece = Parameters<typeof countedPiece>[1]

function isOf({ state }: Session, row: string, piece: Piece): boolean {
  const [, count = '0', rest = ''] = /^(\d+) × (.*)$/.exec(row) ?? []
  const name = countedPiece(state, piece, Number(count)).replace(/^\d+ × /, '')
  return (
    rest.startsWith(`${name}, at `) || rest.startsWith(`${name}, from `) || rest.startsWith(`${name}, never `)
  )
}

/** How many are home of all pieces in a step that go by the name of one. */
function namesakes({ state }: Session, id: Piece): number {
  const own = state.ledger.accounts.get(id)?.piece
  return [...state.ledger.accounts.values()]
    .filter(({ piece }) => piece.step === own?.step && !belongsInToolbox(piece))
    .filter(({ piece }) => countedPiece(state, piece.id, 2) === countedPiece(state, id, 2))
    .reduce((sum, { piece }) => sum + balance(state.ledger, piece.id, 'machine'), 0)
}

function countsIn(rows: readonly string[]): number {
  return rows.reduce((sum, row) => sum + Number(/^(\d+) × /.exec(row)?.[1] ?? Number.NaN), 0)
}
