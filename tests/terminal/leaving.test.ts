import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
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
  expect(terminal.raw.lastIndexOf('\x1b[?2026l')).toBeGreaterThan(terminal.raw.lastIndexOf('\x1b[?2026h'))
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
    await again.sees(/waiting for the\s+gasket/)
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
    ['SIGQUIT', 131],
  ] as const)('by %s', async (signal, code) => {
    const { terminal, home } = await atWork()
    terminal.signal(signal)
    await terminal.sees(`left with ${code}`)
    await leftAsItWas(terminal)
    const again = new PutbackTerminal(home)
    await again.sees('broken off after')
  })
})

/** A fault planted in the program from outside, by a module that Node loads before it. */
function withFault(code: string): { env: Record<string, string> } {
  const module = join(homeForTest(), 'fault.mjs')
  writeFileSync(module, code)
  return { env: { NODE_OPTIONS: `--import=${pathToFileURL(module).href}` } }
}

describe('the terminal is given back by a fault of the program itself', () => {
  test.each([
    [
      'in a handler',
      "process.stdin.on('data', (text) => { if (String(text).includes('!')) throw new Error('planted') })",
    ],
    [
      'that nobody waits for',
      "process.stdin.on('data', async (text) => { if (String(text).includes('!')) throw new Error('planted') })",
    ],
    [
      'while a frame is made',
      `const { segment } = Intl.Segmenter.prototype
       Intl.Segmenter.prototype.segment = function (text) {
         if (String(text).includes('!Ω')) throw new Error('planted')
         return segment.call(this, text)
       }`,
    ],
  ])('%s', async (_, code) => {
    const { terminal } = await onFirstJob(withFault(code))
    terminal.write('!Ω')
    await terminal.sees('left with 1')
    // The way to it may be longer than the window.
    expect(terminal.raw).toContain('putback stopped by a fault of its own')
    expect(terminal.raw).toContain('planted')
    await leftAsItWas(terminal)
  })
})

describe('a terminal that is gone is no fault of the program', () => {
  test('when no key can be read any more', async () => {
    const { terminal } = await onFirstJob(
      withFault(
        "process.stdin.on('data', (text) => { if (String(text).includes('!')) process.stdin.emit('error', new Error('EIO')) })",
      ),
    )
    terminal.write('!')
    await terminal.sees('left with 129')
    expect(terminal.raw).not.toContain('fault')
    await leftAsItWas(terminal)
  })

  test('when it cannot be given back', async () => {
    const { terminal } = await onFirstJob(
      withFault(
        `const { setRawMode } = process.stdin
         process.stdin.setRawMode = function (isRaw) {
           if (!isRaw) this.emit('error', new Error('EIO'))
           return setRawMode.call(this, isRaw)
         }`,
      ),
    )
    terminal.write('\x03')
    await terminal.sees('left with 0')
    expect(terminal.raw).not.toContain('EIO')
    await leftAsItWas(terminal)
  })
})
