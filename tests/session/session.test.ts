import { readFileSync, writeFileSync } from 'node:fs'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test, vi } from 'vitest'
import type { Command } from '../../src/journal/command.ts'
import { ENTRY_VERSION, type EntryBody } from '../../src/journal/entry.ts'
import { fold, UnlawfulEntry } from '../../src/journal/fold.ts'
import type { Session } from '../../src/session/session.ts'
import { NotRecorded } from '../../src/storage/journal/not-recorded.ts'
import { LockHeld } from '../../src/storage/lock/lock.ts'
import { faultyFileSystem } from '../storage/support/faulty-file-system.ts'
import { temporaryFolder } from '../storage/support/temporary-folder.ts'
import {
  bag,
  begin,
  clear,
  confirm,
  done,
  endStrip,
  lose,
  mark,
  matchedOff,
  move,
  newBag,
  off,
  putOn,
  redo,
  slot,
  strip,
  undo,
} from '../support/commands.ts'
import { numbered, openJob, record, stateText } from '../support/record.ts'
import { sessionIn, sessionWith, tell, writeUnasked } from './support/sessions.ts'

const typesOf = (session: Session) => session.entries().map(({ type }) => type)
const newTray: Command = { do: 'open-container', kind: 'tray', slots: 4 }
const openBag: Command = { do: 'open-container', kind: 'bag' }

describe('two sessions on one folder', () => {
  test('take turns: each sees what the other wrote, and no entry is lost', () => {
    const folder = temporaryFolder()
    const left = sessionIn(folder)
    const right = sessionIn(folder)
    tell(left, openJob, strip('bracket off'))
    tell(right, off(6, 'bracket bolt'))
    tell(left, strip('cam caps off'))
    tell(right, off(4, 'cam cap bolt'), endStrip)
    tell(left, begin(2))
    expect(left.refresh()).toBe(false)
    expect(right.refresh()).toBe(true)
    const told = [
      'opened',
      'strip-began',
      'came-off',
      'strip-began',
      'came-off',
      'strip-ended',
      'build-began',
    ]
    expect([typesOf(left), typesOf(right)]).toEqual([told, told])
    expect(left.entries()).toEqual(right.entries())
    for (const { state } of [left, right]) expect(stateText(state)).toBe(stateText(fold(left.entries())))
  })

  test('both open a bag at the same moment: two bags, two numbers', () => {
    const folder = temporaryFolder()
    const left = tell(sessionIn(folder), openJob)
    const right = sessionIn(folder)
    tell(left, openBag)
    tell(right, openBag)
    expect([...right.state.containers.keys()]).toEqual([1, 2])
    expect([...left.state.containers.keys()]).toEqual([1])
    left.refresh()
    expect([...left.state.containers.keys()]).toEqual([1, 2])
  })

  const lastBolt = [strip('bracket off'), off(1, 'bracket bolt'), endStrip, begin(1)]
  test.each<[string, Command[], Command, Command, object]>([
    ['both fit the last bolt', lastBolt, putOn('p1'), putOn('p1'), { code: 'home-already', piece: 'p1' }],
    [
      'one loses it, the other fits it',
      lastBolt,
      lose('p1'),
      putOn('p1'),
      { code: 'not-within-reach', piece: 'p1', wanted: 1, there: 0, lies: [] },
    ],
    ['both close the step', [...lastBolt, putOn('p1')], done(1), done(1), { code: 'step-done', step: 1 }],
    [
      'both confirm the mark',
      [strip('bracket off'), off(1, 'bracket'), mark('arrow forward', 'p1'), endStrip, begin(1), putOn('p1')],
      confirm('m1'),
      confirm('m1'),
      { code: 'already', what: 'confirmed', id: 'm1' },
    ],
    [
      'both take the same slot',
      [strip('bracket off'), off(1, 'long bolt'), off(1, 'short bolt'), newTray],
      move('p1', slot(3, 2)),
      move('p2', slot(3, 2)),
      { code: 'slot-taken', container: 3, slot: '2', piece: 'p1' },
    ],
    [
      'both clear it',
      [...lastBolt, putOn('p1'), done(1)],
      clear,
      clear,
      { code: 'already', what: 'cleared', id: 'blue twin' },
    ],
    [
      'one takes back what was last there, not what the other has just written',
      lastBolt,
      putOn('p1'),
      { do: 'undo', entry: 5 },
      { code: 'written-since', entry: 5, last: 6 },
    ],
    [
      'a piece is put into a bag that has just been declared void',
      [strip('bracket off'), off(1, 'bracket'), openBag],
      { do: 'void-container', container: 2, reason: 'torn' },
      move('p1', bag(2)),
      { code: 'container-void', container: 2, insteadOf: null },
    ],
  ])('%s: the later is refused on what holds now', (_, before, first, second, refusal) => {
    const folder = temporaryFolder()
    const left = tell(sessionIn(folder), openJob, ...before)
    const right = sessionIn(folder)
    tell(left, first)
    expect(right.entries()).toHaveLength(before.length + 1)
    expect(right.send(second)).toMatchObject({ kind: 'refused', refusal })
    // The refused one knows now why.
    expect(right.entries()).toEqual(left.entries())
    expect(stateText(right.state)).toBe(stateText(left.state))
    expect(sessionIn(folder).entries()).toHaveLength(before.length + 2)
  })
})

