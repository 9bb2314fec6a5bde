/** What was asked of the program, before any of it is looked up. */
export interface Arguments {
  words: string[]
  options: Options
}

export interface Options {
  job?: string
  home?: string
  by?: string
  machine?: string
  units?: string
  until?: string
  json: boolean
  noColour: boolean
  reader: boolean
  invert: boolean
  whole: boolean
  all: boolean
  help: boolean
  version: boolean
}

/** An option that there is none of, or one without its value. */
export interface WrongOption {
  wrong: string
}

/** Takes the options out of the words, wherever they stand; after `--` all is words. */
export function readArguments(args: readonly string[]): Arguments | WrongOption {
  const words: string[] = []
  const options: Options = {
    json: false,
    noColour: false,
    reader: false,
    invert: false,
    whole: false,
    all: false,
    help: false,
    version: false,
  }
  for (let at = 0; at < args.length; at++) {
    const arg = args[at] ?? ''
    if (arg === '--') return { words: [...words, ...args.slice(at + 1)], options }
    const [, name, inline] = /^(--[a-z-]+|-[hv])(?:=(.*))?$/s.exec(arg) ?? []
    const flag = name === undefined ? undefined : FLAGS.get(name)
    const valued = name === undefined ? undefined : VALUED.get(name)
    if (flag !== undefined && inline === undefined) options[flag] = true
    else if (valued !== undefined) {
      const value = inline ?? args[++at]
      if (value === undefined || value === '') return { wrong: `${name} needs a value` }
      if (valued === 'by' && value.length > LONGEST_NAME)
        return { wrong: `${name} takes a name of at most ${LONGEST_NAME} characters` }
      options[valued] = value
    } else if (arg.startsWith('--')) return { wrong: `there is no option ${arg}` }
    else words.push(arg)
  }
  return { words, options }
}

/** It stands beside every entry. */
const LONGEST_NAME = 100

const FLAGS = new Map<
  string,
  'json' | 'noColour' | 'reader' | 'invert' | 'whole' | 'all' | 'help' | 'version'
>([
  ['--json', 'json'],
  ['--no-colour', 'noColour'],
  ['--no-color', 'noColour'],
  ['--reader', 'reader'],
  ['--invert', 'invert'],
  ['--whole', 'whole'],
  ['--all', 'all'],
  ['--help', 'help'],
  ['-h', 'help'],
  ['--version', 'version'],
  ['-v', 'version'],
])

const VALUED = new Map<string, 'job' | 'home' | 'by' | 'machine' | 'units' | 'until'>([
  ['--job', 'job'],
  ['--home', 'home'],
  ['--by', 'by'],
  ['--machine', 'machine'],
  ['--units', 'units'],
  ['--until', 'until'],
])
