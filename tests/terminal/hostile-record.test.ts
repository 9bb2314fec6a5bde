import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, test } from 'vitest'
import { demoEntries } from '../hostile/demo-entries.ts'
import { retold, writeRaw } from '../hostile/hostile-record.ts'
import { HOSTILE_TEXTS } from '../hostile/hostile-texts.ts'
import { buildOnce, homeForTest, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

/**
 * All that the screens send to a terminal (ECMA-48 and the private modes of xterm): modes of the screen, of pastes, of wrapping,
 * of the cursor and of updates in one go; erasing; places; and how letters look.
 */
const OUR_OWN = new RegExp(
  ['\\x1b\\[(?:\\?(?:7|25|1049|2004|2026)[hl]', '[02]?[JK]', '\\d+(?:;\\d+)?H', '[\\d;]*m)'].join('|'),
  'g',
)

test('a record from elsewhere sends a terminal nothing but what the screens send', async () => {
  const home = homeForTest()
  const path = join(home, 'from-elsewhere')
  mkdirSync(path)
  const entries = (demoEntries()[1] ?? []).map((entry, index) =>
    index % 3 === 0 ? { ...entry, by: 'somebody' } : entry,
  )
  writeRaw(
    path,
    retold(entries, (index) => `${HOSTILE_TEXTS[index % HOSTILE_TEXTS.length]?.[1].slice(0, 240)}${index}`),
  )
  writeFileSync(join(home, '.chosen'), 'from-elsewhere\n')
  const terminal = new PutbackTerminal(home)
  await terminal.sees('[. NOW]')
  for (const [keys, shows] of [
    ['.5\r', '[.5 LOG]'],
    ['.2\r', '[.2 LIES]'],
    ['.3\r', '[.3 BACK]'],
    ['.4\r', '[.4 LEFT]'],
    ['step 1\r', 'step 1,'],
    ['.6\r', '[.6 DUE]'],
  ] as const) {
    terminal.write(keys)
    await terminal.sees(shows)
  }
  const sent = terminal.raw
  expect(sent.length).toBeGreaterThan(5000)
  expect(sent.replaceAll(OUR_OWN, '')).not.toMatch(/[^\P{Cc}\r\n]|[\p{Cf}\p{Zl}\p{Zp}]/u)
})
