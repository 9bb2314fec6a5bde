import manifest from '../../package.json' with { type: 'json' }
import { type Arguments, readArguments } from './arguments.ts'
import { EXIT } from './exit-codes.ts'
import { USAGE } from './usage.ts'

const { TERM, NO_COLOR } = process.env
// Nothing heavy is imported before it is known that it is needed: help and version answer at once.
const asked = readArguments(process.argv.slice(2))
// A reader that has seen enough, as `head`, closes the pipe.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})
process.exitCode = await main()

async function main(): Promise<number> {
  if ('wrong' in asked) {
    console.error(`${printable(asked.wrong)}: "putback --help" shows the options.`)
    return EXIT.notUnderstood
  }
  const { words, options } = asked
  if (options.version) console.log(manifest.version)
  else if (options.help && words.length === 0) console.log(USAGE)
  else if (words.length === 0) return screens(asked)
  else return command({ ...asked, words: options.help ? ['help', ...words] : words })
  return EXIT.done
}

async function command(args: Arguments): Promise<number> {
  const { cli } = await import('./cli.ts')
  return cli(args, surroundings())
}

async function screens(args: Arguments): Promise<number> {
  const isTerminal = process.stdin.isTTY === true && process.stdout.isTTY === true && TERM !== 'dumb'
  if (!isTerminal || args.options.json) {
    console.error(
      'The screens need a terminal. Without one: putback card, back, left, where, scan CODE, off ..., fit ...; "putback help" lists all.',
    )
    return EXIT.notUnderstood
  }
  const { openDesk } = await import('./cli.ts')
  const place = surroundings()
  const desk = openDesk(args, place)
  if (args.options.job !== undefined) {
    const path = desk.find(args.options.job)
    if (typeof path !== 'string') {
      console.error(`${path.told.what} ${path.told.cure}`)
      return path.exit
    }
    desk.shelf.choose(path)
  }
  const colour = desk.colour
  // Ink asks this variable when it is loaded, and no other.
  if (!colour) Object.assign(process.env, { FORCE_COLOR: '0' })
  const { openScreens } = await import('../ui/open.tsx')
  return openScreens({ shelf: desk.shelf, colour })
}

function surroundings() {
  return {
    out: (text: string) => void process.stdout.write(text),
    error: (text: string) => void process.stderr.write(text),
    env: process.env,
    cwd: process.cwd(),
    colour: process.stdout.isTTY === true && !NO_COLOR && TERM !== 'dumb',
  }
}

/** The text without control characters, so that nothing typed can steer the terminal. */
function printable(text: string): string {
  return text.replace(/\p{Cc}/gu, '')
}
