import manifest from '../../package.json' with { type: 'json' }
import { type Arguments, readArguments } from './arguments.ts'
import { EXIT } from './exit-codes.ts'
import { canBeDrawnOn, wantsColour } from './terminal-kind.ts'
import { USAGE } from './usage.ts'

// Nothing heavy is imported before it is known that it is needed: help and version answer at once.
const asked = readArguments(process.argv.slice(2))
let isCutShort = false
process.stdout.on('error', cutShort)
// There is nobody left to be told.
process.stderr.on('error', () => undefined)
const code = await main().catch(fault)
process.exitCode = isCutShort && code === EXIT.done ? EXIT.notTold : code

/** The answer did not get out, or not to its end. What it told of is recorded all the same, so nobody should say it again. */
function cutShort({ code = '' }: NodeJS.ErrnoException): void {
  // A reader that has seen enough, as `head`, closes the pipe; a window that was closed takes nothing more.
  if (isCutShort || code === 'EPIPE' || code === 'EIO') return
  isCutShort = true
  process.exitCode ||= EXIT.notTold
  const why = code === 'ENOSPC' ? 'there the disk is full' : `the system answered ${code}`
  const text = [
    `The answer could not be written to its end: ${why}.`,
    'What was recorded is recorded: "putback log" shows it, and other questions can be asked again.',
  ].join('\n')
  console.error(
    process.argv.includes('--json') ? JSON.stringify({ ok: false, code: 'not-told', text }) : text,
  )
}

async function main(): Promise<number> {
  if ('wrong' in asked) {
    return wrongUse('option', `${printable(asked.wrong)}: "putback --help" shows the options.`)
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
  return await cli(args, surroundings())
}

async function screens(args: Arguments): Promise<number> {
  const isTerminal = process.stdin.isTTY === true && process.stdout.isTTY === true
  if (!isTerminal || args.options.json) {
    return wrongUse(
      'no-terminal',
      'The screens need a terminal. Without one: putback card, back, left, where, scan CODE, off ..., fit ...; "putback help" lists all.',
    )
  }
  const { cli, openDesk } = await import('./cli.ts')
  const { errandsOf } = await import('./errands.ts')
  if (args.options.job !== undefined) {
    const words = ['use', args.options.job]
    const chosen = await cli({ words, options: args.options }, { ...surroundings(), out: () => undefined })
    if (chosen !== EXIT.done) return chosen
  }
  const desk = openDesk(args, surroundings())
  const { colour } = desk
  const { INK_SCREEN_READER } = process.env
  const isRead = args.options.reader || INK_SCREEN_READER === 'true' || !canBeDrawnOn(process.env)
  // Ink asks this variable when it is loaded, and takes it for the least there is. Without it, it would leave out bold
  // and inverse as well where no colour is wanted or the terminal's name is not known. Our rows leave out colour alone.
  if (!colour || !process.env['FORCE_COLOR']) Object.assign(process.env, { FORCE_COLOR: '1' })
  // Who has it set for another program must not get Ink's tools for developers, which are not there.
  delete process.env['DEV']
  // Nothing here uses the network, and the layout engine loads sooner when it does not find a fetch to load itself by.
  Object.assign(globalThis, { fetch: undefined })
  const { openScreens } = await import('../ui/open.tsx')
  return openScreens({ shelf: desk.shelf, colour, errands: errandsOf(desk), isRead })
}

/** One line, or with --json one object, as for every other command. */
function wrongUse(code: string, text: string): number {
  if (process.argv.includes('--json')) console.log(JSON.stringify({ ok: false, code, text }))
  else console.error(text)
  return EXIT.notUnderstood
}

/** A fault of ours is never taken for a refusal. */
function fault(error: unknown): number {
  console.error('putback stopped by a fault of its own. Everything recorded before is recorded.')
  // It may quote what was typed or read.
  const told = String(error instanceof Error ? error.stack : error)
  console.error(told.split('\n').map(printable).join('\n'))
  return EXIT.notRecorded
}

function surroundings() {
  return {
    out: (text: string) => void process.stdout.write(text),
    error: (text: string) => void process.stderr.write(text),
    bytes: (bytes: Uint8Array) => void process.stdout.write(bytes),
    progress: process.stderr.isTTY === true,
    env: process.env,
    cwd: process.cwd(),
    colour: process.stdout.isTTY === true && wantsColour(process.env),
  }
}

/** What `withoutSteering` does: help and version load nothing beside this file. */
function printable(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu, '')
}
