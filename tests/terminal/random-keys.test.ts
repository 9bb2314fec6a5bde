import { spawn } from '@lydell/node-pty'
import { beforeAll, expect, test } from 'vitest'
import { addDemoJob } from '../../src/cli/demo-job.ts'
import { chanceOf } from '../support/damage/chance.ts'
import { shelfIn } from '../ui/support/bench.ts'
import { buildOnce, homeForTest, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

const KEYS = [
  ...[...'0123456789', ...'1123', ...'.*+-'],
  ...['\r', '\r', '\r', '\r', '\r', '\x7f', '\x15', '\t'],
  ...[
    '\x1b[A',
    '\x1b[B',
    '\x1b[C',
    '\x1b[D',
    '\x1b[5~',
    '\x1b[6~',
    '\x1b',
    '\x1b[200~2 nuts\n3 nuts\x1b[201~',
  ],
  ...['take 3\r', 'off 2 M6x20 bolts\r', '? bolt\r', 'where bolt\r', '漢', '\ufffd', '\x00', '\x9b'],
]

test('2,000 keys by chance and sizes of any kind leave the terminal as it was', async () => {
  const home = homeForTest()
  const shelf = shelfIn(home)
  const job = addDemoJob(shelf, { whole: false })
  const terminal = new PutbackTerminal(home)
  await terminal.sees('[. NOW]')
  const chance = chanceOf(7)
  for (let key = 0; key < 2000; key += 1) {
    terminal.write(KEYS[chance.whole(0, KEYS.length - 1)] as string)
    if (key % 100 === 99) {
      terminal.resize(chance.whole(2, 160), chance.whole(2, 60))
      await new Promise((resolve) => setTimeout(resolve, 5))
    }
  }
  // Too small says so, and large enough again all is there.
  terminal.resize(30, 10)
  await terminal.sees('This window is too small')
  terminal.resize(80, 24)
  terminal.write('\x15.\r')
  await terminal.sees('[. NOW]')
  terminal.write('\x03')
  const text = await terminal.sees('end of test')
  expect(text).toContain('left with 0')
  expect(terminal.isAlternate).toBe(false)
  expect(settingsIn(terminal.raw)).toBe(settingsIn(await untouchedTerminal()))
  expect(shelf.open(job).unlawful).toBeNull()
})

/** What a shell says of a terminal in which nothing was started. */
function untouchedTerminal(): Promise<string> {
  const { onData, onExit } = spawn('/bin/sh', ['-c', 'stty -a; echo "end of test"; sleep 0.1'], {
    cols: 80,
    rows: 24,
  })
  let raw = ''
  onData((data) => {
    raw += data
  })
  return new Promise((resolve) => onExit(() => resolve(raw)))
}

/** All that "stty -a" says, from the speed on. */
function settingsIn(raw: string): string {
  return /speed \d+ baud.*(?=end of test)/s.exec(raw)?.[0] ?? 'nothing'
}