describe('durable first', () => {
  test('whichever call the disk refuses: recorded and seen, or neither', () => {
    const outcomes = new Set<string>()
    for (const onwards of [false, true]) {
      for (let at = 1; ; at += 1) {
        const folder = temporaryFolder()
        const fs = faultyFileSystem()
        const session = tell(sessionIn(folder, { fs }), openJob, strip('bracket off'))
        const before = { text: stateText(session.state), version: session.version, bytes: journal(folder) }
        const told = vi.fn()
        session.subscribe(told)
        fs.plant({ at, errno: 'EIO', onwards })
        const outcome = session.send(off(6, 'bracket bolt'))
        const { hit } = fs
        fs.mend()
        outcomes.add(outcome.kind)
        if (outcome.kind === 'recorded') {
          expect(sessionIn(folder).entries()).toEqual(session.entries())
          expect(session.entries()).toHaveLength(3)
        } else {
          expect(outcome).toEqual({ kind: 'not-recorded', error: expect.any(NotRecorded) })
          expect(stateText(session.state)).toBe(before.text)
          expect(session.version).toBe(before.version)
          expect(session.entries()).toHaveLength(2)
          expect(told).not.toHaveBeenCalled()
          if (!onwards) {
            expect(journal(folder)).toBe(before.bytes)
            expect(session.send(off(6, 'bracket bolt'))).toMatchObject({ kind: 'recorded', entry: { n: 3 } })
          }
        }
        if (hit === null) break
      }
    }
    expect([...outcomes].sort()).toEqual(['not-recorded', 'recorded'])
  })

  test('the disk is full, then has room again', () => {
    const folder = temporaryFolder()
    const fs = faultyFileSystem()
    const session = tell(sessionIn(folder, { fs }), openJob, strip('bracket off'))
    fs.plantIn('fdatasyncSync', 'ENOSPC')
    expect(session.send(off(6, 'bracket bolt'))).toEqual({
      kind: 'not-recorded',
      error: expect.objectContaining({ code: 'ENOSPC', takenBack: true }),
    })
    expect([session.state.seq, session.state.ledger.accounts.size]).toEqual([2, 0])
    fs.mend()
    tell(session, off(6, 'bracket bolt'))
    expect(typesOf(sessionIn(folder))).toEqual(['opened', 'strip-began', 'came-off'])
  })

  test('somebody else is writing', () => {
    const folder = temporaryFolder()
    const session = tell(sessionIn(folder, { lockLimit: 0 }), openJob)
    const holder = { pid: process.ppid, host: hostname(), since: '2030-01-01T08:00:00.000Z', thread: 0 }
    writeFileSync(join(folder, 'journal.lock'), JSON.stringify({ ...holder, token: 'theirs' }))
    expect(session.send(strip('bracket off'))).toEqual({ kind: 'not-recorded', error: expect.any(LockHeld) })
    expect([session.state.seq, session.state.steps.size]).toEqual([1, 0])
  })

  const journal = (folder: string) => readFileSync(join(folder, 'journal.log'), 'utf8')
})

