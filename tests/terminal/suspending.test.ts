import { join } from 'node:path'
import { spawn } from '@lydell/node-pty'
import xterm from '@xterm/headless'
import { beforeAll, expect, onTestFinished, test } from 'vitest'
import { buildOnce, homeForTest, onFirstJob } from './support/putback-terminal.ts'

const program = join(import.meta.dirname, '../../dist/putback.js')

beforeAll(buildOnce)

/** A shell that takes stopped programs up again, as the shells of people do. */
test('Ctrl-Z gives the terminal to the shell, and fg draws all of it again with the line that was typed', async () => {
  const home = homeForTest()
  const { CI: _, NO_COLOR: __, FORCE_COLOR: ___, ...inherited } = process.env
  const script = `set -m
    "${process.execPath}" "${program}" --home "${home}"
    echo "stopped with $?"; stty -a; echo "go on?"; read -r _; fg; echo "left with $?"; stty -a; echo "end of test"; read -r _`
  const pty = spawn('/bin/sh', ['-c', script], {
    cols: 80,
    rows: 30,
    cwd: home,
    env: { ...inherited, TERM: 'xterm-256color' },
  })
  const screen = new xterm.Terminal({ cols: 80, rows: 30, allowProposedApi: true })
  pty.onData((data) => screen.write(data))
  onTestFinished(() => pty.kill('SIGKILL'))
  const text = () =>
    Array.from({ length: 30 }, (_, row) =>
      screen.buffer.active.getLine(screen.buffer.active.viewportY + row)?.translateToString(true),
    ).join('\n')
  const sees = (wanted: string | RegExp) => expect.poll(text, { timeout: 20_000 }).toMatch(wanted)

  await sees('Enter a new job')
  pty.write('new job the green o')
  await sees('> new job the green o')
  pty.write('\x1a')
  await sees('go on?')
  expect(screen.buffer.active.type).toBe('normal')
  expect(text()).toMatch(/ icanon\b/)
  expect(text()).toMatch(/ echo\b/)
  pty.write('\r')
  await expect.poll(() => screen.buffer.active.type, { timeout: 20_000 }).toBe('alternate')
  await sees('> new job the green o')
  pty.write('ne')
  await sees('> new job the green one')
  pty.write('\x03')
  await sees('end of test')
  expect(text()).toContain('left with 0')
  expect(text()).toMatch(/ icanon\b/)
})

test('Ctrl-Z where no shell would take the program up again goes on by itself', async () => {
  const { terminal } = await onFirstJob()
  terminal.write('8 valve cover bo\x1a')
  await terminal.sees(' > 8 valve cover bo')
  terminal.write('lts\r')
  await terminal.sees('off 8 = 8 in containers')
  expect(terminal.isAlternate).toBe(true)
})
