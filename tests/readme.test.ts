import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { bench } from './cli/support/bench.ts'

// `npx vitest run tests/readme.test.ts --update` writes the answers anew; read them before you commit them.
test('the tour answers as the README says', async () => {
  const readme = readFileSync('README.md', 'utf8')
  const desk = bench()
  const told = readme.replace(CONSOLE_BLOCK, (_, block: string) => {
    const commands = block.split('\n').filter((line) => line.startsWith('$ putback '))
    const answers = commands.map((command) => {
      const { out, err } = desk.say(...words(command.slice('$ putback '.length)))
      return `${command}\n${out}${err}`.trimEnd().replaceAll(desk.home, 'jobs')
    })
    return `\`\`\`console\n${answers.join('\n')}\n\`\`\``
  })
  await expect(told).toMatchFileSnapshot('../README.md')
})

const CONSOLE_BLOCK = /```console\n(.*?)\n```/gs

/** The words of a command as a shell hands them on: only double quotes are used here. */
function words(command: string): string[] {
  return [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '')
}