describe('an entry that breaks a law, with its checksum right', () => {
  const before = record([
    openJob,
    strip('bracket off'),
    off(6, 'bracket bolt'),
    matchedOff(['1', '2'], 'cap'),
  ])
  const piece = { kind: 'part', name: 'bracket', home: { at: 'bracket' }, should: 1, step: 1 } as const
  const seven = { piece: 'p1', count: 7, from: 'c1', to: 'bench' } as const
  const tooMany: EntryBody = { type: 'moved', moves: [seven] }
  const after: EntryBody = { type: 'strip-ended', step: 1 }

  const unlawful: [string, EntryBody][] = [
    ['7 of 6 bolts', tooMany],
    ['one move right, the next wrong: neither', { type: 'moved', moves: [{ ...seven, count: 6 }, seven] }],
    ['a piece that never came off', { type: 'moved', moves: [{ ...seven, piece: 'p9' }] }],
    [
      'a cap in the place of its mate',
      {
        type: 'fitted',
        step: 1,
        began: true,
        moves: [{ piece: 'p2', count: 1, from: 'c2', to: 'machine', position: '2' }],
      },
    ],
    [
      'a piece under a number that is taken, in a new step and a new bag: none of it',
      {
        type: 'came-off',
        step: 2,
        began: { no: 2, title: 'head off', after: [1], hides: false },
        opened: { no: 3, kind: 'bag', inside: null },
        pieces: [
          { ...piece, id: 'p4' },
          { ...piece, id: 'p1' },
        ],
        openings: [],
        moves: [],
      },
    ],
    ['work in a step that is not there', { type: 'build-began', step: 9 }],
  ]

  test.each(unlawful)('%s: the state stands before it', (_, body) => {
    const folder = folderWith(body, after)
    const session = sessionIn(folder)
    expect(session.unlawful).toBeInstanceOf(UnlawfulEntry)
    expect(session.unlawful).toMatchObject({
      n: 5,
      message: expect.stringMatching(`^entry 5 \\(${body.type}\\)`),
    })
    expect(stateText(session.state)).toBe(stateText(before.state))
    expect(session.entries()).toHaveLength(6)
    expectNothingWritten(folder, session)
  })

  test.each(unlawful)('%s, written while the job is open: found by reading on, and by sending', (_, body) => {
    for (const how of ['refresh', 'send'] as const) {
      const folder = folderWith()
      const session = sessionIn(folder)
      writeUnasked(folder, [numbered(body, 5), numbered(after, 6)])
      const outcome = how === 'refresh' ? session.refresh() : session.send(off(1, 'bracket'))
      expect(session.unlawful).toMatchObject({ n: 5 })
      if (how === 'send') expect(outcome).toEqual({ kind: 'not-recorded', error: session.unlawful })
      expect(stateText(session.state)).toBe(stateText(before.state))
      expectNothingWritten(folder, session)
    }
  })

  test('an entry that was taken back need not be lawful', () => {
    const session = sessionIn(folderWith(tooMany, { type: 'undone', entry: 5 }))
    expect(session.unlawful).toBeNull()
    expect(session.send(off(1, 'bracket'))).toMatchObject({ kind: 'recorded', entry: { n: 7 } })
  })

  test('two of them, the first taken back after the second: the first is named, and the state stands before it', () => {
    const session = sessionIn(folderWith(tooMany, tooMany, { type: 'undone', entry: 5 }))
    expect(session.unlawful).toMatchObject({ n: 5 })
    expect(stateText(session.state)).toBe(stateText(before.state))
  })

  function folderWith(...bodies: EntryBody[]): string {
    const folder = temporaryFolder()
    writeUnasked(folder, [...before.entries, ...bodies.map((body, index) => numbered(body, 5 + index))])
    return folder
  }

  function expectNothingWritten(folder: string, session: Session): void {
    const bytes = readFileSync(join(folder, 'journal.log'), 'utf8')
    const { version } = session
    expect(session.send(off(1, 'bracket'))).toEqual({ kind: 'not-recorded', error: session.unlawful })
    expect(session.send(undo)).toEqual({ kind: 'not-recorded', error: session.unlawful })
    expect(readFileSync(join(folder, 'journal.log'), 'utf8')).toBe(bytes)
    expect(session.version).toBe(version)
  }
})

describe('each entry is stamped', () => {
  test('with the clock at the moment it was decided, who works here, and an id of its own', () => {
    let minute = 0
    const now = () => new Date(Date.UTC(2030, 0, 15, 14, minute++))
    const session = sessionIn(temporaryFolder(), { now, by: 'Ada' })
    tell(session, openJob)
    expect(session.send(off(6, 'bolt')).kind).toBe('recorded')
    expect(session.send(begin(9)).kind).toBe('refused')
    tell(session, endStrip)
    expect(session.entries().map(({ v, n, at, by }) => ({ v, n, at, by }))).toEqual([
      { v: ENTRY_VERSION, n: 1, at: '2030-01-15T14:00:00.000Z', by: 'Ada' },
      { v: ENTRY_VERSION, n: 2, at: '2030-01-15T14:01:00.000Z', by: 'Ada' },
      // The refused command asked for the time as well.
      { v: ENTRY_VERSION, n: 3, at: '2030-01-15T14:03:00.000Z', by: 'Ada' },
    ])
    const ids = session.entries().map(({ id }) => id)
    expect(new Set(ids).size).toBe(3)
    for (const id of ids) expect(id).toMatch(/^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/)
  })

  test('with nobody, where nobody was named', () => {
    expect(sessionWith().entries()[0]).not.toHaveProperty('by')
  })
})

