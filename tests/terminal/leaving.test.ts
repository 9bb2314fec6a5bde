import { beforeAll, describe, expect, test } from 'vitest'
import { buildOnce, homeForTest, onFirstJob, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

/** On a job with a step under way, and half a line typed. */
async function atWork() {
  const { terminal, home } = await onFirstJob()
  terminal.write('8 valve cover bolts\r')
  await terminal.sees('off 8 = 8 in containers')
  expect(terminal.isAlternate).toBe(true)
  return { terminal, home }
}

/** How the shell finds the terminal afterwards. */
async function leftAsItWas(terminal: PutbackTerminal): Promise<void> {
  const text = await terminal.sees('end of test')
  expect(terminal.isAlternate).toBe(false)
  expect(text).toMatch(/ icanon\b/)
  expect(text).toMatch(/ echo\b/)
  const last = (mode: string, set: 'h' | 'l') => terminal.raw.lastIndexOf(`\x1b[?${mode}${set}`)
  expect(last('25', 'h')).toBeGreaterThan(last('25', 'l'))
  expect(last('2004', 'l')).toBeGreaterThan(last('2004', 'h'))
}

describe('the terminal is given back', () => {
  test('by quit, with a note for the card', async () => {
    const { terminal, home } = await atWork()
    terminal.write('quit\r')
    await terminal.sees('STOP WORK')
    terminal.write('waiting for the gasket\r')
    await terminal.sees('left with 0')
    await leftAsItWas(terminal)
    const again = new PutbackTerminal(home)
    await again.sees('waiting for the gasket')
  })

  test('by Ctrl-C in the middle of a line', async () => {
    const { terminal } = await atWork()
    terminal.write('half a li')
    await terminal.sees(' > half a li')
    terminal.write('\x03')
    await terminal.sees('left with 0')
    await leftAsItWas(terminal)
  })

  test.each([
    ['SIGTERM', 143],
    ['SIGHUP', 129],
    ['SIGINT', 130],
  ] as const)('by %s', async (signal, code) => {
    const { terminal, home } = await atWork()
    terminal.signal(signal)
    await terminal.sees(`left with ${code}`)
    await leftAsItWas(terminal)
    const again = new PutbackTerminal(home)
    await again.sees('Broken off after')
  })
})

test('without a terminal the screens say so in one line', async () => {
  const home = homeForTest()
  const terminal = new PutbackTerminal(home, { env: { TERM: 'dumb' } })
  const text = await terminal.sees('left with 2')
  expect(text).toContain('need a terminal')
})
