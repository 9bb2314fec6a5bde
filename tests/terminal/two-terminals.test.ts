import { beforeAll, describe, expect, test } from 'vitest'
import { tellDemo } from './support/demo-job.ts'
import { Hands } from './support/hands.ts'
import { buildOnce, homeForTest, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

const SET = 'tighten head bolts: 20 Nm, 40 Nm, 90 deg, oiled order A2,B3,B2,A3,A1,B4,B1,A4'

/** Two people at the head bolts of the demo job, both on the page of its step. */
async function two() {
  const home = homeForTest()
  const told = tellDemo(home, SET)
  const [one, other] = [80, 120].map((columns) => new Hands(new PutbackTerminal(home, { columns })))
  if (!one || !other) throw new Error('two terminals are wanted')
  for (const hands of [one, other]) {
    await hands.terminal.sees('[. NOW]')
    await hands.goTo(/─ step 12, cylinder head/, '\r')
  }
  const last = told.session.entries().length
  const entries = () => {
    told.session.refresh()
    return told.session.entries().slice(last)
  }
  return { one, other, last, entries }
}

describe('two terminals on one job', () => {
  test('each sees what the other records, keeps its half line with the cursor, and its answer', async () => {
    const { one, other, last } = await two()
    const half = 'note: head bolts oiled'
    await other.press(`${half}\x1b[D\x1b[D`, () => other.line() === half, 'half a line')
    const before = other.terminal.cursor()
    await one.record('', last + 1)
    await other.terminal.sees('1 of 8 through')
    expect(other.line()).toBe(half)
    expect(other.terminal.cursor()).toEqual(before)
    await other.record('', last + 2)
    await one.terminal.sees(`Entry ${last + 2} was recorded since, not here.`)
    expect(one.said()).toContain('✓ RECORDED  t2: fastener A2 through pass 1 of 3: 20 Nm')
    // An answer that is still true stays as it is.
    await other.press('turn B4\r', () => other.said().startsWith('X REFUSED '), 'a refusal')
    const refusal = other.said()
    await one.record('', last + 3)
    await other.terminal.sees('2 of 8 through')
    expect(other.said()).toBe(refusal)
    expect(other.line()).toBe('turn B4')
  })
  test('what both record at once is all there, and both show it', async () => {
    const { one, other, entries } = await two()
    one.terminal.write('1\r'.repeat(8))
    other.terminal.write(Array.from({ length: 8 }, (_, index) => `note: n${index}\r`).join(''))
    await one.terminal.until(() => entries().length === 16, '16 entries')
    expect(entries().filter(({ type }) => type === 'tightened')).toHaveLength(8)
    expect(entries().flatMap((entry) => (entry.type === 'noted' ? [entry.text] : []))).toEqual(
      Array.from({ length: 8 }, (_, index) => `n${index}`),
    )
    for (const hands of [one, other]) {
      await hands.goTo(/\[\.5 LOG\]/, '.5\r')
      await hands.terminal.sees('n7')
      await hands.terminal.sees('t2: fastener A4 through pass 1 of 3')
    }
  })

  test('both at the same bolt at the same moment never count it twice', async () => {
    const { one, other, entries } = await two()
    for (let through = 1; through <= 4; through += 1) {
      one.terminal.write('1\r')
      other.terminal.write('1\r')
      await one.terminal.until(() => entries().length >= through, `${through} turned`)
      // The slower hand may turn the next bolt meanwhile: both come to see what the record has by then.
      const counted = () => `${entries().length} of 8 through`
      for (const { terminal } of [one, other])
        await terminal.until(() => terminal.text().includes(counted()), 'what is turned')
    }
    const turned = entries().flatMap((entry) => (entry.type === 'tightened' ? [entry.fastener] : []))
    expect(turned).toEqual('A2 B3 B2 A3 A1 B4 B1 A4'.split(' ').slice(0, turned.length))
  })

  test('0 takes back what its own hand did last, and only names what the other did', async () => {
    const { one, other, last, entries } = await two()
    await one.record('', last + 1)
    await other.record('note: a helping hand', last + 2)
    const theirs = `Entry ${last + 2} was not recorded here: note for step 12, cylinder head: a helping`
    await one.terminal.sees(`Entry ${last + 2} was recorded since, not here.`)
    await one.press('0', () => one.said().includes(theirs), theirs)
    await one.press('\r', () => one.said().includes('"undo" takes it back all the same.'), 'the way to do it')
    expect(entries()).toHaveLength(2)
    await other.takeBack()
    // What another did changes what is meant: it is seen before anything is pressed for it.
    one.terminal.write('\x15.5\r')
    await one.terminal.sees('< UNDONE')
    one.terminal.write('\x7f')
    await one.terminal.sees('1 of 8 through')
    // Seen from here, the last one is its own again.
    const own = `take back entry ${last + 1}: `
    await one.press('0', () => one.said().startsWith(own), own)
    await one.press('\r', () => one.said().startsWith('< TAKEN BACK '), 'that it is taken back')
    await other.terminal.sees('0 of 8 through')
    expect(entries().map((entry) => entry.type === 'undone' && entry.entry - last)).toEqual([
      false,
      false,
      2,
      1,
    ])
  })
})