describe('who listens is told', () => {
  test('once for what is recorded, not for what is refused, and no more once it has stopped', () => {
    const session = sessionWith(strip('bracket off'))
    const told = vi.fn()
    const stop = session.subscribe(told)
    const versions = [session.version]
    for (const command of [off(6, 'bolt'), begin(9), endStrip]) {
      session.send(command)
      versions.push(session.version)
    }
    expect(told).toHaveBeenCalledTimes(2)
    const [v = 0] = versions
    expect(versions).toEqual([v, v + 1, v + 1, v + 2])
    stop()
    tell(session, begin(1))
    expect(told).toHaveBeenCalledTimes(2)
    expect(session.version).toBe(v + 3)
  })

  test('of what another wrote, when it is read', () => {
    const folder = temporaryFolder()
    const left = tell(sessionIn(folder), openJob)
    const right = sessionIn(folder)
    const told: number[] = []
    left.subscribe(() => told.push(left.state.seq))
    expect(left.refresh()).toBe(false)
    tell(right, strip('bracket off'), off(6, 'bolt'))
    expect(told).toEqual([])
    expect([left.refresh(), left.refresh()]).toEqual([true, false])
    expect(told).toEqual([3])
    tell(right, endStrip)
    // First what the other wrote, then what was sent.
    tell(left, begin(1))
    expect(told).toEqual([3, 4, 5])
  })

  test('and the gates are worked out anew', () => {
    const session = sessionWith(strip('bracket off'), off(6, 'bolt'))
    const gates = session.gates()
    expect(session.gates()).toBe(gates)
    expect(gates.ready()).toEqual([])
    tell(session, endStrip)
    expect(session.gates().ready()).toEqual([1])
  })
})

describe('taking back', () => {
  const told = [strip('bracket off'), off(6, 'bolt')]

  test('undo and redo lead to the state of before, and of after; the history keeps all of it', () => {
    const session = sessionWith(...told)
    const after = stateText({ ...session.state, seq: 0 })
    const bolts = () => session.state.ledger.accounts.has('p1')
    expect(session.send(undo)).toMatchObject({ kind: 'recorded', entry: { n: 4, type: 'undone', entry: 3 } })
    expect(bolts()).toBe(false)
    expect(session.send(undo)).toMatchObject({ kind: 'recorded', entry: { n: 5, type: 'undone', entry: 2 } })
    expect(session.send(undo)).toEqual({ kind: 'refused', refusal: { code: 'nothing-to-undo' } })
    expect([session.state.steps.size, session.state.undone]).toEqual([0, [3, 2]])
    expect(session.send(redo)).toMatchObject({ kind: 'recorded', entry: { n: 6, type: 'redone', entry: 2 } })
    expect(session.send(redo)).toMatchObject({ kind: 'recorded', entry: { n: 7, type: 'redone', entry: 3 } })
    expect(session.send(redo)).toEqual({ kind: 'refused', refusal: { code: 'nothing-to-redo' } })
    expect(stateText({ ...session.state, seq: 0 })).toBe(after)
    expect(stateText(session.state)).toBe(stateText(fold(session.entries())))
    expect(typesOf(session).slice(3)).toEqual(['undone', 'undone', 'redone', 'redone'])
  })

  test('the fold starts over: what the entry had changed in place is as before', () => {
    const session = sessionWith(...told, endStrip, begin(1))
    const before = stateText({ ...session.state, seq: 0, undone: [] })
    tell(session, putOn('p1'), undo)
    expect(stateText({ ...session.state, seq: 0, undone: [] })).toBe(before)
    tell(session, putOn('p1', undefined, 2))
    expect(session.state.undone).toEqual([])
    expect(session.send(redo)).toEqual({ kind: 'refused', refusal: { code: 'nothing-to-redo' } })
  })

  test('a label that was taken back is not given out a second time', () => {
    const session = sessionWith(...told, undo)
    expect([...session.state.containers.keys()]).toEqual([])
    tell(session, off(6, 'bolt', { into: newBag }))
    expect([...session.state.containers.keys()]).toEqual([2])
    expect([...session.state.ledger.accounts.keys()]).toEqual(['p2'])
  })

  test('by one session is followed by the other', () => {
    const folder = temporaryFolder()
    const left = tell(sessionIn(folder), openJob, ...told)
    const right = sessionIn(folder)
    tell(right, undo)
    left.refresh()
    expect(stateText(left.state)).toBe(stateText(right.state))
    expect(left.state.ledger.accounts.size).toBe(0)
  })
})

test('a job opened again stands where it stood', () => {
  const folder = temporaryFolder()
  const { state } = tell(
    sessionIn(folder),
    openJob,
    strip('bracket off'),
    off(6, 'bolt'),
    undo,
    redo,
    endStrip,
  )
  expect(stateText(sessionIn(folder).state)).toBe(stateText(state))
})

test('a folder without a journal is a job that is still to be opened', () => {
  const session = sessionIn(temporaryFolder())
  expect([session.entries(), session.state.job.no, session.unlawful, session.version]).toEqual([
    [],
    0,
    null,
    0,
  ])
  expect(session.send(endStrip)).toEqual({
    kind: 'refused',
    refusal: { code: 'no-job', command: 'end-strip' },
  })
})
