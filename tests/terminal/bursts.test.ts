import { beforeAll, describe, expect, test } from 'vitest'
import { groupedCode, labelCode } from '../../src/label/code.ts'
import { say, shelfIn } from '../ui/support/bench.ts'
import { buildOnce, homeForTest, PutbackTerminal } from './support/putback-terminal.ts'

const BAGS = 20

beforeAll(buildOnce)

/** putback on a job with twenty bags. */
async function withBags() {
  const home = homeForTest()
  const shelf = shelfIn(home)
  const session = shelf.open(shelf.create({ name: 'blue twin', machine: '', units: 'metric' }))
  say(session, 'begin cover off')
  for (let bag = 1; bag <= BAGS; bag += 1) say(session, `off ${bag} M6x${bag + 10} bolts into new bag`)
  const terminal = new PutbackTerminal(home)
  await terminal.sees('[. NOW]')
  return { terminal, entries: () => shelf.open(session.store.path.replace(/\/[^/]*$/, '')).entries().length }
}

const codes = Array.from({ length: BAGS }, (_, index) => labelCode(1, index + 1))

const all = codes.map((code) => `${code}\r`).join('')

/** In chunks, a millisecond apart where they are many. */
const SHAPES: Record<string, string[]> = {
  'in one chunk': [all],
  'each by itself': codes.map((code) => `${code}\r\n`),
  'a character a millisecond': [...all],
  'cut in the middle': all.match(/.{1,7}/gs) ?? [],
  pasted: codes.map((code) => `\x1b[200~${code}\r\x1b[201~`),
  'behind words': [`half a li${codes.map((code) => `${code}\t`).join('')}`],
}

describe('twenty scans without a pause, through a real terminal', () => {
  test('are each answered, in their order, whatever their shape', async () => {
    const { terminal, entries } = await withBags()
    const before = entries()
    for (const chunks of Object.values(SHAPES)) {
      for (const chunk of chunks) {
        terminal.write(chunk)
        if (chunks.length > BAGS) await new Promise((resolve) => setTimeout(resolve, 1))
      }
      await terminal.sees(labelOf(codes.at(-1)))
      terminal.write('\x15')
      for (const code of codes.slice(0, -1).reverse()) {
        terminal.write('\x7f')
        await terminal.sees(labelOf(code))
      }
      terminal.write('\x7f')
      await terminal.sees('[. NOW]')
    }
    expect(entries()).toBe(before)
  })
})

function labelOf(code = ''): string {
  return `label ${groupedCode(code)}`
}
