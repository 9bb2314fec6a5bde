const fastenerNouns = new Set([
  'bolt',
  'screw',
  'nut',
  'stud',
  'washer',
  'pin',
  'clip',
  'circlip',
  'dowel',
  'rivet',
  'capscrew',
  'setscrew',
  'fastener',
  'cotter',
  'e-clip',
  'r-clip',
])

const connectionNouns = new Set([
  'hose',
  'cable',
  'connector',
  'wire',
  'pipe',
  'line',
  'tube',
  'lead',
  'harness',
  'loom',
  'duct',
])

const aidNouns = new Set([
  'rag',
  'cloth',
  'towel',
  'plug',
  'bung',
  'blank',
  'cap',
  'cover',
  'pin',
  'strap',
  'tie',
  'tape',
  'wedge',
  'chock',
  'clamp',
  'prop',
  'stand',
  'sling',
  'bag',
])

// `chain retaining wire` is an aid, `coil wire` is a connection.
const aidAdjectives = new Set([
  'retaining',
  'holding',
  'locking',
  'blanking',
  'temporary',
  'support',
  'safety',
  'tie',
])

// Words that name nothing but an aid, so that they cannot go into a bag as a part.
const onlyAidNouns = new Set(['rag', 'bung'])

const fluidNouns = new Set([
  'coolant',
  'antifreeze',
  'oil',
  'fluid',
  'fuel',
  'petrol',
  'gasoline',
  'diesel',
  'water',
  'refrigerant',
  'electrolyte',
])

// Common practice: such pieces are made to be used once.
const singleUseEnds = [
  'gasket',
  'crush washer',
  'copper washer',
  'sealing washer',
  'crush ring',
  'split pin',
  'cotter pin',
  'cotter',
  'seal',
  'o-ring',
  'o ring',
  'oring',
]

/** Whether the last word of a name is a fastener. */
export function isFastener(name: string): boolean {
  return fastenerNouns.has(singular(lastWord(name)))
}

const strapAdjectives = new Set(['earth', 'earthing', 'ground', 'grounding', 'bonding'])

/** What a name says a connection is, such as `hose` for `fuel hose`; undefined when it is none. */
export function connectionNoun(name: string): string | undefined {
  const [before = '', last = ''] = ['', ...words(name)].slice(-2)
  const noun = singular(last)
  if (noun === 'strap') return strapAdjectives.has(before) ? noun : undefined
  return connectionNouns.has(noun) && !hasAidAdjective(name) ? noun : undefined
}

/** Whether a name, or one word of it, is of a thing put into a machine for the work. */
export function isAid(name: string): boolean {
  return hasAidAdjective(name) || words(name).some((word) => aidNouns.has(singular(word)))
}

function hasAidAdjective(name: string): boolean {
  return name
    .toLowerCase()
    .split(/[ -]/)
    .some((word) => aidAdjectives.has(word))
}

/** Whether a name can only be that of an aid, so that a line with nothing else lacks its place. */
export function isOnlyAid(name: string): boolean {
  return onlyAidNouns.has(singular(lastWord(name)))
}

/** Whether a word is a fluid. */
export function isFluid(word: string): boolean {
  return fluidNouns.has(singular(word))
}

/** The end of a name that by common practice is used once only, in the singular; undefined when it is none. */
export function singleUseNoun(name: string): string | undefined {
  const end = words(name).slice(-2).map(singular).join(' ')
  return singleUseEnds.find((noun) => end === noun || end.endsWith(` ${noun}`))
}

/** Whether the last word of a name is a plural. */
export function isPlural(name: string): boolean {
  const last = lastWord(name)
  return singular(last) !== bare(last)
}

/** A name with its last word in the singular, as typed otherwise. */
export function asOne(name: string): string {
  const last = lastWord(name)
  return /^\p{L}+$/u.test(last) ? name.slice(0, name.length - last.length + singular(last).length) : name
}

/** A noun in the singular and in lower case, without punctuation around it. */
export function singular(word: string): string {
  const noun = bare(word)
  if (/(?:ss|sh|ch|x)es$/.test(noun)) return noun.slice(0, -2)
  return /[^suia]s$/.test(noun) ? noun.slice(0, -1) : noun
}

function bare(word: string): string {
  return word.toLowerCase().replace(/^[^\p{L}\p{N}]{1,20}|[^\p{L}\p{N}]{1,20}$/gu, '')
}

function words(name: string): string[] {
  return name.toLowerCase().split(' ')
}

function lastWord(name: string): string {
  return name.slice(name.lastIndexOf(' ') + 1)
}
