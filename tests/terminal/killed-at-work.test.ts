import { beforeAll, describe, expect, test } from 'vitest'
import { tellDemo } from './support/demo-job.ts'
import { Hands } from './support/hands.ts'
import { buildOnce, homeForTest, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

const SET = 'tighten head bolts: 20 Nm, 40 Nm, 90 deg, oiled order A2,B3,B2,A3,A1,B4,B1,A4'

/** At the head bolts of the demo job, so many lines of it after the torque was set. */
async function atTheBolts(more = 0) {
  const home = homeForTest()
  const told = tellDemo(home, SET, more)
  const starts = async () => {
    const hands = new Hands(new PutbackTerminal(home))
    await hands.terminal.sees('[. NOW]')
    return hands
  }
  const hands = await starts()
  await hands.goTo(/─ step 12, cylinder head/, '\r')
  const entries = () => {
    told.session.refresh()
    return told.session.entries()
  }
  return { hands, starts, entries }
}

async function kill({ terminal }: Hands): Promise<void> {
  terminal.signal('SIGKILL')
  await terminal.sees('left with 137')
}

describe('killed in the middle of a tightening', () => {
  test('a torque pass: the card says where it broke off, Enter goes on with its first bolt', async () => {
    const { hands, starts, entries } = await atTheBolts()
    const last = entries().length
    for (const n of [1, 2, 3]) await hands.record('', last + n)
    await hands.press('note: half a li', () => hands.line() === 'note: half a li', 'half a line')
    await kill(hands)
    expect(entries()).toHaveLength(last + 3)

    const again = await starts()
    const text = again.terminal.text()
    expect(text).toMatch(/broken off after \d\d:\d\d, in step 12, cylinder head/i)
    expect(text.replace(/\s+/g, ' ')).toContain('go on: turn A2, pass 1 of 3: 20 Nm')
    expect(text).toMatch(/LOOSE .*coolant hose end at radiator/)
    expect(again.line()).toBe('')
    await again.goTo(/─ step 12, cylinder head/, '\r')
    expect(again.enterDoes()).toMatch(/^turn A2, pass 1 of 3: 20 Nm/)
    // The note that work broke off is an entry too.
    await again.record('', last + 5)
    expect(entries().at(-2)).toMatchObject({ type: 'stopped', abrupt: true, step: 12 })
    expect(entries().at(-1)).toMatchObject({ type: 'tightened', fastener: 'A2', pass: 0 })
  })

  test('an angle pass: the bolt in hand is in doubt, and Enter turns none before that is said', async () => {
    // The first pass of torque is through.
    const { hands, starts, entries } = await atTheBolts(9)
    const last = entries().length
    for (let n = 1; n <= 10; n += 1) await hands.record('1', last + n)
    await kill(hands)
    expect(entries().slice(-2)).toMatchObject([
      { type: 'tightened', fastener: 'A2', pass: 2 },
      { type: 'tightened', fastener: 'B3', pass: 2 },
    ])

    const again = await starts()
    expect(again.terminal.text().replace(/\s+/g, ' ')).toContain('turn B2, perhaps turned already')
    await again.goTo(/─ step 12, cylinder head/, '\r')
    await again.press('\r', () => again.said().startsWith('Was B2 turned'), 'the question')
    await again.enter(
      String(await again.find((says) => says.startsWith('no, B2'))),
      last + 12,
      'its mark has not moved',
    )
    await again.record('', last + 13)
    expect(entries().at(-1)).toMatchObject({ type: 'tightened', fastener: 'B2', pass: 2 })
  })
})
