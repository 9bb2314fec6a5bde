import { expect, test } from 'vitest'
import { labelCode } from '../../src/label/code.ts'
import { jobWith } from './support/bench.ts'

test('an unused label scanned where things come off is in hand at once, and becomes a bag with the first piece', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\r${labelCode(1, 2)}\r`)
  expect(desk.screen).toEqual({ at: 'off' })
  expect(session().state.containers.has(2)).toBe(false)
  type('8 M6x25 hex 10 cover bolts\r')
  expect(session().state.containers.get(2)).toMatchObject({ kind: 'bag', no: 2 })
  expect([...(session().state.ledger.accounts.get('p1')?.at ?? [])]).toEqual([['c2', 8]])
})

test('behind the words of what came off it takes that in, in one go', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\r8 M6x25 hex 10 cover bolts${labelCode(1, 3)}\r`)
  expect([...(session().state.ledger.accounts.get('p1')?.at ?? [])]).toEqual([['c3', 8]])
  expect(desk.typed()).toEqual({ before: '', after: '' })
})

test('behind words that say nothing of what came off it is a scan, and the words stay', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\rbegin ${labelCode(1, 3)}\r`)
  expect(desk.screen.at).toBe('scan')
  expect(desk.typed().before).toBe('begin ')
  expect(session().state.ledger.accounts.size).toBe(0)
})

test('elsewhere it says what it is, and Enter takes it in hand', () => {
  const { desk, type, rows } = atTheBench()
  type(`.2\r${labelCode(1, 2)}\r`)
  expect(rows().join('\n')).toContain('UNUSED')
  type('\r')
  expect(desk.screen).toEqual({ at: 'off' })
})

test('a void label is not taken in hand', () => {
  const { desk, type, session } = atTheBench()
  type('void 3 because sheet torn\r')
  type(`.1\r8 M6x25 cover bolts${labelCode(1, 3)}\r`)
  expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 3) })
  expect(session().state.ledger.accounts.size).toBe(0)
})

test('a label in use behind the words shows what is in it first, and a second Enter puts them in', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\r8 M6x25 hex 10 cover bolts${labelCode(1, 2)}\r`)
  type(`1 M6x40 hex 10 cover bolt${labelCode(1, 2)}\r`)
  expect(desk.screen).toEqual({ at: 'scan', text: labelCode(1, 2) })
  expect(session().state.ledger.accounts.size).toBe(1)
  type('\r')
  expect([...(session().state.ledger.accounts.get('p2')?.at ?? [])]).toEqual([['c2', 1]])
  expect(desk.screen).toEqual({ at: 'off' })
})

function atTheBench() {
  const bench = jobWith('begin cover off')
  const { desk } = bench
  const { session } = desk
  if (!session) throw new Error('no job is open')
  if (session.send({ do: 'deal-labels', count: 4 }).kind !== 'recorded') throw new Error('not dealt')
  return { ...bench, session: () => session }
}

test('on the way back nothing comes off: Enter begins the line that puts something into it', () => {
  const { desk, type, session, typed } = onTheWayBack()
  type(`${labelCode(1, 3)}\r`)
  expect(desk.page().enter?.says).toBe('put something into it')
  type('\r')
  expect(typed()).toBe('move | into 3')
  type('8 cover bolts\r')
  expect(session().state.containers.get(3)).toMatchObject({ kind: 'bag' })
  expect([...(session().state.ledger.accounts.get('p1')?.at ?? [])]).toEqual([['c3', 8]])
})

test('on the way back it can still be taken in hand, and while things come off still be filled by words', () => {
  const back = onTheWayBack()
  back.type(`${labelCode(1, 3)}\r4\r`)
  expect(back.desk.screen).toEqual({ at: 'off' })
  const off = atTheBench()
  off.type(`.2\r${labelCode(1, 3)}\r4\r`)
  expect(off.desk.typed()).toEqual({ before: 'move ', after: ' into 3' })
})

test('a bag that is on the screen on the way back is filled by number as well', () => {
  const { type, typed } = onTheWayBack()
  type('bag\r')
  type(`${labelCode(1, 5)}\r4\r`)
  expect(typed()).toBe('move | into 5')
})

test('the numbers of all unused labels stand where things lie, and lead to each', () => {
  const { desk, type, rows } = atTheBench()
  type('.2\r')
  expect(rows().at(-1)).toMatch(/unused labels +1 to 4/)
  type('3\r')
  expect(desk.screen).toEqual({ at: 'scan', text: '3' })
  expect(rows().join('\n')).toContain('UNUSED')
})

/** The cover is off and lies about, and its step is taken up again. */
function onTheWayBack() {
  const bench = jobWith(
    'begin cover off, does not hide',
    'off 8 M6x25 cover bolts into bench',
    'end',
    'take 1',
  )
  const { desk } = bench
  const { session } = desk
  if (session?.send({ do: 'deal-labels', count: 4 }).kind !== 'recorded') throw new Error('not dealt')
  const typed = () => `${desk.typed().before}|${desk.typed().after}`
  return { ...bench, session: () => session, typed }
}

test('where another label is on the screen, an unused one is scanned and what came off is typed behind it', () => {
  const { desk, type, session } = atTheBench()
  type(`.1\r${labelCode(1, 2)}\r8 M6x25 hex 10 cover bolts\r${labelCode(1, 2)}\r`)
  expect(desk.screen.at).toBe('scan')
  type(`${labelCode(1, 3)}\rcover\r`)
  expect(desk.screen).toEqual({ at: 'off' })
  expect([...(session().state.ledger.accounts.get('p2')?.at ?? [])]).toEqual([['c3', 1]])
})

test('a bag that was scanned while things come off takes in what is typed; a word of the record stays one', () => {
  const { desk, type, session, below } = atTheBench()
  type(`.1\r${labelCode(1, 2)}\r8 M6x25 hex 10 cover bolts\rbag\r2 dowels\r`)
  type(`${labelCode(1, 2)}\r3 washers`)
  expect(below()).toMatch(/^ *into bag 2:\n +3 × washers/)
  type(' into bench')
  expect(below()).not.toContain('into bag 2')
  type(`\x15${labelCode(1, 2)}\r3 washers\r`)
  expect([...(session().state.ledger.accounts.get('p3')?.at ?? [])]).toEqual([['c2', 3]])
  type(`${labelCode(1, 2)}\rend\r`)
  expect(session().state.strip).toBeNull()
  expect(desk.typed().before).toBe('')
})
