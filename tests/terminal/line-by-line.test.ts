import { beforeAll, expect, test } from 'vitest'
import { buildOnce, homeForTest, PutbackTerminal } from './support/putback-terminal.ts'

beforeAll(buildOnce)

test.each([
  ['a screen reader', { INK_SCREEN_READER: 'true' }],
  ['a terminal that only writes on', { TERM: 'dumb' }],
])('%s gets a job in sentences, and no escape sequence', async (_, env) => {
  const terminal = new PutbackTerminal(homeForTest(), { env, rows: 60 })
  const enter = async (line: string, answer: string) => {
    terminal.write(`${line}\r`)
    await terminal.sees(answer)
  }
  await terminal.sees('Enter: a new job.')
  await enter('', 'Enter: nothing: a job needs a name.')
  await enter('blue twin', 'Enter: begin blue twin.')
  await enter('', 'Off. What comes off')
  await enter('8 valve cover bolts', 'Off 8: 8 in containers.')
  // The terminal itself echoes the line, behind the prompt.
  expect(terminal.text()).toContain('\n> 8 valve cover bolts\n')
  await enter('quit', 'Stop work')
  await enter('waiting for the gasket', 'left with 0')
  await terminal.sees('end of test')
  expect(terminal.raw).not.toContain('\x1b')
  expect(terminal.raw).not.toMatch(/[█▀▄─✓]/)
})
