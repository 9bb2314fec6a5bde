import { cpSync, readFileSync } from 'node:fs'
import { dirname, sep } from 'node:path'
import { expect, test } from 'vitest'
import { frameRows } from '../src/ui/screens/frame.tsx'
import { textOf } from '../src/ui/text/line.ts'
import { bench } from './cli/support/bench.ts'
import { emptyHome, jobWith, screens, shelfIn } from './ui/support/bench.ts'

// `npx vitest run tests/readme.test.ts --update` writes what is shown anew; read it before you commit it.
test('the tour answers, and the screens look, as the README shows', async () => {
  const readme = readFileSync('README.md', 'utf8')
  const desk = bench()
  const demoHome = emptyHome()
  shelfIn(demoHome).addDemo()
  const blocks: string[] = []
  for (const [, block = ''] of readme.matchAll(CONSOLE_BLOCK)) {
    const answers: string[] = []
    for (const command of block.split('\n').filter((line) => line.startsWith('$ putback '))) {
      const { out, err } = await desk.send(...words(command.slice('$ putback '.length)))
      const answer = `${command}\n${out}${err}`.trimEnd()
      answers.push(answer.replaceAll(`${dirname(desk.home)}${sep}`, '').replaceAll('\\', '/'))
    }
    blocks.push(fenced('console', answers.join('\n')))
  }
  const told = readme
    .replace(CONSOLE_BLOCK, () => blocks.shift() ?? '')
    .replace(SCREEN_BLOCK, (_, start: string, typed: string) => {
      const frame = frameOf(start === 'demo' ? demo(demoHome) : jobWith('begin valve cover off'), typed)
      return `<!-- screen of ${start}: ${typed} -->\n\n${fenced('text', frame)}`
    })
  await expect(told).toMatchFileSnapshot('../README.md')
})

/** Commands of one job, one block after the other. */
const CONSOLE_BLOCK = /```console\n(.*?)\n```/gs
/** What is typed on the screens, each piece followed by Enter but for one that ends in `...`. */
const SCREEN_BLOCK = /<!-- screen of (demo|a job): (.*?) -->\n\n```text\n.*?\n```/gs
const SIZE = { width: 80, height: 24 }

function demo(told: string) {
  const home = emptyHome()
  // To tell the demo takes its time: once is enough.
  cpSync(told, home, { recursive: true })
  return screens(shelfIn(home), SIZE)
}

function frameOf({ desk, enter, type }: ReturnType<typeof screens>, typed: string): string {
  for (const piece of typed.split(' | ')) {
    if (piece.endsWith('...')) type(piece.slice(0, -3))
    else enter(piece)
  }
  return frameRows(desk, SIZE)
    .rows.map((row) => textOf(row).trimEnd())
    .join('\n')
}

function fenced(kind: string, text: string): string {
  return `\`\`\`${kind}\n${text}\n\`\`\``
}

/** The words of a command as a shell hands them on: only double quotes are used here. */
function words(command: string): string[] {
  return [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '')
}
